/** One initial value problem, solved by our own stepper and by general libraries. */
import { solveODE } from 'mathjs'
import { Solver } from 'odex'
import {
  acceptStep,
  beginStep,
  newStepper,
  stepFactor,
  takeStep,
  TIME,
} from '../../sim/numeric/dormand-prince.ts'

export interface StartProblem {
  /** Writes the rates of all components at y, time being first. */
  writeRates(rates: Float64Array, y: Float64Array): void
  /** The same for who wants a list back, time left out */
  readonly rates: (t: number, y: readonly number[]) => number[]
  /** Ordinary size of each component */
  readonly sizes: readonly number[]
}

/** The state at the end of a start from rest [s]. */
type Way = (until: number, tolerance: number) => readonly number[]

/**
 * The states at some moments, each by a start of its own: at a single moment an error can pass through zero, and would
 * make a tolerance look better than it is.
 */
export type Solve = (tolerance: number) => readonly number[]

export const atAll =
  (moments: readonly number[], way: Way): Solve =>
  (tolerance) =>
    moments.flatMap((until) => way(until, tolerance))

/** Part of the way that is tried as the first step by all alike */
const FIRST = 1 / 1000

export const byOwnStepper =
  (problem: StartProblem): Way =>
  (until, tolerance) => {
    const { sizes } = problem
    const size = sizes.length + 1
    const stepper = newStepper(size, size, size)
    stepper.sizes.set(sizes, 1)
    stepper.tolerance = tolerance
    beginStep(stepper, problem)
    const { y } = stepper
    let span = FIRST * until
    while (y[TIME]! < until) {
      const left = until - y[TIME]!
      stepper.span = Math.min(span, left)
      takeStep(stepper, problem)
      if (stepper.error <= 1) acceptStep(stepper)
      if (stepper.span === left && stepper.error <= 1) break
      span = stepper.span * stepFactor(stepper.error)
    }
    return [...y.subarray(1)]
  }

export const byOdex =
  ({ rates, sizes }: StartProblem): Way =>
  (until, tolerance) => {
    const solver = new Solver(sizes.length)
    solver.relativeTolerance = tolerance
    solver.absoluteTolerance = tolerance
    solver.initialStepSize = FIRST * until
    solver.maxSteps = 1e6
    return solver.solve(
      rates,
      0,
      sizes.map(() => 0),
      until,
    ).y
  }

export const byMathjs =
  ({ rates, sizes }: StartProblem): Way =>
  (until, tolerance) =>
    solveODE(
      rates,
      [0, until],
      sizes.map(() => 0),
      { tol: tolerance, firstStep: FIRST * until, maxIter: 1e6 },
    ).y.at(-1)!

/** Largest part of its own value by which a component misses. */
export const missOf = (found: readonly number[], exact: readonly number[]): number =>
  Math.max(...exact.map((value, n) => Math.abs(found[n]! / value - 1)))
