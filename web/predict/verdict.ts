/** What the comparison says: right or not yet, by how much, and what known mistake gives the same number. */
import { matchTaps } from '../instrument/taps.ts'
import type { Pair } from '../store/prediction.ts'

/** A number within half a per cent is right. */
const CLOSE = 0.005

const close = (said: number, answer: number): boolean => Math.abs(said - answer) <= CLOSE * answer

/** Worm turns for one turn of a wheel: z2/z1. */
const wormTurnsFor = ({ starts, teeth }: Pair): number => teeth / starts

export const isRight = (turns: number, pair: Pair): boolean => close(turns, wormTurnsFor(pair))

interface Mistake {
  readonly gives: (z1: number, z2: number) => number
  readonly cause: string
}

const MISTAKES: readonly Mistake[] = [
  {
    gives: (_, z2) => z2,
    cause: 'the starts are left out: one worm turn moves on as many teeth as there are starts',
  },
  {
    gives: (z1, z2) => z1 / z2,
    cause: 'the ratio is upside down: that is the part of a wheel turn for one worm turn',
  },
  {
    gives: (z1, z2) => (2 * z2) / z1,
    cause: 'both wheels are added; each of them does the full count at the same time',
  },
  { gives: (z1, z2) => z1 * z2, cause: 'teeth are multiplied by starts instead of divided' },
  { gives: (z1, z2) => (z2 - 1) / z1, cause: 'one tooth is left out: the last space counts too' },
  {
    gives: (z1, z2) => (z2 + 1) / z1,
    cause: 'one tooth is counted twice: the first and the last are the same',
  },
]

/** The cause that fits a wrong number, in words that follow "this is what you get if"; null when none does. */
export function knownMistake(turns: number, pair: Pair): string | null {
  if (isRight(turns, pair)) return null
  const fits = MISTAKES.find(({ gives }) => close(turns, gives(pair.starts, pair.teeth)))
  return fits ? fits.cause : null
}

/** "Each worm turn moves the wheel on by its starts: 1 of 20 teeth. The mark is back when all 20 have gone by." */
export function reason({ starts, teeth }: Pair, answer: string): string {
  const sum = starts === 1 ? answer : `${teeth} ÷ ${starts} = ${answer}`
  const moves = `Each worm turn moves the wheel on by its starts: ${starts} of ${teeth} teeth.`
  return `${moves} The mark is back when all ${teeth} have gone by: ${sum} worm turns.`
}

/** How the learner's own count went; null when nothing was counted. */
export function ownCountText(taps: readonly number[], passes: number): string | null {
  if (taps.length === 0) return null
  const { missed, extra } = matchTaps(taps, passes)
  if (missed.length === 0 && extra === 0) return 'every pass'
  if (missed.length === 1 && extra === 0) return `one pass missed, at turn ${missed[0]}`
  const parts = [missed.length > 0 && `${missed.length} missed`, extra > 0 && `${extra} too many`]
  return parts.filter(Boolean).join(', ')
}
