/**
 * What a reading is worth: from the limits that an instrument's maker promises to a standard uncertainty, and from
 * uncertainties of readings to that of what is computed from them. JCGM 100:2008, Guide to the expression of
 * uncertainty in measurement (GUM), 4.3.7, 5.1.2, 5.2.2 and F.2.2.1; written here from memory.
 */

/** What a maker promises of an instrument: the sum of these is the limit of error. All >= 0. */
export interface Accuracy {
  /** Part of the reading; 0.01 is one per cent */
  readonly ofReading: number
  /** Part of the range, and the range in the unit of the reading */
  readonly ofRange: number
  readonly range: number
  /** Counts of the last digit, and what one count is in the unit of the reading; 0 where it is not known */
  readonly digits: number
  readonly resolution: number
}

/** An instrument with what is told of it; what is not told is 0. */
export const instrument = (told: Partial<Accuracy>): Accuracy => ({
  ofReading: 0,
  ofRange: 0,
  range: 0,
  digits: 0,
  resolution: 0,
  ...told,
})

/** Limit of error at a reading, in its unit. */
export const limitOfError = (reading: number, accuracy: Accuracy): number =>
  accuracy.ofReading * Math.abs(reading) +
  accuracy.ofRange * accuracy.range +
  accuracy.digits * accuracy.resolution

/** Standard uncertainty of a value that lies anywhere within ±a of what is read: a/√3. */
export const rectangularUncertainty = (a: number): number => a / Math.sqrt(3)

/** Standard uncertainty of a value shown in whole digits of size dx: dx/√12. */
export const digitUncertainty = (dx: number): number => dx / Math.sqrt(12)

/** Standard uncertainty of one reading: limit of error and rounding to a digit, both rectangular. */
export const readingUncertainty = (reading: number, accuracy: Accuracy): number =>
  Math.hypot(rectangularUncertainty(limitOfError(reading, accuracy)), digitUncertainty(accuracy.resolution))

/** Correlation of inputs j and k, -1 to 1. */
export type Correlation = (j: number, k: number) => number

const uncorrelated: Correlation = (j, k) => (j === k ? 1 : 0)

/**
 * Covariance of two results of the same inputs: sum over j and k of cj dk uj uk rjk. With d = c it is the square of
 * the combined standard uncertainty uc.
 *
 * c, d - sensitivities of the two results to each input
 * u    - standard uncertainties of the inputs
 * r    - correlations of the inputs
 */
export function covarianceOf(
  c: readonly number[],
  d: readonly number[],
  u: readonly number[],
  r: Correlation = uncorrelated,
): number {
  let sum = 0
  for (let j = 0; j < u.length; j++)
    for (let k = 0; k < u.length; k++) sum += c[j]! * d[k]! * u[j]! * u[k]! * r(j, k)
  return sum
}

/** Combined standard uncertainty uc; correlations that cannot be true together give 0 rather than no number. */
export const combinedUncertainty = (
  c: readonly number[],
  u: readonly number[],
  r: Correlation = uncorrelated,
): number => Math.sqrt(Math.max(0, covarianceOf(c, c, u, r)))

/** Limit of a result when every input errs to its own limit the worst way at once: sum of |cj| aj. */
export const worstCaseLimit = (c: readonly number[], a: readonly number[]): number =>
  c.reduce((sum, cj, j) => sum + Math.abs(cj * a[j]!), 0)

/** Where truncation and rounding of a central difference are about equal. */
const STEP = Math.cbrt(Number.EPSILON)

/** How much a result changes with each input: central differences, as GUM 5.1.3 note 2 allows. */
export function sensitivities(
  result: (inputs: readonly number[]) => number,
  inputs: readonly number[],
  uncertainties: readonly number[],
): number[] {
  return inputs.map((value, j) => {
    const step = STEP * Math.max(Math.abs(value), Math.abs(uncertainties[j]!)) || STEP
    const moved = (by: number) => inputs.map((other, k) => (k === j ? value + by : other))
    return (result(moved(step)) - result(moved(-step))) / (value + step - (value - step))
  })
}
