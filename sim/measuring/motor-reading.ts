import type { Estimate } from './comparison.ts'
import type { Fit } from './least-squares.ts'
import type { ReadingProblem } from './reading-problem.ts'
import { doubted, refused } from './reading-problem.ts'

/**
 * One row of readings at the brushes of a motor on direct current, or means of one that ripples without gaps: in a gap
 * the brushes drop nothing, which the laws here do not know. Each with its standard uncertainty, > 0.
 */
export interface MotorReading {
  /** Across the brushes [V] */
  readonly voltage: number
  readonly voltageUncertainty: number
  /** [A] */
  readonly current: number
  readonly currentUncertainty: number
  /** Of the motor's shaft [rad/s] */
  readonly speed: number
  readonly speedUncertainty: number
}

export const MOTOR_UNCERTAINTIES = ['voltageUncertainty', 'currentUncertainty', 'speedUncertainty'] as const

/** What a fit says besides the values it is after. */
export interface FitQuality {
  readonly covariance: readonly (readonly number[])[]
  readonly chiSquare: number
  readonly degreesOfFreedom: number
  /** How much the relative errors of the readings can grow */
  readonly condition: number
}

export const estimate = (fit: Fit, j: number): Estimate => ({
  value: fit.values[j]!,
  uncertainty: Math.sqrt(fit.covariance[j]![j]!),
})

export const quality = ({ covariance, chiSquare, degreesOfFreedom, condition }: Fit): FitQuality => ({
  covariance,
  chiSquare,
  degreesOfFreedom,
  condition,
})

/** Above this per degree of freedom the readings contradict the law or their own uncertainties. Our choice. */
const MOST_CHI_SQUARE = 3
/** A relative error of 1 % in the readings can then become one of 30 % in the result. Our choice. */
const MOST_CONDITION = 30

/** Doubts that hold for the fit of any law. `cure` says which readings would settle it. */
export function fitDoubts(fit: Fit, cure: string): ReadingProblem[] {
  const problems: ReadingProblem[] = []
  const { chiSquare, degreesOfFreedom, condition } = fit
  if (chiSquare > MOST_CHI_SQUARE * degreesOfFreedom && degreesOfFreedom > 0)
    problems.push(
      doubted(
        '',
        `readings should scatter as their uncertainties say, but do so ${Math.sqrt(chiSquare / degreesOfFreedom).toFixed(1)} times as much; one is wrong, or the law leaves something out`,
      ),
    )
  if (condition > MOST_CONDITION)
    problems.push(doubted('', `readings are too alike to tell the unknowns apart: ${cure}`))
  if (degreesOfFreedom === 0)
    problems.push(doubted('', 'as many readings as unknowns: nothing is left to check the result by'))
  return problems
}

export const tooFew = (least: number, came: number): ReadingProblem =>
  refused('', `at least ${least} rows are needed, got ${came}`)

export const undetermined = (cure: string): ReadingProblem =>
  refused('', `these readings do not fix the unknowns: ${cure}`)
