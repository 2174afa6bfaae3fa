/** How often somebody was right at each level of being sure, beside where that level pays best. */
import type { Sureness } from '../../sim/question/marking.ts'
import { confidenceMark } from '../../sim/question/marking.ts'
import type { Answered } from '../store/records.ts'

export interface LevelCalibration {
  readonly level: Sureness
  readonly right: number
  readonly count: number
  /** Right of all, 0 to 1; null where there is no answer at this level */
  readonly share: number | null
  /** Where this level pays more than the others, as a chance of being right */
  readonly paysFrom: number
  readonly paysTo: number
}

const LEVELS: readonly Sureness[] = [1, 2, 3]

/** Mean mark at a chance p of being right */
const expected = (level: Sureness, p: number): number =>
  p * confidenceMark(true, level) + (1 - p) * confidenceMark(false, level)

/** The chance at which two levels pay the same: where their straight lines cross. */
function crossing(low: Sureness, high: Sureness): number {
  const atNone = expected(low, 0) - expected(high, 0)
  const atAll = expected(low, 1) - expected(high, 1)
  return atNone / (atNone - atAll)
}

const BOUNDS = [0, crossing(1, 2), crossing(2, 3), 1] as const

export function calibrationOf(answered: readonly Answered[]): readonly LevelCalibration[] {
  return LEVELS.map((level, place) => {
    const own = answered.filter(({ sureness, right }) => sureness === level && right !== null)
    const right = own.filter((each) => each.right === true).length
    const share = own.length === 0 ? null : right / own.length
    return { level, right, count: own.length, share, paysFrom: BOUNDS[place]!, paysTo: BOUNDS[place + 1]! }
  })
}
