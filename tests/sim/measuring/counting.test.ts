import { expect, test } from 'vitest'
import { countedRate, turnRatioUncertainty } from '../../../sim/measuring/counting.ts'
import { near, relativelyNear } from '../../support/near.ts'
import { evenDraws, scatterOf, spread } from './draws.ts'

test('20 worm turns for one wheel turn, counted over ten of the wheel', () => {
  const { value, uncertainty, least, most } = turnRatioUncertainty(200, 10)
  expect(value).toBe(20)
  near(uncertainty, 20 * Math.sqrt(1 / 3 / 200 ** 2 + 1 / 3 / 10 ** 2), 1e-12)
  near(least, 199 / 11, 1e-12)
  near(most, 201 / 9, 1e-12)
})

test('counting longer makes the ratio surer in proportion', () => {
  relativelyNear(
    turnRatioUncertainty(200, 10).uncertainty,
    10 * turnRatioUncertainty(2000, 100).uncertainty,
    1e-12,
  )
})

test('uncertainty is the scatter of 20000 ratios of counts up to one off (seed 3)', () => {
  const draw = evenDraws(3)
  const ratios = Array.from({ length: 20_000 }, () => (2000 + draw()) / (100 + draw()))
  relativelyNear(spread(ratios).deviation, turnRatioUncertainty(2000, 100).uncertainty, scatterOf(20_000))
})

test('one turn counted may have been none', () => {
  expect(turnRatioUncertainty(20, 1).most).toBe(Infinity)
})

test('two pulses a turn for two seconds tell the speed to 15 r/min: 60/(ppr T)', () => {
  const { rate, resolution } = countedRate(336, 2, 2)
  near(60 * rate, 5040, 1e-9)
  near(60 * resolution, 15, 1e-12)
})
