import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { EntryFault } from '../../../sim/quantity/entry-fault.ts'
import { readEntry } from '../../../sim/quantity/entry.ts'

const valueOf = (text: string, unit: string): number => {
  const read = readEntry(text, unit)
  if ('code' in read) throw new Error(`${text}: ${read.message}`)
  return read.value
}

const faultOf = (text: string, unit: string) => {
  const read = readEntry(text, unit)
  return 'code' in read ? read : { code: 'read', message: `read as ${read.value}` }
}

/** A few roundings of a double */
const near = (read: number, expected: number) =>
  expect(Math.abs(read - expected)).toBeLessThanOrEqual(4 * Number.EPSILON * Math.abs(expected))

describe('numbers and sums', () => {
  test.each([
    ['20', 20],
    ['13.5', 13.5],
    ['13,5', 13.5],
    ['0,389', 0.389],
    ['.5', 0.5],
    ['5.', 5],
    ['-5', -5],
    ['−5', -5],
    ['1e3', 1000],
    ['1e-3', 0.001],
    ['1 200', 1200],
    ['1\u2009234\u2009567', 1_234_567],
    ['2 1/2', 2.5],
    ['-2 1/2', -2.5],
    ['10⅓', 31 / 3],
    ['10 ⅓', 31 / 3],
    ['31/3', 31 / 3],
    ['31 ÷ 3', 31 / 3],
    ['20*2/3', 40 / 3],
    ['20 × 2 / 3', 40 / 3],
    ['2 1/2 × 4', 10],
    ['2^3', 8],
    ['(1 + 2)^2/3', 3],
    ['1 200/3', 400],
    ['sqrt(16)', 4],
    ['2 pi', 2 * Math.PI],
    ['2π', 2 * Math.PI],
    ['sin(30 deg)', 0.5],
    ['2 sin(30°)', 1],
    ['cos(pi/3 rad)', 0.5],
    ['tan(45 deg)', 1],
    ['cos 60° × 1 ÷ 2', 0.25],
    ['sin 30 deg', 0.5],
    ['√2', Math.SQRT2],
    ['230 × √2', 230 * Math.SQRT2],
    ['sqrt 16', 4],
    ['√(9 + 16)', 5],
    ['5²', 25],
    ['1.2 x 10³', 1200],
    ['20x2/3', 40 / 3],
    ['(1+2)x(3)', 9],
    ['0 x 10', 0],
    ['10x10', 100],
  ])('%s is %d', (text, expected) => near(valueOf(text, '1'), expected))
})

describe('units', () => {
  test.each([
    ['20', 'turn', 20],
    ['20 turns', 'turn', 20],
    ['20 Turns', 'turn', 20],
    ['20 worm turns', 'turn', 20],
    ['3/7 turn', 'turn', 3 / 7],
    ['10 1/3 turns', 'turn', 31 / 3],
    ['90 deg', 'turn', 0.25],
    ['90°', 'turn', 0.25],
    ['pi rad', 'turn', 0.5],
    ['0.5 rev', 'deg', 180],
    ['1/4 + 1/4 deg', 'deg', 0.5],
    ['1 turn + 90 deg', 'turn', 1.25],
    ['1 turn - 90 deg', 'turn', 0.75],
    ['2 turns + 1/2', 'turn', 2.5],
    ['1e3 rpm', 'r/min', 1000],
    ['250/min', 'r/min', 250],
    ['250 r / min', 'r/min', 250],
    ['2 rev/s', 'r/min', 120],
    ['2 Hz', 'r/min', 120],
    ['90 deg/s', 'r/min', 15],
    ['2 pi rad/s', 'r/min', 60],
    ['0.5 N·m', 'N m', 0.5],
    ['0.5 Nm', 'N m', 0.5],
    ['0.5 N-m', 'N m', 0.5],
    ['500 mN m', 'N m', 0.5],
    ['50 N cm', 'N m', 0.5],
    ['500 Nmm', 'N m', 0.5],
    ['0.04 kW', 'W', 40],
    ['0.04 kN', 'N', 40],
    ['500 mV', 'V', 0.5],
    ['500 mA', 'A', 0.5],
    ['6 cm', 'mm', 60],
    ['0.06 m', 'mm', 60],
    ['2 min', 's', 120],
    ['36 h', 'd', 1.5],
    ['30.4 °C', 'degC', 30.4],
    ['30.4 deg C', 'degC', 30.4],
    ['15 K', 'K', 15],
    ['15 °C', 'K', 15],
    ['62 %', '%', 62],
    ['0.62', '%', 62],
    ['1', '%', 100],
    ['62', '%', 62],
    ['0.5 %', '%', 0.5],
    ['9 %', '1', 0.09],
    ['3 teeth', '1', 3],
    ['(20 turns)', 'turn', 20],
    ['20 turns of the worm', 'turn', 20],
    ['3 rotations of the left wheel', 'turn', 3],
    ['11.5 deg.', 'deg', 11.5],
    ['250 turns per minute', 'r/min', 250],
    ['250 rev per min', 'r/min', 250],
    ['250 r.p.m.', 'r/min', 250],
    ['250 min⁻¹', 'r/min', 250],
    ['250 min^-1', 'r/min', 250],
    ['250 1/min', 'r/min', 250],
    ['4 turns per second', 'r/min', 240],
    ['0.389 Newton metres', 'N m', 0.389],
    ['0.389 newton meter', 'N m', 0.389],
    ['380 ms', 's', 0.38],
    ['30.4 C', 'degC', 30.4],
    ['30.4°', 'degC', 30.4],
    ['30.4 degrees Celsius', 'degC', 30.4],
  ])('%s is, in %s, %d', (text, unit, expected) => near(valueOf(text, unit), expected))
})

const DEEP = '((((((((((((((1))))))))))))))'
const LONG_SUM = '1+1'.repeat(13) + '+1+1+1+1+1+1+1+1'

describe('what cannot be read is told by its fault', () => {
  test.each<[string, string, EntryFault, RegExp]>([
    ['', 'turn', 'empty', /^Write a number such as 12/],
    [' \t ', 'turn', 'empty', /^Write a number/],
    ['turns', 'turn', 'empty', /before the unit; turns came/],
    ['1'.repeat(81), 'turn', 'too-long', /at most 80 characters; 81 came/],
    ['1'.repeat(4_000_000), 'turn', 'too-long', /4000000 came/],
    ['import("x")', 'turn', 'not-allowed', /“"” came/],
    ['a = 3', 'turn', 'not-allowed', /“=” came/],
    ['[1, 2]', 'turn', 'not-allowed', /“\[” came/],
    ['3!', 'turn', 'not-allowed', /“!” came/],
    ['1\u0007', 'turn', 'not-allowed', /cannot be seen, U\+7,/],
    ['\u200F12', 'turn', 'not-allowed', /anew.*U\+200F/],
    ['١٢', 'turn', 'not-allowed', /digits 0 to 9.*“١” came/],
    ['√', 'turn', 'not-allowed', /“√” came/],
    ['12 o’clock', 'turn', 'not-allowed', /“’” came/],
    ['😀', 'turn', 'not-allowed', /“😀” came/],
    ['ones(5000,5000)', 'turn', 'unknown-word', /“ones”/],
    ['import(x)', 'turn', 'unknown-word', /“import”/],
    ['constructor', 'turn', 'unknown-word', /“constructor”/],
    ['true', 'turn', 'unknown-word', /“true”/],
    ['Infinity', 'turn', 'unknown-word', /“Infinity”/],
    ['0x10', 'turn', 'unknown-word', /“x”/],
    ['20x', 'turn', 'unknown-word', /“x”/],
    ['100 per second', '1', 'unknown-word', /“per”/],
    ['100 Hz', '1', 'wrong-unit', /hertz came/],
    ['30 deg', 'V', 'wrong-unit', /volts; degrees came/],
    ['1e', 'turn', 'unknown-word', /“e”/],
    ['5 nm', 'N m', 'unknown-word', /the unit is written Nm/],
    ['5 MW', 'W', 'unknown-word', /the unit is written mW/],
    ['1,200', 'turn', 'ambiguous-comma', /write 1200 or 1\.200/],
    ['1,200.5', 'turn', 'ambiguous-comma', /a point for decimals/],
    ['1,2,3', 'turn', 'ambiguous-comma', /a point for decimals/],
    ['12 V', 'turn', 'wrong-unit', /asked in turns; volts came/],
    ['5 J', 'N m', 'wrong-unit', /asked in newton metres; joules came/],
    ['3 turns', '1', 'wrong-unit', /asked without a unit; turns came/],
    ['30 K', 'degC', 'wrong-unit', /for a rise only/],
    ['1 turn + 2 V', 'turn', 'mixed-units', /turns and volts came/],
    ['1 V + 2 A', 'turn', 'mixed-units', /volts and amperes came/],
    ['sin(30)', '1', 'angle-unit', /Say deg or rad/],
    ['sin 30', '1', 'angle-unit', /Say deg or rad/],
    ['1/0', 'turn', 'not-finite', /no finite value/],
    ['0/0', 'turn', 'not-finite', /no finite value/],
    ['sqrt(-1)', 'turn', 'not-finite', /no finite value/],
    ['tan(90 deg)', '1', 'not-finite', /no finite value/],
    ['1e999', 'turn', 'not-finite', /no finite value/],
    ['2^7', 'turn', 'too-large', /at most 6; 7 came/],
    ['9^9^9', 'turn', 'too-large', /An exponent/],
    ['1e7^2', 'turn', 'too-large', /a million/],
    ['1e13', 'turn', 'too-large', /a smaller number/],
    [DEEP, 'turn', 'too-large', /fewer brackets/],
    [LONG_SUM, 'turn', 'too-large', /a shorter sum/],
    ['1 +', 'turn', 'unreadable', /a part missing/],
    ['(1', 'turn', 'unreadable', /a part missing/],
    ['1 2', 'turn', 'unreadable', /a part missing/],
    ['1.2.3', 'turn', 'unreadable', /a part missing/],
    ['2(3)', 'turn', 'unreadable', /side by side/],
    ['20 turns * 2', 'turn', 'unreadable', /at the end; “turns”/],
    ['50 % * 2', '%', 'unreadable', /at the end; “%”/],
    ['deg(3)', '1', 'unreadable', /at the end; “deg”/],
    ['sqrt(4, 9)', '1', 'unreadable', /a part missing/],
  ])('%s in %s', (text, unit, code, message) => {
    const fault = faultOf(text, unit)
    expect(fault.message).toMatch(message)
    expect(fault.code).toBe(code)
  })
})

test('a text of two million brackets is refused at once', () => {
  const began = performance.now()
  expect(faultOf('('.repeat(2_000_000), 'turn').code).toBe('too-long')
  // generous, as only a linear look at the text may happen
  expect(performance.now() - began).toBeLessThan(500)
})

const UNITS = ['turn', 'deg', '1', 'r/min', 'A', 'N m', 'W', 'N', 'V', 'degC', 'K', '%', 'd', 's', 'mm']
const PIECES =
  '0 1 2 9 12 1/2 . , - + * / ^ ( ) e E 1e3 mm turn turns worm deg rad r/min /min N m Nm % ° °C ² ½ × π pi sqrt ( sin ( cos( tan( ) ! = ; " \\ \n é ∞ NaN import ones'
const SEED = 20_263
const RUNS = 20_000

test(`any text is a finite number or a told fault, seed ${SEED}`, () => {
  const pieces = fc
    .array(fc.constantFrom(...PIECES.split(' '), ' '), { maxLength: 30 })
    .map((parts) => parts.join(''))
  const text = fc.oneof(pieces, fc.string({ unit: 'binary', maxLength: 90 }), fc.string({ maxLength: 90 }))
  let numbers = 0
  fc.assert(
    fc.property(text, fc.constantFrom(...UNITS), (given, unit) => {
      const read = readEntry(given, unit)
      if ('code' in read) expect(read.message).toMatch(/^[\s\S]+\.$/u)
      else {
        numbers += 1
        expect(Number.isFinite(read.value)).toBe(true)
      }
    }),
    { seed: SEED, numRuns: RUNS },
  )
  expect(numbers).toBeGreaterThan(RUNS / 100)
})

test('what a number is printed as reads as that number, in every unit', () => {
  fc.assert(
    fc.property(fc.double({ min: 1.5, max: 1e6, noNaN: true }), fc.constantFrom(...UNITS), (value, unit) => {
      const name = unit === '1' ? '' : ` ${unit}`
      expect(valueOf(`${value}${name}`, unit)).toBe(value)
    }),
    { seed: SEED, numRuns: 2000 },
  )
})
