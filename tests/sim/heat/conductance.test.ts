import { expect, test } from 'vitest'
import { coolingAirRise, fanConductance } from '../../../sim/heat/conductance.ts'
import { relativelyNear } from '../../support/near.ts'

test('a fan adds what it is told at its reference speed, and nothing at rest', () => {
  expect(fanConductance(0.16, 0.44, 0, 5000, 0.8)).toBe(0.16)
  relativelyNear(fanConductance(0.16, 0.44, 5000, 5000, 0.8), 0.6, 1e-12)
  relativelyNear(fanConductance(0, 0.44, 10_000, 5000, 0.8), 0.44 * 2 ** 0.8, 1e-12)
})

test('a fan cools either way round', () => {
  expect(fanConductance(0.16, 0.44, -3000, 5000, 0.8)).toBe(fanConductance(0.16, 0.44, 3000, 5000, 0.8))
})

test('air takes up heat: 1 kW warms 1 kg/s by nearly 1 K', () => {
  relativelyNear(coolingAirRise(1000, 1.2, 1 / 1.2), 1000 / 1006, 1e-12)
})
