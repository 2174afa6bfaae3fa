import type { Estimate } from './comparison.ts'
import type { Equation } from './least-squares.ts'
import { leastSquares } from './least-squares.ts'
import type { FitQuality, MotorReading } from './motor-reading.ts'
import { estimate, fitDoubts, MOTOR_UNCERTAINTIES, quality, tooFew, undetermined } from './motor-reading.ts'
import type { ReadingProblem } from './reading-problem.ts'
import { doubted, numberProblems, rowProblems } from './reading-problem.ts'

/** Torque that a motor takes to turn itself: T0 + b w + c w^2. */
export interface LossFit extends FitQuality {
  /** T0 [N m] */
  readonly friction: Estimate
  /** b [N m s/rad] */
  readonly viscous: Estimate
  /** c [N m s2/rad2]; 0 without uncertainty where there were too few rows to fit it */
  readonly fan: Estimate
}

export interface LossIdentity {
  readonly fit: LossFit | null
  readonly problems: readonly ReadingProblem[]
}

const ROWS_FOR_LINE = 2
const ROWS_FOR_FAN = 4
const CURE = 'take the motor alone at speeds far apart'

/**
 * Loss torque from rows without load: k I0 = T0 + b w, with c w^2 where there are four or more. The constant is
 * held; the current alone has weight, k u(I), since its error is the largest by far without load.
 *
 * emfConstant - k [N m/A], > 0
 */
export function identifyLosses(rows: readonly MotorReading[], emfConstant: number): LossIdentity {
  const problems = rowProblems(rows, MOTOR_UNCERTAINTIES)
  problems.push(...numberProblems('emfConstant', emfConstant, 0))
  if (rows.length < ROWS_FOR_LINE) problems.push(tooFew(ROWS_FOR_LINE, rows.length))
  if (problems.length > 0) return { fit: null, problems }
  const withFan = rows.length >= ROWS_FOR_FAN
  const fit = leastSquares(rows.map((row) => lossEquation(row, emfConstant, withFan)))
  if (!fit) return { fit: null, problems: [undetermined(CURE)] }
  const names = ['friction', 'viscous loss', 'fan loss']
  fit.values.forEach((value, j) => {
    if (value < 0) problems.push(doubted('', `${names[j]} should not be negative: ${CURE}`))
  })
  return {
    fit: {
      ...quality(fit),
      friction: estimate(fit, 0),
      viscous: estimate(fit, 1),
      fan: withFan ? estimate(fit, 2) : { value: 0, uncertainty: 0 },
    },
    problems: [...problems, ...fitDoubts({ ...fit, condition: withFan ? 0 : fit.condition }, CURE)],
  }
}

const lossEquation = (row: MotorReading, k: number, withFan: boolean): Equation => ({
  factors: withFan ? [1, row.speed, row.speed ** 2] : [1, row.speed],
  target: k * row.current,
  uncertainty: k * row.currentUncertainty,
})
