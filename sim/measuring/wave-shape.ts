/**
 * Numbers that tell how far a current or voltage is from a plain direct or sinusoidal one. From period means alone; all
 * SI, all r.m.s. Sources: M. H. Rashid, Power Electronics, chapter 3 (from memory); P. S. Bimbhra, Power Electronics,
 * chapter 6.
 */

/** r.m.s. over mean. */
export const formFactor = (rms: number, mean: number): number => rms / mean

/** r.m.s. of what is not the mean, over the mean; never negative by rounding. */
export const rippleFactor = (rms: number, mean: number): number =>
  Math.sqrt(Math.max(0, formFactor(rms, mean) ** 2 - 1))

/** One stretch of a period: how much of it, and the mean and mean square within. */
export interface Stretch {
  readonly share: number
  readonly mean: number
  readonly square: number
}

/** What a mean and a true-r.m.s. meter show over several stretches, whose shares are 1 together. */
export function overStretches(stretches: readonly Stretch[]): {
  readonly mean: number
  readonly rms: number
} {
  const sum = (part: (stretch: Stretch) => number) =>
    stretches.reduce((total, stretch) => total + stretch.share * part(stretch), 0)
  return { mean: sum(({ mean }) => mean), rms: Math.sqrt(sum(({ square }) => square)) }
}

/** What a sinusoidal source of V volts gives to a current of any shape. */
export interface SourceMeans {
  /** [V r.m.s.] */
  readonly voltage: number
  /** [A r.m.s.] */
  readonly current: number
  /** Mean of voltage times current [W] */
  readonly power: number
  /** Mean of current times the voltage a quarter period ahead [W] */
  readonly quadrature: number
}

/** Fundamental of the current [A r.m.s.]; harmonics carry no power against a sine. */
const fundamentalCurrent = ({ voltage, power, quadrature }: SourceMeans): number =>
  Math.hypot(power, quadrature) / voltage

/** Cosine of the angle between voltage and fundamental current. */
export const displacementFactor = ({ power, quadrature }: SourceMeans): number =>
  power / Math.hypot(power, quadrature)

/** Fundamental over whole current. */
export const distortionFactor = (means: SourceMeans): number => fundamentalCurrent(means) / means.current

/** Harmonics over fundamental. */
export const harmonicFactor = (means: SourceMeans): number =>
  Math.sqrt(Math.max(0, 1 / distortionFactor(means) ** 2 - 1))

/** Power over volt-amperes: displacement times distortion. */
export const powerFactor = ({ voltage, current, power }: SourceMeans): number => power / (voltage * current)

/**
 * Ripple of a smoothed bridge from peak to peak [V]: I/(2 f C). An upper estimate, since the capacitor is taken to give
 * the whole current all the time.
 *
 * I - mean current taken out [A]
 * f - of the mains [Hz]
 * C - [F]
 */
export const rippleEstimate = (I: number, f: number, C: number): number => I / (2 * f * C)
