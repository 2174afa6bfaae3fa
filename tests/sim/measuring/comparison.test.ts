import { expect, test } from 'vitest'
import { compareReading } from '../../../sim/measuring/comparison.ts'
import { near } from '../../support/near.ts'

const at = (value: number, uncertainty: number) => ({ value, uncertainty })

test('a reading agrees up to twice the joint uncertainty and not beyond', () => {
  expect(compareReading(at(10.999, 0.3), at(10, 0.4)).agrees).toBe(true)
  expect(compareReading(at(11.001, 0.3), at(10, 0.4)).agrees).toBe(false)
  expect(compareReading(at(8.999, 0.3), at(10, 0.4)).agrees).toBe(false)
})

test('difference, uncertainty and En of one case', () => {
  const { difference, uncertainty, normalisedError } = compareReading(at(231, 0.6), at(230, 0.8))
  near(difference, 1, 1e-12)
  near(uncertainty, 1, 1e-12)
  near(normalisedError, 0.5, 1e-12)
})

test('without uncertainty only what is equal agrees', () => {
  expect(compareReading(at(1, 0), at(1, 0)).agrees).toBe(true)
  expect(compareReading(at(1.001, 0), at(1, 0)).agrees).toBe(false)
})
