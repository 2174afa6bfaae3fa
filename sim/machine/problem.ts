import type { GearProblem } from '../gear/gear-problem.ts'

/**
 * Something wrong with, or worth knowing about, a piece of data. Problems are collected, never thrown.
 *
 * path     - the field, as in 'gearing.wheelTeeth' or 'control.steps[2].voltage'; '' is the whole text
 * severity - error: the machine cannot be used; warning: it can, but will disappoint; note: physics worth
 *            teaching
 * message  - the requirement, then what came, with units; one sentence that tells the fix, lower case, no
 *            full stop
 */
export type Problem = GearProblem

export const hasErrors = (problems: readonly Problem[]): boolean =>
  problems.some((problem) => problem.severity === 'error')
