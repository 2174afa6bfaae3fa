import { describe, expect, test } from 'vitest'
import { SINE_FORM, readMeters } from '../../web/drive/waves-meters.ts'
import { near } from '../support/near.ts'

const SAMPLES = 4001

/** Two periods of 20 ms. */
const time = Float64Array.from({ length: SAMPLES }, (_, n) => (0.04 * n) / (SAMPLES - 1))
const along = (wave: (angle: number) => number) => time.map((t) => wave(2 * Math.PI * 50 * t))

/** Straight lines between samples miss a sine by at most (angle of a sample)^2/8. */
const STRAIGHT = (4 * Math.PI) ** 2 / (SAMPLES - 1) ** 2 / 8

describe('meters on a wave', () => {
  test('of a sine: peak over root two, no mean, 2/pi of the peak by size', () => {
    const { rms, mean, rectified, frequency, peak } = readMeters(
      time,
      along((x) => 325 * Math.sin(x)),
    )
    near(rms, 325 / Math.SQRT2, 325 * STRAIGHT)
    near(mean, 0, 1e-9)
    near(rectified, (2 * 325) / Math.PI, 325 * STRAIGHT)
    near(SINE_FORM * rectified, rms, 325 * STRAIGHT)
    near(peak, 325, 325 * STRAIGHT)
    near(frequency, 50, 1e-9)
  })

  test('of a rectified sine: twice the frequency, mean 2/pi of the peak', () => {
    const { rms, mean, frequency } = readMeters(
      time,
      along((x) => 34 * Math.abs(Math.sin(x))),
    )
    near(rms, 34 / Math.SQRT2, 34 * STRAIGHT)
    near(mean, (2 * 34) / Math.PI, 34 * STRAIGHT)
    near(frequency, 100, 1e-9)
  })

  test('of a sine cut at 90 degrees: half the mean square', () => {
    const cut = along((x) => (x % Math.PI >= Math.PI / 2 ? Math.sin(x) : 0))
    const { rms, mean, frequency } = readMeters(time, cut)
    // a step between two samples is taken as a slope
    near(rms, 0.5, 2 / SAMPLES)
    near(mean, 0, 2 / SAMPLES)
    near(frequency, 50, 1e-9)
  })

  test('of a step told by two samples at one time: exact', () => {
    const at = Float64Array.of(0, 3, 3, 10)
    const { rms, mean, swing, frequency } = readMeters(at, Float64Array.of(12, 12, 0, 0))
    near(mean, 3.6, 1e-12)
    near(rms, Math.sqrt(0.3 * 144), 1e-12)
    near(swing, 12, 0)
    near(frequency, 0.1, 1e-12)
  })

  test('of direct current: rms is mean, and there is nothing to count', () => {
    const { rms, mean, rectified, frequency } = readMeters(
      time,
      time.map(() => -12.4),
    )
    near(rms, 12.4, 1e-12)
    near(mean, -12.4, 1e-12)
    near(rectified, 12.4, 1e-12)
    expect(frequency).toBeNaN()
  })

  test('a small ripple on a direct current is not counted twice', () => {
    const wave = along((x) => 5 + 0.1 * Math.sin(2 * x) + 0.004 * Math.sin(40 * x))
    near(readMeters(time, wave).frequency, 100, 1e-9)
  })
})
