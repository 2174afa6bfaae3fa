import type { Estimate } from './comparison.ts'
import { gaussNewton } from './gauss-newton.ts'
import type { Equation } from './least-squares.ts'
import { leastSquares } from './least-squares.ts'
import type { FitQuality, MotorReading } from './motor-reading.ts'
import { estimate, fitDoubts, MOTOR_UNCERTAINTIES, quality, tooFew, undetermined } from './motor-reading.ts'
import type { ReadingProblem } from './reading-problem.ts'
import { numberProblems, rowProblems } from './reading-problem.ts'

export interface SeriesMotorFit extends FitQuality {
  /** Armature and field [ohm] */
  readonly resistance: Estimate
  /** k0 [V s/(rad A)] */
  readonly emfConstant: Estimate
  /** 1/is [1/A]; 0 is no saturation. It, and not is, comes out of the readings with an even uncertainty. */
  readonly saturation: Estimate
}

export interface SeriesMotorIdentity {
  readonly fit: SeriesMotorFit | null
  readonly problems: readonly ReadingProblem[]
}

const UNKNOWNS = 3
const CURE = 'take some with the rotor held, and some running at currents far apart'

/**
 * Resistance and field of a series motor on direct current: V - vb sign(I) = R I + k(I) I w,
 * k(I) = k0/(1 + abs(I)/is), by Gauss-Newton with effective variance.
 *
 * brushDrop - vb [V]
 */
export function identifySeriesMotor(rows: readonly MotorReading[], brushDrop: number): SeriesMotorIdentity {
  const problems = rowProblems(rows, MOTOR_UNCERTAINTIES)
  problems.push(...numberProblems('brushDrop', brushDrop))
  if (rows.length < UNKNOWNS) problems.push(tooFew(UNKNOWNS, rows.length))
  if (problems.length > 0) return { fit: null, problems }
  const linearise = (values: readonly number[]) => rows.map((row) => deviation(row, values, brushDrop))
  const unsaturated = leastSquares(
    linearise([0, 0, 0]).map((each) => ({ ...each, factors: each.factors.slice(0, 2) })),
  )
  const fit = unsaturated && gaussNewton([...unsaturated.values, 0], linearise)
  if (!fit) return { fit: null, problems: [undetermined(CURE)] }
  return {
    fit: {
      ...quality(fit),
      resistance: estimate(fit, 0),
      emfConstant: estimate(fit, 1),
      saturation: estimate(fit, 2),
    },
    problems: fitDoubts(fit, CURE),
  }
}

/** How far a row is from the law with R, k0 and s = 1/is, and how that changes with each. */
function deviation(row: MotorReading, values: readonly number[], brushDrop: number): Equation {
  const { voltage, current, speed } = row
  const [R = 0, k0 = 0, s = 0] = values
  const weakening = 1 + Math.abs(current) * s
  const emfPerConstant = (current * speed) / weakening
  const slope = R + (k0 * speed) / weakening ** 2
  return {
    factors: [current, emfPerConstant, (-k0 * emfPerConstant * Math.abs(current)) / weakening],
    target: voltage - brushDrop * Math.sign(current) - R * current - k0 * emfPerConstant,
    uncertainty: Math.hypot(
      row.voltageUncertainty,
      slope * row.currentUncertainty,
      ((k0 * current) / weakening) * row.speedUncertainty,
    ),
  }
}
