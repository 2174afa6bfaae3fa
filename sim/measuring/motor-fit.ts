import type { Estimate } from './comparison.ts'
import { gaussNewton } from './gauss-newton.ts'
import type { Equation } from './least-squares.ts'
import { leastSquares } from './least-squares.ts'
import type { FitQuality, MotorReading } from './motor-reading.ts'
import { estimate, fitDoubts, MOTOR_UNCERTAINTIES, quality, tooFew, undetermined } from './motor-reading.ts'
import type { ReadingProblem } from './reading-problem.ts'
import { numberProblems, refused, rowProblems } from './reading-problem.ts'

export interface MotorFit extends FitQuality {
  /** [ohm], as warm as the winding was */
  readonly resistance: Estimate
  /** k [V s/rad = N m/A] */
  readonly emfConstant: Estimate
  /** Of the pair of brushes [V]; given, then without uncertainty, or fitted */
  readonly brushDrop: Estimate
}

export interface MotorIdentity {
  /** null where the problems hold an error */
  readonly fit: MotorFit | null
  readonly problems: readonly ReadingProblem[]
}

const CURE = 'take some with the rotor held and some running'
/** At one voltage the current falls in step with the speed, and neither tells what the other does not. */
const CURE_WITH_DROP = `${CURE}, at more than one voltage`
/** Two currents differ when they lie further apart than this many times their joint uncertainty. Our choice. */
const APART = 3
const LEAST_LEVELS = 3

/**
 * Resistance and constant of a permanent-magnet motor from rows of voltage, current and speed:
 * V - vb sign(I) = R I + k w. Each row weighs by its effective variance u(V)^2 + R^2 u(I)^2 + k^2 u(w)^2, iterated
 * to rest; covariance inv(A'WA). Rows in both senses may be mixed, with signs.
 *
 * brushDrop - vb [V]; null fits it too, from rows of at least three current levels
 *
 * Effective variance: J. Orear, Least squares when both variables have uncertainties, Am. J. Phys. 50 (1982) 912
 * (from memory).
 */
export function identifyMotor(rows: readonly MotorReading[], brushDrop: number | null): MotorIdentity {
  const problems = rowProblems(rows, MOTOR_UNCERTAINTIES)
  if (brushDrop !== null) problems.push(...numberProblems('brushDrop', brushDrop))
  const unknowns = brushDrop === null ? 3 : 2
  if (rows.length < unknowns) problems.push(tooFew(unknowns, rows.length))
  else if (brushDrop === null && problems.length === 0 && currentLevels(rows) < LEAST_LEVELS)
    problems.push(
      refused('', 'the brush drop can be fitted only from rows of three or more different currents'),
    )
  if (problems.length > 0) return { fit: null, problems }
  const linearise = (values: readonly number[]) => rows.map((row) => deviation(row, values, brushDrop))
  const first = leastSquares(linearise(Array.from({ length: unknowns }, () => 0)))
  const fit = first && gaussNewton(first.values, linearise)
  const cure = brushDrop === null ? CURE_WITH_DROP : CURE
  if (!fit) return { fit: null, problems: [undetermined(cure)] }
  return {
    fit: {
      ...quality(fit),
      resistance: estimate(fit, 0),
      emfConstant: estimate(fit, 1),
      brushDrop: brushDrop === null ? estimate(fit, 2) : { value: brushDrop, uncertainty: 0 },
    },
    problems: fitDoubts(fit, cure),
  }
}

/** How far a row is from the law with R, k and, where it is fitted, vb. */
function deviation(row: MotorReading, values: readonly number[], brushDrop: number | null): Equation {
  const { voltage, current, speed } = row
  const [R = 0, k = 0, vb = brushDrop ?? 0] = values
  const sense = Math.sign(current)
  return {
    factors: brushDrop === null ? [current, speed, sense] : [current, speed],
    target: voltage - vb * sense - R * current - k * speed,
    uncertainty: Math.hypot(row.voltageUncertainty, R * row.currentUncertainty, k * row.speedUncertainty),
  }
}

function currentLevels(rows: readonly MotorReading[]): number {
  const sorted = [...rows].sort((a, b) => a.current - b.current)
  let levels = 0
  let last: MotorReading | undefined
  for (const row of sorted) {
    const joint = Math.hypot(row.currentUncertainty, last?.currentUncertainty ?? 0)
    if (last && row.current - last.current <= APART * joint) continue
    levels++
    last = row
  }
  return levels
}
