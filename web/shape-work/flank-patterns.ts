/** The bearing patterns of all four flanks that can carry: both of both wheels. */
import { type BearingPattern, COMPOUND_FILM, bearingPattern } from '../../sim/gear/bearing-pattern.ts'
import type { GearNumbers, Side } from '../../sim/gear/gear-numbers.ts'
import { radians } from '../../sim/quantity/convert.ts'
import type { Flank } from '../../sim/gear/wheel-flank.ts'
import type { Misplacement } from '../store/view.ts'

export interface PatternRequest {
  readonly gearing: GearNumbers
  readonly misplaced: Misplacement
}

/** Of the flanks -1 and +1 of each wheel */
export type FlankPatterns = Readonly<Record<Side, readonly [BearingPattern, BearingPattern]>>

export const patternOf = (patterns: FlankPatterns, side: Side, flank: Flank): BearingPattern =>
  patterns[side][flank < 0 ? 0 : 1]

export function flankPatterns({ gearing, misplaced }: PatternRequest): FlankPatterns {
  const place = { ...misplaced, tilt: radians(misplaced.tilt) }
  const both = (side: Side) =>
    [
      bearingPattern(gearing, side, -1, place, COMPOUND_FILM),
      bearingPattern(gearing, side, 1, place, COMPOUND_FILM),
    ] as const
  return { left: both('left'), right: both('right') }
}
