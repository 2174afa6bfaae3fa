import type { Estimate } from './comparison.ts'
import { rectangularUncertainty } from './uncertainty.ts'

/** A ratio of counted turns, with what miscounting can do to it. */
export interface CountedRatio extends Estimate {
  /** With either count one off the worst way; `most` is Infinity where the second count may have been none */
  readonly least: number
  readonly most: number
}

/**
 * Ratio r = N1/N2 of two counts, each within ±1 of the truth: rectangular of half width 1, so that
 * u(r) = r sqrt(sum (1/(√3 N))^2).
 *
 * N1, N2 - turns or passages counted, whole, >= 1
 */
export function turnRatioUncertainty(N1: number, N2: number): CountedRatio {
  const value = N1 / N2
  const u = rectangularUncertainty(1)
  return {
    value,
    uncertainty: value * Math.hypot(u / N1, u / N2),
    least: (N1 - 1) / (N2 + 1),
    most: (N1 + 1) / (N2 - 1),
  }
}

/** Rate of turning from pulses counted for a time. */
export interface CountedRate {
  /** [turn/s] */
  readonly rate: number
  /** What one pulse more or less makes: 1/(ppr T) [turn/s] */
  readonly resolution: number
}

/**
 * pulses - counted, whole
 * ppr    - pulses per turn, whole, >= 1
 * T      - time of counting [s], > 0
 */
export const countedRate = (pulses: number, ppr: number, T: number): CountedRate => ({
  rate: pulses / (ppr * T),
  resolution: 1 / (ppr * T),
})
