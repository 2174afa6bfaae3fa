import { expect } from 'vitest'

/** Fails unless actual lies within tolerance of expected; both in the same unit. */
export function near(actual: number, expected: number, tolerance: number): void {
  const miss = Math.abs(actual - expected)
  expect(miss <= tolerance, `${actual} should be within ${tolerance} of ${expected}`).toBe(true)
}

/** Fails unless actual lies within a part of expected's size. */
export const relativelyNear = (actual: number, expected: number, part: number): void =>
  near(actual, expected, part * Math.abs(expected))

/** Fails unless low < value < high. */
export const between = (value: number, low: number, high: number): void =>
  expect(low < value && value < high, `${value} should lie between ${low} and ${high}`).toBe(true)
