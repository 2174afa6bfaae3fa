import { expect, test } from 'vitest'
import { counted, fractionText, numberText, valueText } from '../../../sim/question/value-text.ts'

test.each([
  [20, '20'],
  [13.333333333, '13.333'],
  [0.1 + 0.2, '0.3'],
  [-7.5, '−7.5'],
  [12_000, '12000'],
  [0.000_012_3, '0.0000123'],
  [0, '0'],
])('%d is written as %s', (value, text) => {
  expect(numberText(value)).toBe(text)
})

test('with fewer digits when asked', () => {
  expect(numberText(0.08726, 3)).toBe('0.0873')
})

test('units stand as they are read, and one is not many', () => {
  expect(valueText(40 / 3, 'turn')).toBe('13.333 turns')
  expect(valueText(1, 'turn')).toBe('1 turn')
  expect(valueText(9, 'deg')).toBe('9°')
  expect(valueText(1, 'd')).toBe('1 day')
  expect(valueText(42, '1')).toBe('42')
  expect(valueText(0.389, 'N m')).toBe('0.389 N m')
})

test('counted things are one or many', () => {
  expect(counted(1, 'start')).toBe('1 start')
  expect(counted(3, 'start')).toBe('3 starts')
  expect(counted(20, 'tooth', 'teeth')).toBe('20 teeth')
})

test.each([
  [0.25, '1/4'],
  [1.5, '1 1/2'],
  [3, '3'],
  [0.3, '0.3'],
  [26 / 3, '8.6667'],
])('%d is written as the fraction %s where it is a quarter', (value, text) => {
  expect(fractionText(value)).toBe(text)
})
