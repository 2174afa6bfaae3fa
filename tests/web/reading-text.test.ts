import { expect, test } from 'vitest'
import { figure, givenFigure, quantityText, ratioText } from '../../web/instrument/reading-text.ts'
import { bootCleaner, classroomModel, cordWinder } from '../support/machines.ts'

test.each([
  [5051.2, 'r/min', '5051 r/min'],
  [252.54, 'r/min', '252.5 r/min'],
  [-252.54, 'r/min', '−252.5 r/min'],
  [0.03892, 'N m', '0.0389 N m'],
  [28.013, 'W', '28.0 W'],
  [7.125, '°', '7.13°'],
  [12_345.6, 'r/min', '12\u202f350 r/min'],
  [2.2e-8, 'N m', '2.20 × 10⁻⁸ N m'],
] as const)('%f %s is written %s', (value, unit, text) => {
  expect(quantityText(value, unit)).toBe(text)
})

test('a number that is rounded up to the next power of ten keeps its count of digits', () => {
  expect(figure(9.9996, 3)).toBe('10.0')
  expect(figure(0.099_996, 3)).toBe('0.100')
})

test('nothing is shown where there is no number, and rounding dust is 0', () => {
  expect(quantityText(Number.NaN, 'W')).toBe('–')
  expect(quantityText(Number.POSITIVE_INFINITY, 'W')).toBe('–')
  expect(quantityText(1e-15, 'W')).toBe('0 W')
})

test('a number that somebody set is not rounded', () => {
  expect(givenFigure(0.0432)).toBe('0.0432')
  expect(givenFigure(0.1 + 0.2)).toBe('0.3')
  expect(givenFigure(-2.2e-8)).toBe('−2.2 × 10⁻⁸')
  expect(givenFigure(-12_345.5)).toBe('−12\u202f345.5')
})

test('the ratio has two decimals only where it is not whole', () => {
  expect(ratioText(bootCleaner)).toBe('20 : 1')
  expect(ratioText(cordWinder)).toBe('10.33 : 1')
  expect(ratioText(classroomModel)).toBe('13.50 : 1')
})
