import { describe, expect, test } from 'vitest'
import {
  integral,
  peakOf,
  rmsBetween,
  squareIntegral,
  timeAt,
  turnsBetween,
} from '../../web/drive/transient-facts.ts'
import { near } from '../support/near.ts'

const time = Float64Array.from({ length: 101 }, (_, n) => n / 100)
const ramp = time.map((t) => 10 * t)

describe('what is read off a run', () => {
  test('the peak is the largest size, whatever its sense', () => {
    const { at, value } = peakOf(
      time,
      time.map((t) => -5 * Math.exp(-((t - 0.3) ** 2) / 0.001)),
    )
    near(at, 0.3, 1e-12)
    near(value, 5, 1e-12)
  })

  test('a level is found between samples', () => {
    near(timeAt(time, ramp, 2.345, 'up'), 0.2345, 1e-12)
    near(
      timeAt(
        time,
        ramp.map((value) => 10 - value),
        2.345,
        'down',
      ),
      0.7655,
      1e-12,
    )
  })

  test('a level that is never reached is told as such, and one that stands at the start at once', () => {
    expect(timeAt(time, ramp, 11, 'up')).toBe(Infinity)
    near(timeAt(time, ramp, 5, 'down', 0), 0, 0)
    near(timeAt(time, ramp, 5, 'up', 0.8), 0.8, 1e-12)
  })

  test('integrals end between samples too', () => {
    near(integral(time, ramp, 0.105, 0.305), 5 * (0.305 ** 2 - 0.105 ** 2), 1e-12)
    near(integral(time, ramp, 0, 2), 5, 1e-12)
  })

  test('I²t and r.m.s. of a steady current', () => {
    const steady = time.map(() => -3)
    near(squareIntegral(time, steady, 0, 0.5), 4.5, 1e-12)
    near(rmsBetween(time, steady, 0.25, 0.5), 3, 1e-12)
  })

  test('turns are counted from the speed', () => {
    near(turnsBetween({ time, speed: time.map(() => -20 * Math.PI) }, 0, 0.5), 5, 1e-12)
  })
})
