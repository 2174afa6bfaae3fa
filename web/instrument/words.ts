/** Sentences about turning, in the words of the interface. Senses always say from where they are seen. */
import type { Hand } from '../../sim/gear/gear-numbers.ts'
import { type WormTurns, TICKS_PER_TURN, wheelTurnsValue, wormTurnsValue } from '../../sim/drive/turns.ts'
import { wheelSense } from '../../sim/gear/wheel-motion.ts'
import { mixedText, mixedTurns } from './mixed.ts'

const SMALL = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
  'twenty',
]

const FRACTIONS: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/3': '⅓',
  '2/3': '⅔',
  '1/4': '¼',
  '3/4': '¾',
  '1/5': '⅕',
  '2/5': '⅖',
  '3/5': '⅗',
  '4/5': '⅘',
  '1/6': '⅙',
  '5/6': '⅚',
  '1/7': '⅐',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
}

/** z2/z1 as people write it: 20, 13½, 10⅓, 5 2/7. */
function mixedNumber(z2: number, z1: number): string {
  const mixed = mixedTurns(z2, z1)
  const sign = FRACTIONS[`${mixed.top}/${mixed.bottom}`]
  return sign ? `${mixed.whole}${sign}` : mixedText(mixed)
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** "Twenty turns in," and "one turn out", for two lines. */
export function ratioHeadline(z1: number, z2: number): readonly [string, string] {
  const exact = mixedNumber(z2, z1)
  const word = Number.isInteger(z2 / z1) ? SMALL[z2 / z1] : undefined
  const turns = z1 === z2 ? 'turn' : 'turns'
  return [`${capital(word ?? exact)} ${turns} in,`, 'one turn out']
}

/** "Each turn of the worm's single start moves both wheels on by one tooth. A wheel has 20 teeth." */
export function ratioSentence(z1: number, z2: number): string {
  const starts = z1 === 1 ? 'the worm’s single start' : `the worm’s ${SMALL[z1] ?? z1} starts`
  const teeth = z1 === 1 ? 'one tooth' : `${SMALL[z1] ?? z1} teeth`
  return `Each turn of ${starts} moves both wheels on by ${teeth}. A wheel has ${z2} teeth.`
}

const senseWord = (sense: number): string => (sense > 0 ? 'anticlockwise' : 'clockwise')

const amount = (turns: number): string => {
  const size = Math.abs(turns)
  const text = Number(size.toFixed(2)).toString()
  return `${text} ${text === '1' ? 'turn' : 'turns'}`
}

const moved = (name: string, turns: number, from: string): string =>
  turns === 0 ? `${name} is at its pointer` : `${name} ${amount(turns)} ${senseWord(turns)} ${from}`

/** What has turned and how far since the counts were zero, for the reader of screens. */
export function stageText(turns: WormTurns, z1: number, z2: number, hand: Hand): string {
  const worm = wormTurnsValue(turns)
  const wheel = wheelTurnsValue(turns, z1, z2)
  const above = 'seen from above'
  return [
    moved('Worm', worm, 'seen from the front'),
    moved('left wheel', wheel * wheelSense('left', hand), above),
    moved('right wheel', wheel * wheelSense('right', hand), above),
  ]
    .join('. ')
    .concat('.')
}

/** Both wheels have made whole turns, and some. */
export const wheelsAtPointers = (turns: WormTurns, z1: number, z2: number): boolean => {
  const ticks = turns.turns * z1 * TICKS_PER_TURN + turns.ticks * z1
  return turns.rest === 0 && ticks !== 0 && ticks % (z2 * TICKS_PER_TURN) === 0
}
