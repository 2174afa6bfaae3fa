import { expect, test } from 'vitest'
import {
  blackBodyPower,
  FORCED_CONVECTION,
  FREE_CONVECTION,
  surfaceHeatFlux,
  transferCoefficient,
} from '../../../sim/heat/surface.ts'
import { bootCleaner } from '../../support/machines.ts'
import { relativelyNear } from '../../support/near.ts'

test('a surface as warm as its surroundings gives off nothing, and a colder one takes in', () => {
  expect(surfaceHeatFlux(15, 0.8, 300, 300)).toBe(0)
  expect(surfaceHeatFlux(15, 0.8, 290, 300)).toBeLessThan(0)
})

test('without convection a black surface gives what it radiates less what it takes in', () => {
  relativelyNear(surfaceHeatFlux(0, 1, 400, 300), blackBodyPower(400) - blackBodyPower(300), 1e-12)
})

test('the boot cleaner’s conductances ask of a case of 60 mm by 80 mm what still and moving air can give', () => {
  const area = Math.PI * 0.06 * 0.08 + (Math.PI / 2) * 0.06 ** 2
  const { caseToAir, caseToAirFan } = bootCleaner.thermal!
  const still = transferCoefficient(caseToAir, area)
  expect(still).toBeGreaterThan(FREE_CONVECTION.least)
  expect(still).toBeLessThan(FREE_CONVECTION.most)
  const moving = transferCoefficient(caseToAir + caseToAirFan, area)
  expect(moving).toBeGreaterThan(FORCED_CONVECTION.least)
  expect(moving).toBeLessThan(FORCED_CONVECTION.most)
})
