/** Puts the signs that people write in sums into plain ones, and settles what a comma and a space between digits mean. */
import { Unreadable } from './entry-fault.ts'

const LONGEST_TEXT = 80

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

const PLAIN_SIGNS: readonly (readonly [RegExp, string])[] = [
  [/[−–]/g, '-'],
  [/[×·⋅∙]/g, '*'],
  [/[÷⁄]/g, '/'],
  [/π/g, 'pi'],
  [/²/g, '^2'],
  [/³/g, '^3'],
  [/⁻¹/g, '^-1'],
  [/° ?C(?![A-Za-z])/g, ' degC'],
  [/°/g, ' deg'],
  [/\s+/g, ' '],
  // a product of units, not a difference
  [/(?<![A-Za-z])(m?N)-(?=[cm]?m(?![A-Za-z]))/g, '$1 '],
]

/** What people say with a unit, once signs are plain and spaces single. */
const SPOKEN: readonly (readonly [RegExp, string])[] = [
  [/ of the (?:left |right )?(?:worm|wheel)$/i, ''],
  [/(?<=[A-Za-z])\.$/, ''],
  [/ per (?:minute|min)$/i, '/min'],
  [/(?<=[A-Za-z]) per second$/i, '/s'],
  [/ ?min ?\^-1$/, '/min'],
  [/(?<=\d) 1\/(?=min$)/, '/'],
  [/ ?r\.p\.m$/i, ' rpm'],
]

/** Times as a letter, but not in 0x10; a root or an angle without its brackets */
const SPARED: readonly (readonly [RegExp, string])[] = [
  [/(?<=[\d)] ?)(?<!(?<![\d.])0)x(?= ?[\d(])/g, '*'],
  [/(?:√|sqrt) ?(\d+(?:[.,]\d+)?)/g, 'sqrt($1)'],
  [/√ ?(?=\()/g, 'sqrt'],
  [/(sin|cos|tan) ?(\d+(?:[.,]\d+)?) ?(deg|rad)(?![A-Za-z])/g, '$1($2 $3)'],
]

const NOT_ALLOWED = /[^A-Za-z0-9 .,+\-*/^()%]/u
const NUMBER_WITH_COMMA = /[\d.]*,[\d.,]*/g
/** 2 1/2, but not 1.5 1/2 nor x2 1/2 */
const MIXED = /(?<![\w.])(\d+) (\d+) ?\/ ?(\d+)(?![\w.])/g
const GROUPED = /(?<=\d) (?=\d{3}(?!\d))/g

/** A sign that cannot be seen is named by its number. */
function strangeSign(sign: string): Unreadable {
  const number = sign.codePointAt(0)!.toString(16).toUpperCase()
  const message = /[\p{C}\p{Z}\p{M}]/u.test(sign)
    ? `Type it anew: a sign that cannot be seen, U+${number}, came with it.`
    : `Write the digits 0 to 9, units and + − × ÷ ^ ( ) only; “${sign}” came.`
  return new Unreadable('not-allowed', message)
}

const respelt = (text: string, spellings: readonly (readonly [RegExp, string])[]): string =>
  spellings.reduce((last, [from, to]) => last.replace(from, to), text)

/** '2,5' is 2.5, but '1,200' can mean two numbers; only where it begins with 0 can it not. */
function pointForComma(number: string): string {
  const [, whole, part] = /^(\d*),(\d*)$/.exec(number) ?? []
  const isDecimal = whole !== undefined && part !== undefined && whole + part !== ''
  if (isDecimal && (part.length !== 3 || Number(whole) === 0)) return `${whole}.${part}`
  const first = number.replaceAll(/[.,]/g, '')
  const ways =
    part?.length === 3
      ? `: write ${first} or ${whole}.${part}`
      : ': write a point for decimals and nothing between thousands'
  throw new Unreadable('ambiguous-comma', `${number} can be read in two ways${ways}.`)
}

/** 2 1/2 is a half more than two; 1 200/3 is a third of twelve hundred. */
const mixedNumber = (text: string, whole: string, top: string, bottom: string): string =>
  top.length === 3 && Number(top) >= Number(bottom) ? text : `(${whole}+${top}/${bottom})`

/** The same sum in letters, digits and + - * / ^ ( ) . % alone. */
export function plainEntry(text: string, example: string): string {
  const trimmed = text.trim()
  if (trimmed === '') throw new Unreadable('empty', `Write ${example}.`)
  if (trimmed.length > LONGEST_TEXT) {
    throw new Unreadable('too-long', `Write at most ${LONGEST_TEXT} characters; ${trimmed.length} came.`)
  }
  const whole = trimmed.replaceAll(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/g, (sign) => ` ${VULGAR[sign]}`)
  const plain = respelt(whole, PLAIN_SIGNS).trim()
  const spelt = respelt(plain, [...SPOKEN, ...SPARED])
  const [strange] = NOT_ALLOWED.exec(spelt) ?? []
  if (strange !== undefined) throw strangeSign(strange)
  return spelt
    .replace(NUMBER_WITH_COMMA, pointForComma)
    .replaceAll(MIXED, mixedNumber)
    .replaceAll(GROUPED, '')
}
