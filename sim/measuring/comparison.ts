/** A value with its standard uncertainty, both in one unit. */
export interface Estimate {
  readonly value: number
  readonly uncertainty: number
}

/** How a reading stands to what is computed. */
export interface Comparison {
  /** Reading less what is computed */
  readonly difference: number
  /** Combined standard uncertainty of the difference */
  readonly uncertainty: number
  /** En: the difference in units of its expanded uncertainty */
  readonly normalisedError: number
  readonly agrees: boolean
}

/** Coverage factor of an expanded uncertainty of about 95 %. */
const COVERAGE = 2

/**
 * En = (x - model)/(2 uc); they agree where abs(En) <= 1. The form is that of ISO 13528, comparisons between
 * laboratories (from memory). Without any uncertainty only equal values agree.
 */
export function compareReading(reading: Estimate, computed: Estimate): Comparison {
  const difference = reading.value - computed.value
  const uncertainty = Math.hypot(reading.uncertainty, computed.uncertainty)
  const normalisedError = difference === 0 ? 0 : difference / (COVERAGE * uncertainty)
  return { difference, uncertainty, normalisedError, agrees: Math.abs(normalisedError) <= 1 }
}
