/** Stroboscope practice as an instrument maker's manual prints it (pages seen), and rules of sampled pictures. */
import { describe, expect, test } from 'vitest'
import { apparentRate } from '../../sim/drive/screen-rule.ts'
import {
  blurAngle,
  deceptiveRates,
  frozenImages,
  lampFlashes,
  LEAST_COMFORTABLE_FLASHES,
  rateFromThree,
  rateFromTwo,
} from '../../sim/measuring/stroboscope.ts'
import { degrees } from '../../sim/quantity/convert.ts'
import { near } from '../support/near.ts'

describe('true speed from neighbouring one-image rates: manual of a stroboscope', () => {
  test('1500 and 1000 flashes a minute', () => near(rateFromTwo(1500, 1000), 3000, 1e-6))
  test('2500 and 5000/3 flashes a minute', () => near(rateFromTwo(2500, 5000 / 3), 5000, 1e-6))
  test('three rates', () => near(rateFromThree(2500, 5000 / 3, 1250), 5000, 1e-6))
})

test.each([
  [750, 1],
  [1000, 1],
  [1500, 1],
  [3000, 1],
  [6000, 2],
  [9000, 3],
  [12_000, 4],
  [4500, 3],
])('3000 r/min under %i flashes a minute shows one mark %i times: manual; 3/2 derived', (flashes, images) => {
  expect(frozenImages(flashes, 3000)).toBe(images)
})

test.each([
  [1005, -5],
  [995, 5],
])('a fan at 1000 r/min under %i flashes a minute creeps at %i r/min: manual', (flashes, seen) => {
  near(apparentRate(1000, 1, flashes), seen, 1e-9)
})

test('a flash of 100 us on 6000 r/min blurs 3.6 deg: manual', () => {
  near(degrees(blurAngle(6000 / 60, 1e-4)), 3.6, 1e-6)
})

test('three spokes at 30 pictures a second stand still at 10 turns a second: rule of camera practice', () => {
  const [rate = 0] = deceptiveRates(30, 3, 10)
  near(rate, 10, 1e-9)
  near(rate / 30, 1 / 3, 1e-9)
  near(apparentRate(rate, 3, 30), 0, 1e-9)
})

test.each([
  [1, 15],
  [3, 5],
])(
  '%i marks under 30 flashes a second are seen as they turn below %i turns a second: Nyquist',
  (B, limit) => {
    const below = limit - 1e-9
    near(apparentRate(below, B, 30), below, 1e-9)
    // just above they seem to turn back
    near(apparentRate(limit + 1e-9, B, 30), -limit, 2e-9)
  },
)

test('lamps at 50 Hz: 6000 r/min with one mark, 3000 with two images, 2000 with three blades: twice the mains', () => {
  const flashes = lampFlashes(50)
  near(60 * deceptiveRates(flashes, 1, 100)[0]!, 6000, 1e-6)
  expect(frozenImages(60 * flashes, 3000)).toBe(2)
  near(60 * deceptiveRates(flashes, 3, 50)[0]!, 2000, 1e-6)
})

test('below 300 flashes a minute is no comfort: manual', () => {
  near(60 * LEAST_COMFORTABLE_FLASHES, 300, 0)
})
