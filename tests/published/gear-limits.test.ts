/** Printed limits of worm gearing, as the warnings about a pair keep to them. */
import { describe, expect, test } from 'vitest'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { gearProblems } from '../../sim/gear/gear-problems.ts'
import { normalPressureAngle, pairProportions } from '../../sim/gear/proportions.ts'
import { flankPoint, wheelGeneration } from '../../sim/gear/wheel-flank.ts'
import { degrees, radians } from '../../sim/quantity/convert.ts'
import { near } from '../support/near.ts'
import { metricPair } from './gear-pair.ts'
import { LITVIN, SHIGLEY } from './gear-sources.ts'

const told = (change: Partial<GearNumbers>): string =>
  gearProblems({ ...metricPair, ...change })
    .map(({ message }) => message)
    .join('\n')

test(`diameter quotient is 7 to 25: ${LITVIN}, section 19.3, p. 553, page seen`, () => {
  const quotient = (diameterQuotient: number): string => told({ diameterQuotient })
  expect(quotient(6.99)).toContain('should be from 7 to 25')
  expect(quotient(7)).not.toContain('should be from')
  expect(quotient(25)).not.toContain('should be from')
  expect(quotient(25.01)).toContain('should be from 7 to 25')
})

test.each([
  { alpha: 14.5, largest: 16 },
  { alpha: 20, largest: 25 },
  { alpha: 25, largest: 35 },
  { alpha: 30, largest: 45 },
])(`lead angle is at most $largest deg at $alpha deg: ${SHIGLEY}, Table 15-9, from memory`, (row) => {
  const at = (gamma: number): string =>
    told({
      wormStarts: 6,
      diameterQuotient: 6 / Math.tan(radians(gamma)),
      pressureAngle: row.alpha,
      wheelTeeth: 60,
    })
  expect(at(row.largest + 0.01)).toContain(`lead angle should be at most ${row.largest} deg`)
  expect(at(row.largest - 0.01)).not.toContain('lead angle should be')
})

test.each([
  { alpha: 14.5, least: 40 },
  { alpha: 17.5, least: 27 },
  { alpha: 20, least: 21 },
  { alpha: 22.5, least: 17 },
  { alpha: 25, least: 14 },
  { alpha: 27.5, least: 12 },
  { alpha: 30, least: 10 },
])(`wheel has at least $least teeth at $alpha deg: ${SHIGLEY}, Table 15-10, from memory`, (row) => {
  const at = (wheelTeeth: number): string =>
    told({ wormStarts: 1, diameterQuotient: 10, pressureAngle: row.alpha, wheelTeeth })
  expect(at(row.least - 1)).toContain(`handbooks ask for at least ${row.least} teeth`)
  expect(at(row.least)).not.toContain('handbooks ask')
})

describe(`teeth below which a straight rack undercuts: ${SHIGLEY}, text at Eq. 13-13, from memory`, () => {
  /** Teeth at which the foot of the flank in the mid-plane stands just at the tip of the worm. */
  const limit = (alphaX: number): number => {
    const { leadAngle, tipRadiusWorm } = pairProportions(metricPair)
    const pressureAngle = degrees(normalPressureAngle(radians(alphaX), leadAngle))
    const stillFalls = (wheelTeeth: number): boolean => {
      const generation = wheelGeneration({ ...metricPair, pressureAngle, wheelTeeth })
      const radius = (x: number) => flankPoint(generation, 1, x, 0).radius
      return radius(tipRadiusWorm + 1e-4) < radius(tipRadiusWorm - 1e-4)
    }
    let few = 5
    let many = 60
    for (let i = 0; i < 40; i++) {
      const middle = (few + many) / 2
      if (stillFalls(middle)) many = middle
      else few = middle
    }
    return many
  }

  test('17.1 at 20 deg and 31.9 at 14.5 deg', () => {
    near(limit(20), 17.1, 0.05)
    near(limit(14.5), 31.9, 0.05)
  })
})
