/** Changes that a message about a pair can name as a cure; each is tried before it is named. */
import type { GearNumbers } from './gear-numbers.ts'
import { pairProportions } from './proportions.ts'

export interface Cure {
  readonly words: string
  /** The pair with the change made by a part, from 0 to 1, of the way to the end of what can be set. */
  readonly change: (gearing: GearNumbers, part: number) => GearNumbers
}

const MOST_TEETH = 120
/** In modules, either way: common practice. */
export const MOST_SHIFT = 1
/** How far a change is tried: all the way, or half of it where the end goes too far. */
const PARTS = [1, 1 / 2]

const between = (from: number, to: number, part: number): number => from + (to - from) * part

type Dimension = 'diameterQuotient' | 'pressureAngle' | 'addendum' | 'wheelWidth' | 'backlash'

const towards = (words: string, name: Dimension, end: number): Cure => ({
  words,
  change: (gearing, part) => ({ ...gearing, [name]: between(gearing[name], end, part) }),
})

const shifted = (words: string, end: number): Cure => ({
  words,
  change: (gearing, part) => ({
    ...gearing,
    centres: { kind: 'shift', profileShift: between(pairProportions(gearing).profileShift, end, part) },
  }),
})

export const MORE_TEETH: Cure = {
  words: 'more teeth',
  change: (gearing, part) => ({
    ...gearing,
    wheelTeeth: Math.round(between(gearing.wheelTeeth, MOST_TEETH, part)),
  }),
}
export const FEWER_STARTS: Cure = {
  words: 'fewer starts',
  change: (gearing, part) => ({ ...gearing, wormStarts: Math.round(between(gearing.wormStarts, 1, part)) }),
}
export const THICKER_WORM = towards('a larger diameter quotient', 'diameterQuotient', 25)
export const STEEPER_FLANKS = towards('a larger pressure angle', 'pressureAngle', 30)
export const FLATTER_FLANKS = towards('a smaller pressure angle', 'pressureAngle', 10)
export const LARGER_SHIFT = shifted('a larger profile shift', MOST_SHIFT)
export const SMALLER_SHIFT = shifted('a smaller profile shift', -MOST_SHIFT)
export const LARGER_ADDENDUM = towards('a larger addendum', 'addendum', 1.5)
export const SMALLER_ADDENDUM = towards('a smaller addendum', 'addendum', 0.3)
export const NARROWER_WHEEL = towards('a narrower wheel', 'wheelWidth', 1)
export const WIDER_WHEEL = towards('a wider wheel', 'wheelWidth', 200)
export const LESS_BACKLASH = towards('less backlash', 'backlash', 0)
export const PROFILE_ZA: Cure = {
  words: 'profile ZA',
  change: (gearing) => ({ ...gearing, profile: 'ZA' }),
}

/** 'a, b or c' */
function anyOf(words: readonly string[]): string {
  const last = words.at(-1) ?? ''
  return words.length > 1 ? `${words.slice(0, -1).join(', ')} or ${last}` : last
}

/** 'take a, b or c' with the cures that, each alone, make a pair that holds; several together where none does. */
export function curesOf(
  gearing: GearNumbers,
  cures: readonly Cure[],
  holds: (changed: GearNumbers) => boolean,
): string {
  const helps = ({ change }: Cure) =>
    PARTS.some((part) => {
      const changed = change(gearing, part)
      // at a given distance more teeth or a thicker worm leave the wheel no shift that can be cut
      return Math.abs(pairProportions(changed).profileShift) <= MOST_SHIFT && holds(changed)
    })
  const helping = cures.filter(helps).map(({ words }) => words)
  if (helping.length > 0) return `take ${anyOf(helping)}`
  return 'no one change cures that, so begin again from fewer starts, more teeth and full depth'
}
