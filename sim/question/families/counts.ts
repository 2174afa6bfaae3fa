/** Counts of turns, starts and teeth: what questions about them draw from, and how they write them. */
import type { Level, Parameter } from '../family.ts'
import { counted, fractionText } from '../value-text.ts'

/** Starts of the worm and teeth of each wheel */
export type Pair = { readonly z1: number; readonly z2: number }

/** '1/4 turn', '1 turn', '1 1/2 turns' */
export const turnsText = (turns: number): string => `${fractionText(turns)} ${turns > 1 ? 'turns' : 'turn'}`

export const startsText = (starts: number): string => counted(starts, 'start')

export const teethText = (teeth: number): string => counted(teeth, 'tooth', 'teeth')

/** 'The worm has 2 starts, each wheel 30 teeth.' */
export const pairText = ({ z1, z2 }: Pair): string =>
  `The worm has ${startsText(z1)}, each wheel ${teethText(z2)}.`

/** Teeth that many numbers divide, and teeth that few do */
const ROUND_TEETH = [12, 15, 16, 18, 20, 24, 30, 36, 40]
const ODD_TEETH = [21, 22, 25, 27, 28, 31, 33, 35, 37]

/** One start first, then two to four; teeth that make ratios which are not whole come last. */
export const pairOf = <G extends Pair>(): readonly Parameter<G>[] => [
  { name: 'z1', values: (level) => (level === 1 ? [1] : [2, 3, 4]) },
  {
    name: 'z2',
    values: (level, { z1 }) =>
      level === 3
        ? ODD_TEETH.filter((teeth) => teeth % z1 !== 0)
        : ROUND_TEETH.filter((teeth) => teeth % z1 === 0),
  },
]

/** Whole answers first, then quarters too; parts that no mark shows come last. */
export function suits(answer: number, level: Level): boolean {
  if (level === 1) return Number.isInteger(answer)
  return Number.isInteger(4 * answer) === (level === 2)
}

export const gearingOf = ({ z1, z2 }: Pair) => ({ wormStarts: z1, wheelTeeth: z2 })

export const teethATurn = (starts: number): string =>
  `Each turn of the worm moves each wheel on by ${teethText(starts)}.`
