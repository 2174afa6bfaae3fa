/** What meters would show of a wave that repeats itself, from its samples over whole periods. */

export interface Meters {
  /** A true-r.m.s. meter set to alternating and direct together */
  readonly rms: number
  /** A direct-current meter */
  readonly mean: number
  /** Mean of the size, which meters take that are not true-r.m.s. */
  readonly rectified: number
  /** Largest size */
  readonly peak: number
  readonly least: number
  readonly most: number
  /** From the least to the most */
  readonly swing: number
  /** A frequency meter [Hz]; NaN where nothing changes that it could count */
  readonly frequency: number
}

/** Meters that are not true-r.m.s. show the mean of the size times this, right for a sine alone: pi/(2 sqrt 2). */
export const SINE_FORM = Math.PI / (2 * Math.SQRT2)

/** How far, in parts of the swing, a wave must pass its mean to be counted. Our choice. */
const HYSTERESIS = 0.05
/** Swing in parts of the peak below which a meter counts nothing. Our choice. */
const LEAST_SWING = 1e-3

/** Mean of the size over a straight stretch from a to b. */
const meanSize = (a: number, b: number): number =>
  a * b >= 0 ? Math.abs(a + b) / 2 : (a * a + b * b) / (2 * Math.abs(a - b))

/** Straight between samples; two samples at one time are a step. */
export function readMeters(time: Float64Array, values: Float64Array): Meters {
  const length = time.at(-1)! - time[0]!
  let mean = 0
  let square = 0
  let rectified = 0
  let least = values[0]!
  let most = values[0]!
  for (let i = 1; i < time.length; i++) {
    const h = (time[i]! - time[i - 1]!) / length
    const a = values[i - 1]!
    const b = values[i]!
    mean += (h * (a + b)) / 2
    square += (h * (a * a + a * b + b * b)) / 3
    rectified += h * meanSize(a, b)
    least = Math.min(least, b)
    most = Math.max(most, b)
  }
  const peak = Math.max(Math.abs(least), Math.abs(most))
  const swing = most - least
  const count = swing > LEAST_SWING * peak ? countRises(values, mean, HYSTERESIS * swing) : 0
  const frequency = count > 0 ? count / length : Number.NaN
  return { rms: Math.sqrt(square), mean, rectified, peak, least, most, swing, frequency }
}

/** How often the wave rises through its mean, each end joined to the other. */
function countRises(values: Float64Array, mean: number, hysteresis: number): number {
  let high = false
  let rises = 0
  for (let pass = 0; pass < 2; pass++) {
    rises = 0
    for (const value of values) {
      if (high && value < mean - hysteresis) high = false
      else if (!high && value > mean + hysteresis) {
        high = true
        rises++
      }
    }
  }
  return rises
}
