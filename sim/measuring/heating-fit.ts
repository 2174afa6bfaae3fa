import type { Estimate } from './comparison.ts'
import { gaussNewton } from './gauss-newton.ts'
import type { Equation, Fit } from './least-squares.ts'
import { leastSquares } from './least-squares.ts'
import type { FitQuality } from './motor-reading.ts'
import { estimate, fitDoubts, quality, tooFew, undetermined } from './motor-reading.ts'
import type { ReadingProblem } from './reading-problem.ts'
import { doubted, rowProblems } from './reading-problem.ts'

/** One reading of a temperature, or of a rise, while something warms or cools. */
export interface TemperatureReading {
  /** [s] */
  readonly time: number
  /** [degC] or [K], all rows alike */
  readonly temperature: number
  /** Standard uncertainty [K], > 0 */
  readonly uncertainty: number
}

export interface HeatingFit extends FitQuality {
  /** Where it settles, in the unit of the readings */
  readonly settled: Estimate
  /** At time 0 */
  readonly start: Estimate
  /** [s] */
  readonly timeConstant: Estimate
}

export interface HeatingIdentity {
  readonly fit: HeatingFit | null
  readonly problems: readonly ReadingProblem[]
}

const UNKNOWNS = 3
const CURE = 'go on until the temperature hardly changes'
/** Time constants tried to begin with: this many from 1/100 of the run to 100 runs. */
const TRIALS = 41
const FURTHEST = 100

/** Exponential warming or cooling: T = Ts - (Ts - T0) exp(-t/tau), by Gauss-Newton from the best of many tau. */
export function fitHeatingCurve(rows: readonly TemperatureReading[]): HeatingIdentity {
  const problems = rowProblems(rows, ['uncertainty'])
  if (rows.length < UNKNOWNS) problems.push(tooFew(UNKNOWNS, rows.length))
  if (problems.length > 0) return { fit: null, problems }
  const times = rows.map(({ time }) => time)
  const span = Math.max(...times) - Math.min(...times)
  const start = bestStart(rows, span)
  const fit = start && gaussNewton(start, (values) => rows.map((row) => deviation(row, values)))
  if (!fit) return { fit: null, problems: [undetermined(CURE)] }
  const timeConstant = estimate(fit, 2)
  // A time constant that may as well be none is not told by the readings: they hardly change, or run away.
  if (!(timeConstant.value > timeConstant.uncertainty)) return { fit: null, problems: [undetermined(CURE)] }
  const doubts = fitDoubts({ ...fit, condition: 0 }, CURE)
  if (span < timeConstant.value)
    doubts.push(doubted('', `the run should last a time constant or more: ${CURE}`))
  return {
    fit: { ...quality(fit), settled: estimate(fit, 0), start: estimate(fit, 1), timeConstant },
    problems: doubts,
  }
}

function deviation(row: TemperatureReading, values: readonly number[]): Equation {
  const [settled = 0, start = 0, tau = 1] = values
  const left = Math.exp(-row.time / tau)
  return {
    factors: [1 - left, left, ((start - settled) * left * row.time) / tau ** 2],
    target: row.temperature - settled - (start - settled) * left,
    uncertainty: row.uncertainty,
  }
}

/** With tau held, the other two follow a linear law. */
function bestStart(rows: readonly TemperatureReading[], span: number): number[] | null {
  let best: Fit | null = null
  let bestTau = 0
  for (let trial = 0; trial < TRIALS; trial++) {
    const tau = span * FURTHEST ** ((2 * trial) / (TRIALS - 1) - 1)
    const fit = leastSquares(
      rows.map((row) => {
        const left = Math.exp(-row.time / tau)
        return { factors: [1 - left, left], target: row.temperature, uncertainty: row.uncertainty }
      }),
    )
    if (!fit || (best && fit.chiSquare >= best.chiSquare)) continue
    best = fit
    bestTau = tau
  }
  return best && [...best.values, bestTau]
}

/**
 * Time constant from two temperatures a time t apart, where it is known where it settles:
 * t/ln((from - settled)/(to - settled)), in the unit of t.
 */
export const timeConstantTo = (settled: number, from: number, to: number, t: number): number =>
  t / Math.log((from - settled) / (to - settled))

/**
 * Settled temperature and time constant from two temperatures and how fast each was changing then:
 * dT/dt = (Ts - T)/tau at both. Any units; slopes differ.
 */
export function settledFromSlopes(
  first: { readonly temperature: number; readonly slope: number },
  second: { readonly temperature: number; readonly slope: number },
): { readonly settled: number; readonly timeConstant: number } {
  const timeConstant = (second.temperature - first.temperature) / (first.slope - second.slope)
  return { settled: first.temperature + first.slope * timeConstant, timeConstant }
}
