import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { FIELDS } from '../../../sim/machine/fields.ts'
import { readQuantity } from '../../../sim/quantity/quantity.ts'

const valueOf = (text: string, unit: string): number => {
  const read = readQuantity(text, unit)
  if ('problem' in read) throw new Error(read.problem)
  return read.value
}

const problemOf = (text: string, unit: string): string => {
  const read = readQuantity(text, unit)
  return 'problem' in read ? read.problem : `read as ${read.value}`
}

/** Exact by definition; each unit is the field's, the expected value in it. */
const INCH = 'International Yard and Pound agreement, 1959: 1 in = 25.4 mm'
const POUND = 'International Yard and Pound agreement, 1959: 1 lb = 0.45359237 kg'
const KGF = '3rd CGPM, 1901: 1 kgf = 9.80665 N'
const TURN = 'definition: one turn is 360 degrees'

describe('general values', () => {
  test.each([
    { text: '1 in', unit: 'mm', expected: 25.4, source: INCH },
    { text: '0.5 in', unit: 'mm', expected: 12.7, source: INCH },
    { text: '1/2 in + 1 mm', unit: 'mm', expected: 13.7, source: INCH },
    { text: '1 kgf', unit: 'N', expected: 9.80665, source: KGF },
    { text: '12 kgf cm', unit: 'N m', expected: 12 * 0.0980665, source: KGF },
    { text: '12 kgf-cm', unit: 'N m', expected: 12 * 0.0980665, source: KGF },
    { text: '100 gf·cm', unit: 'N m', expected: 0.00980665, source: KGF },
    { text: '1 lbf in', unit: 'N m', expected: 0.45359237 * 9.80665 * 0.0254, source: `${POUND}; ${KGF}` },
    { text: '16 ozf in', unit: 'N m', expected: 0.45359237 * 9.80665 * 0.0254, source: `${POUND}; ${KGF}` },
    { text: '1 lb in^2', unit: 'kg cm2', expected: 0.45359237 * 2.54 * 2.54, source: `${POUND}; ${INCH}` },
    { text: '3000 r/min', unit: 'r/min', expected: 3000, source: TURN },
    { text: '3000 rpm', unit: 'r/min', expected: 3000, source: TURN },
    { text: '50 rev/s', unit: 'r/min', expected: 3000, source: TURN },
    { text: '1/4 turn', unit: 'deg', expected: 90, source: TURN },
    { text: '0.5 rad', unit: 'deg', expected: 90 / Math.PI, source: TURN },
    { text: '20°', unit: 'deg', expected: 20, source: TURN },
    { text: '15000 ohm', unit: 'kohm', expected: 15, source: 'SI prefix' },
    { text: '1.1 Ω', unit: 'ohm', expected: 1.1, source: 'SI' },
    { text: '400 µH', unit: 'mH', expected: 0.4, source: 'SI prefix' },
    { text: '8000 Hz', unit: 'kHz', expected: 8, source: 'SI prefix' },
    { text: '3.2e-5 kg m²', unit: 'kg cm2', expected: 0.32, source: 'SI prefix' },
    { text: '0.0432 N m/A', unit: 'V s/rad', expected: 0.0432, source: 'SI: 1 V s = 1 N m/A' },
    { text: '3 V/(1000 r/min)', unit: 'V s/rad', expected: 0.09 / Math.PI, source: TURN },
    { text: '5 mN m s', unit: 'N m s/rad', expected: 0.005, source: 'SI: the radian is 1' },
    { text: '50 %', unit: '%', expected: 50, source: 'definition of per cent' },
    { text: '9 %', unit: '', expected: 0.09, source: 'definition of per cent' },
  ])('$text in $unit ($source)', ({ text, unit, expected }) => {
    // half a unit in the last of the 14 digits that the reader keeps
    expect(Math.abs(valueOf(text, unit) / expected - 1)).toBeLessThan(5.1e-14)
  })
})

test('a number without a unit is in the unit of its field, unrounded', () => {
  expect(valueOf('2.2e-8', 'N m s2/rad2')).toBe(2.2e-8)
  expect(valueOf('1e5', 'mm')).toBe(100_000)
  expect(valueOf(' 0.1 + 0.2 ', 'mm')).toBe(0.1 + 0.2)
  expect(valueOf('1/2', 'mm')).toBe(0.5)
  expect(valueOf('3*7', '')).toBe(21)
  expect(valueOf('(1 + 2)^2 / 3', '')).toBe(3)
  expect(valueOf('-2', 'mm')).toBe(-2)
  expect(valueOf('−2', 'mm')).toBe(-2)
})

test('a decimal comma is read, and a comma that may stand for thousands is asked about', () => {
  expect(valueOf('2,5', 'mm')).toBe(2.5)
  expect(valueOf('0,125 in', 'mm')).toBe(3.175)
  expect(valueOf('2,2e-8', '')).toBe(2.2e-8)
  expect(problemOf('1,000', 'mm')).toMatch(/point for decimals.*got '1,000'/)
  expect(problemOf('1,000.5', 'mm')).toMatch(/point for decimals/)
  expect(problemOf('1,2,3', 'mm')).toMatch(/point for decimals/)
})

test('groups of three digits with a space between them are one number', () => {
  expect(valueOf('12 000 r/min', 'r/min')).toBe(12_000)
  expect(valueOf('1\u202f234\u202f567', '')).toBe(1_234_567)
  expect(problemOf('12 00', '')).toMatch(/^must be a plain number/)
})

test.each([
  ['2 kg', 'mm', /^must be a length such as 2 mm, got a mass$/],
  ['50 Hz', 'r/min', /^must be a speed of turning such as 2 r\/min, got a frequency$/],
  ['20 deg', '', /^must be a plain number such as 2, got an angle$/],
  ['5 mm mm', 'mm', /got an area$/],
  ['20 oz in', 'N m', /got a mass times a length; a force is written kgf, gf, lbf or ozf$/],
  ['1 mm + 2', 'mm', /a length and a plain number cannot be added or subtracted$/],
  ['2 foo', 'mm', /there is no unit 'foo'$/],
  ['', 'mm', /^must be a length such as 2 mm, got nothing$/],
  ['2^(1 mm)', 'mm', /an exponent is a plain number$/],
  ['1/0', 'mm', /without a finite result$/],
  ['9^9^9^9', 'mm', /without a finite result$/],
  ['1 2', 'mm', /^must be a length/],
  ['x'.repeat(81), 'mm', /at most 80 characters long, got 81$/],
])('%s in %s is told with the fix', (text, unit, message) => {
  expect(problemOf(text, unit)).toMatch(message)
})

test.each([
  'sqrt(4)',
  'import("x")',
  'a = 3',
  'f(x) = x',
  '[1, 2]',
  '{a: 1}',
  '"text"',
  'true',
  '1 ; 2',
  '1 < 2',
  '3!',
  '1 : 3',
  'NaN',
  'Infinity',
  '__proto__',
  'constructor',
  '2 mm to in',
  '0x10',
  '1 ? 2 : 3',
])('%s is not arithmetic with units and is not evaluated', (text) => {
  expect(problemOf(text, 'mm')).toMatch(/^must (be a length|have a point)/)
})

test('the unit of every field can be read, and a number in it comes back', () => {
  for (const { unit } of FIELDS) {
    const read = unit === '' ? valueOf('3', unit) : valueOf(`3 ${unit}`, unit)
    expect(read, unit).toBe(3)
  }
})

const SEED = 20_261
const PIECES =
  '0 1 9 . , - + * / ^ ( ) e E mm in kg rad r/min % ° ² ! = ; : [ ] { } " \' \\ \n é ∞ NaN sqrt pi i to'.split(
    ' ',
  )

test(`2000 random texts give a finite number or a message and never throw (seed ${SEED})`, () => {
  const texts = fc.oneof(
    fc.string({ maxLength: 100, unit: 'binary' }),
    fc.array(fc.constantFrom(...PIECES, ' '), { maxLength: 20 }).map((pieces) => pieces.join('')),
  )
  const units = fc.constantFrom(...new Set(FIELDS.map(({ unit }) => unit)))
  const law = fc.property(texts, units, (text, unit) => {
    const read = readQuantity(text, unit)
    if ('value' in read) return Number.isFinite(read.value)
    return read.problem.startsWith('must ')
  })
  fc.assert(law, { seed: SEED, numRuns: 2000 })
})

describe('temperatures in °C', () => {
  test.each([
    ['21', 21],
    ['21 °C', 21],
    ['-5 degC', -5],
    ['293.15 K', 20],
    ['20 + 1', 21],
  ])('%s', (text, value) => {
    expect(readQuantity(text, 'degC')).toEqual({ value })
  })

  test.each(['70 degF', '20 V', 'warm', ''])('%j is told what it must be', (text) => {
    expect(readQuantity(text, 'degC')).toEqual({
      problem: `must be a temperature such as 20 °C, got '${text}'`,
    })
  })
})

test.each([
  ['2.2 mF', 'uF', 2200],
  ['0.5 J/K', 'J/K', 0.5],
  ['360 J/(min K)', 'W/K', 6],
  ['0.24 cm^2', 'mm2', 24],
  ['5 A/mm^2', 'A/cm2', 500],
  ['1.2 mm/(1000 h)', 'mm/1000 h', 1.2],
  ['0.04 mH', 'uH', 40],
  ['0.3 mWb', 'uWb', 300],
  ['-0.2 %/K', '%/K', -0.2],
])('%s in a field of %s', (text, unit, value) => {
  expect(readQuantity(text, unit)).toEqual({ value })
})
