import type { Equation, Fit } from './least-squares.ts'
import { leastSquares } from './least-squares.ts'

/** A law seen from one set of values: how each reading misses it, and how that changes with each value. */
export type Linearise = (values: readonly number[]) => readonly Equation[]

const MOST_ROUNDS = 200
const MOST_HALVINGS = 40
/** At rest when a step is this part of the values' own uncertainty. */
const REST = 1e-10

/**
 * Fits a law that is not linear in its unknowns: each round solves for the step from the deviations, and halves it
 * until it makes them smaller. Null where the readings do not fix the unknowns or the rounds find no rest. Uncertainties
 * may depend on the values (effective variance): they are held within a round.
 */
export function gaussNewton(start: readonly number[], linearise: Linearise): Fit | null {
  let values = start
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const equations = linearise(values)
    const step = leastSquares(equations)
    if (!step) return null
    const resting = step.values.every(
      (part, j) => Math.abs(part) <= REST * Math.sqrt(step.covariance[j]![j]!),
    )
    const next = shorten(values, step, equations, linearise)
    if (resting || !next) return resting ? { ...step, values } : null
    values = next
  }
  return null
}

/** The values a step on: whole, or so much of it that the deviations fall. */
function shorten(
  values: readonly number[],
  step: Fit,
  equations: readonly Equation[],
  linearise: Linearise,
): readonly number[] | null {
  const before = sumOfSquares(equations, equations)
  let part = 1
  for (let halving = 0; halving < MOST_HALVINGS; halving++) {
    const next = values.map((value, j) => value + part * step.values[j]!)
    const after = sumOfSquares(linearise(next), equations)
    // Where nothing is left to gain, rounding may show a little more instead of a little less.
    if (after <= before * (1 + Number.EPSILON * equations.length) || after <= step.chiSquare * (1 + REST))
      return next
    part /= 2
  }
  return null
}

/** Deviations of one set in units of the uncertainties of another. */
const sumOfSquares = (deviations: readonly Equation[], scale: readonly Equation[]): number =>
  deviations.reduce((sum, { target }, k) => sum + (target / scale[k]!.uncertainty) ** 2, 0)
