/**
 * Whether a part that can be touched counts as live. IEC 60335-1, 8.1.4 (4th and 5th ed.), as quoted on a page seen. A
 * number here is no permission to touch anything.
 */

/** A part within reach, behind whatever holds its current back. */
export interface TouchablePart {
  /** Largest voltage to anything else within reach [V] */
  readonly peakVoltage: number
  /** What can flow through whoever touches it [A]; null where nothing but the supply holds it back */
  readonly current: { readonly direct: number; readonly alternatingPeak: number } | null
  /** Between the part and the supply [F] */
  readonly capacitance: number
}

/** Peak of extra-low voltage [V] */
export const EXTRA_LOW_PEAK = 42.4
/** [A] */
export const MOST_DIRECT = 2e-3
export const MOST_ALTERNATING_PEAK = 0.7e-3
/** Up to 450 V peak [F], up to 15 kV [C], above [J] */
export const MOST_CAPACITANCE = 0.1e-6
export const MOST_CHARGE = 45e-6
export const MOST_ENERGY = 350e-3
const CAPACITANCE_COUNTS_TO = 450 // [V]
const CHARGE_COUNTS_TO = 15e3 // [V]

export function countsAsLive({ peakVoltage: V, current, capacitance: C }: TouchablePart): boolean {
  if (V <= EXTRA_LOW_PEAK) return false
  if (!current || current.direct > MOST_DIRECT || current.alternatingPeak > MOST_ALTERNATING_PEAK) return true
  if (V <= CAPACITANCE_COUNTS_TO) return C > MOST_CAPACITANCE
  return V <= CHARGE_COUNTS_TO ? C * V > MOST_CHARGE : (C * V ** 2) / 2 > MOST_ENERGY
}
