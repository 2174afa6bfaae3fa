/** Reads a number of turns as people write it: 20, 13.5, 13,5, 10 1/3, 31/3, 10⅓, "20 turns". */

export type Guess = { readonly turns: number } | { readonly said: string }

export const LARGEST_GUESS = 100_000
const LONGEST_TEXT = 40
const FORM = 'Write a number of worm turns such as 12, 13.5 or 10 1/3'

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅐': '1/7',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅑': '1/9',
  '⅒': '1/10',
}

const plain = (text: string): string =>
  text
    .replaceAll(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/g, (sign) => ` ${VULGAR[sign]}`)
    .replaceAll(/[⁄÷]/g, '/')
    .replace(/\s*(worm )?turns?$/i, '')
    .trim()

const DECIMAL = /^\d*[.,]?\d+$|^\d+[.,]$/
const FRACTION = /^(?:(\d+)[ \u00A0\u2009]+)?(\d+) ?\/ ?(\d+)$/
const GROUPED = /^\d{1,3},\d{3}$/

function valueOf(text: string): number {
  const fraction = FRACTION.exec(text)
  if (fraction) return Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3])
  return DECIMAL.test(text) ? Number(text.replace(',', '.')) : Number.NaN
}

export function readGuess(text: string): Guess {
  const short = plain(text)
  if (short === '') return { said: `${FORM}.` }
  if (text.length > LONGEST_TEXT) return { said: `${FORM}; this is longer than ${LONGEST_TEXT} characters.` }
  if (GROUPED.test(short)) {
    return {
      said: `${short} can be read in two ways: write ${short.replace(',', '')} or ${short.replace(',', '.')}.`,
    }
  }
  const turns = valueOf(short)
  if (!Number.isFinite(turns)) return { said: `${FORM}; “${text.trim()}” came.` }
  if (turns > LARGEST_GUESS) return { said: `At most ${LARGEST_GUESS} worm turns; ${short} came.` }
  return { turns }
}

/** Three decimals at most, none in vain. */
export const decimalText = (turns: number): string => String(Number(turns.toFixed(turns < 1 ? 3 : 2)))

/** "read as 10.33 turns", where that is not what was written. */
export function echo(text: string): string | null {
  const guess = readGuess(text)
  if ('said' in guess) return null
  const read = decimalText(guess.turns)
  return read === text.trim() ? null : `Read as ${read} ${read === '1' ? 'turn' : 'turns'}.`
}
