/**
 * Sparks at the edge of one brush, as a function of seed and model time: nothing is remembered, so a moment that is
 * shown again looks the same. Many points swell and fade one after the other, so that their light together is steady
 * and none of them comes more often than twice in a second of screen time.
 */

export interface SparkField {
  readonly seed: number
  /** For each point: place along the edge -1 to 1, away from it 0 to 1, light 0 to 1 */
  readonly points: Float32Array
  /** Points in use */
  count: number
  /** Size of a point, and light of the glow behind it, 0 to 1 */
  size: number
  glow: number
}

export const SPARK_STRIDE = 3
export const MOST_SPARKS = 28

/** Index below which commutation is dark, as the grades have it, and from which it grows no further */
const DARK = 0.5
const MOST = 2.5
const FEWEST = 4
const LEAST_SIZE = 0.4
const LEAST_GLOW = 0.25

/** From one swelling of a point to the next [s of screen time]; 2 Hz, below the 3 Hz of WCAG 2.2, 2.3.1. */
export const SPARK_PERIOD = 0.5

export const newSparkField = (seed: number): SparkField => ({
  seed,
  points: new Float32Array(SPARK_STRIDE * MOST_SPARKS),
  count: 0,
  size: 0,
  glow: 0,
})

/** How far the index is on its way from dark to most, 0 to 1. */
const sparkPart = (index: number): number => Math.max(0, Math.min(1, (index - DARK) / (MOST - DARK)))

/** Bits without pattern from three whole numbers: the finisher of MurmurHash3 (A. Appleby, public domain). */
function mixedBits(seed: number, cycle: number, point: number): number {
  let bits = Math.imul(seed ^ Math.imul(cycle, 0x9e3779b1), 0x85ebca6b) ^ Math.imul(point + 1, 0xc2b2ae35)
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b)
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35)
  return (bits ^ (bits >>> 16)) >>> 0
}

/**
 * Writes the sparks of one moment.
 *
 * index  - the worse index of the brushes; none below 0.5
 * time   - model time [s]
 * pace   - how many times slower than real the model is shown, >= 1
 */
export function writeSparks(field: SparkField, index: number, time: number, pace: number): void {
  const part = index < DARK ? -1 : sparkPart(index)
  field.count = part < 0 ? 0 : Math.round(FEWEST + part * (MOST_SPARKS - FEWEST))
  field.size = part < 0 ? 0 : LEAST_SIZE + part * (1 - LEAST_SIZE)
  field.glow = part < 0 ? 0 : LEAST_GLOW + part * (1 - LEAST_GLOW)
  const { points, count, seed } = field
  const cycles = (time * pace) / SPARK_PERIOD
  for (let point = 0; point < count; point++) {
    const at = cycles + point / count
    const cycle = Math.floor(at)
    const bits = mixedBits(seed, cycle, point)
    const swell = Math.sin(Math.PI * (at - cycle))
    points[SPARK_STRIDE * point] = ((bits & 0xffff) / 0xffff) * 2 - 1
    points[SPARK_STRIDE * point + 1] = (bits >>> 16) / 0xffff
    points[SPARK_STRIDE * point + 2] = swell * swell
  }
}
