/** Straight-line and other linear laws through readings, each weighed by its own standard uncertainty. */
import { triangulate } from './triangle.ts'

/** One reading as a linear law sees it: sum of factors times unknowns = target. */
export interface Equation {
  readonly factors: readonly number[]
  readonly target: number
  /** Standard uncertainty of the target, > 0 */
  readonly uncertainty: number
}

export interface Fit {
  readonly values: readonly number[]
  /** Of the values, inv(A'WA) */
  readonly covariance: readonly (readonly number[])[]
  /** Sum of squared deviations in units of their uncertainty */
  readonly chiSquare: number
  /** Readings less unknowns */
  readonly degreesOfFreedom: number
  /** How much the readings' relative errors can grow, >= number of unknowns; columns brought to one length */
  readonly condition: number
}

/** Weaker than this part of its length, what a column tells beside the others is rounding. */
const WEAKEST = 1e-11

/**
 * Weighted least squares by Householder reflections; null where the equations do not fix the unknowns. Source of
 * method: G. H. Golub & C. F. Van Loan, Matrix Computations, 4th ed., 5.2 and 5.3 (from memory).
 */
export function leastSquares(equations: readonly Equation[]): Fit | null {
  const unknowns = equations[0]?.factors.length ?? 0
  if (unknowns === 0 || equations.length < unknowns) return null
  const rows = equations.map(({ factors, target, uncertainty }) => [
    ...factors.map((factor) => factor / uncertainty),
    target / uncertainty,
  ])
  const lengths = Array.from({ length: unknowns }, (_, j) => Math.hypot(...rows.map((row) => row[j]!)))
  if (lengths.some((length) => !(length > 0 && length < Infinity))) return null
  for (const row of rows) for (let j = 0; j < unknowns; j++) row[j] = row[j]! / lengths[j]!
  triangulate(rows, unknowns)
  for (let j = 0; j < unknowns; j++) if (!(Math.abs(rows[j]![j]!) > WEAKEST)) return null
  const inverse = invertTriangle(rows, unknowns)
  const values = lengths.map(
    (length, j) => inverse[j]!.reduce((sum, part, k) => sum + part * rows[k]![unknowns]!, 0) / length,
  )
  const covariance = lengths.map((lengthJ, j) =>
    lengths.map((lengthK, k) => dot(inverse[j]!, inverse[k]!) / (lengthJ * lengthK)),
  )
  // Numbers at the ends of what a double holds have no fit rather than one of infinities.
  if (![...values, ...covariance.flat()].every(Number.isFinite)) return null
  return {
    values,
    covariance,
    chiSquare: rows.slice(unknowns).reduce((sum, row) => sum + row[unknowns]! ** 2, 0),
    degreesOfFreedom: equations.length - unknowns,
    condition: size(rows.slice(0, unknowns).map((row) => row.slice(0, unknowns))) * size(inverse),
  }
}

/** Rows of the inverse of the upper triangle. */
function invertTriangle(rows: readonly (readonly number[])[], unknowns: number): number[][] {
  const inverse = Array.from({ length: unknowns }, () => Array.from({ length: unknowns }, () => 0))
  for (let k = 0; k < unknowns; k++)
    for (let j = k; j >= 0; j--) {
      let sum = j === k ? 1 : 0
      for (let m = j + 1; m <= k; m++) sum -= rows[j]![m]! * inverse[m]![k]!
      inverse[j]![k] = sum / rows[j]![j]!
    }
  return inverse
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, j) => sum + value * b[j]!, 0)

/** Frobenius norm */
const size = (matrix: readonly (readonly number[])[]): number => Math.hypot(...matrix.flat())
