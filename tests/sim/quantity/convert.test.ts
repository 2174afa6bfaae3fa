import { expect, test } from 'vitest'
import { degrees, radPerSecond, radians, rpm } from '../../../sim/quantity/convert.ts'

test('a half turn is 180 degrees and pi radians', () => {
  expect(radians(180)).toBe(Math.PI)
  expect(degrees(Math.PI)).toBe(180)
})

test('one turn a second is 60 r/min and 2 pi rad/s', () => {
  // a few roundings of a double
  expect(radPerSecond(60)).toBeCloseTo(2 * Math.PI, 14)
  expect(rpm(2 * Math.PI)).toBeCloseTo(60, 13)
})
