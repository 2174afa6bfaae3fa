import { expect, test } from 'vitest'
import {
  combinedUncertainty,
  covarianceOf,
  instrument,
  limitOfError,
  readingUncertainty,
  sensitivities,
  worstCaseLimit,
} from '../../../sim/measuring/uncertainty.ts'
import { near, relativelyNear } from '../../support/near.ts'
import { evenDraws, scatterOf, spread } from './draws.ts'

const DRAWS = 20_000

test('the digit has a part only where it is known', () => {
  near(readingUncertainty(230, instrument({ ofReading: 0.01 })), 2.3 / Math.sqrt(3), 1e-12)
  near(readingUncertainty(230, instrument({ resolution: 0.1 })), 0.1 / Math.sqrt(12), 1e-12)
})

test('a negative reading is as uncertain as its mirror image', () => {
  const meter = instrument({ ofReading: 0.025, digits: 3, resolution: 0.01 })
  expect(limitOfError(-32, meter)).toBe(limitOfError(32, meter))
})

test(`uncertainty of a reading is the scatter of ${DRAWS} readings with rectangular errors (seed 41)`, () => {
  const meter = instrument({ ofReading: 0.005, ofRange: 0.001, range: 20, resolution: 0.05 })
  const draw = evenDraws(41)
  const read = () => {
    const off = 12.34 + draw() * limitOfError(12.34, meter)
    return off + (draw() * meter.resolution) / 2
  }
  const { deviation } = spread(Array.from({ length: DRAWS }, read))
  relativelyNear(deviation, readingUncertainty(12.34, meter), scatterOf(DRAWS))
})

test('sensitivities of V cos(phi)/I are its derivatives', () => {
  const result = ([V = 0, I = 0, phi = 0]: readonly number[]) => (V * Math.cos(phi)) / I
  const c = sensitivities(result, [5, 0.02, 1], [0.01, 1e-5, 0.001])
  const exact = [Math.cos(1) / 0.02, (-5 * Math.cos(1)) / 0.02 ** 2, (-5 * Math.sin(1)) / 0.02]
  exact.forEach((slope, j) => relativelyNear(c[j]!, slope, 1e-9))
})

test('a sensitivity at an input of zero, certain or not, is a number', () => {
  for (const u of [0, 0.1]) relativelyNear(sensitivities(([x = 0]) => Math.sin(3 * x), [0], [u])[0]!, 3, 1e-8)
})

test('sum and difference of fully correlated inputs', () => {
  const together = () => 1
  near(combinedUncertainty([1, 1], [0.3, 0.4], together), 0.7, 1e-12)
  near(combinedUncertainty([1, -1], [0.3, 0.3], together), 0, 1e-12)
  near(combinedUncertainty([1, -1], [0.3, 0.4]), 0.5, 1e-12)
})

test('correlations that cannot be true together give no uncertainty rather than no number', () => {
  expect(combinedUncertainty([1, 1, 1], [1, 1, 1], (j, k) => (j === k ? 1 : -1))).toBe(0)
})

test('two results of the same inputs correlate by what they share', () => {
  near(covarianceOf([1, 1], [1, -1], [0.2, 0.1]), 0.2 ** 2 - 0.1 ** 2, 1e-15)
})

test('worst case is never below the combined uncertainty', () => {
  near(worstCaseLimit([2, -3], [0.1, 0.2]), 0.8, 1e-12)
})
