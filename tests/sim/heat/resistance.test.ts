import { describe, expect, test } from 'vitest'
import {
  constantFromReadings,
  COPPER_CONSTANT,
  magnetFactor,
  REFERENCE_TEMPERATURE,
  resistanceFactor,
  riseByResistance,
} from '../../../sim/heat/resistance.ts'
import { near, relativelyNear } from '../../support/near.ts'

describe('a winding', () => {
  test('has its described resistance at the reference temperature', () => {
    expect(resistanceFactor(REFERENCE_TEMPERATURE)).toBe(1)
    expect(magnetFactor(-0.002, REFERENCE_TEMPERATURE)).toBe(1)
  })

  test('tells by its resistance how warm it is, whatever the air did meanwhile', () => {
    near(riseByResistance(1.1 * resistanceFactor(21), 1.1 * resistanceFactor(92), 21, 26), 92 - 26, 1e-9)
  })

  test('tells by two readings which metal it is of', () => {
    relativelyNear(
      constantFromReadings(1.1 * resistanceFactor(21), 21, 1.1 * resistanceFactor(92), 92),
      COPPER_CONSTANT,
      1e-9,
    )
  })
})

test('magnets lose a fifth in 100 K at 0.2 % a kelvin, and never more than all', () => {
  relativelyNear(magnetFactor(-0.002, 120), 0.8, 1e-12)
  expect(magnetFactor(-0.002, 1000)).toBe(0)
})
