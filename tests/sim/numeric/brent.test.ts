import { expect, test } from 'vitest'
import { brent } from '../../../sim/numeric/brent.ts'
import { near } from '../../support/near.ts'

const counted = (f: (x: number) => number) => {
  const curve = { calls: 0, at: (x: number) => (curve.calls++, f(x)) }
  return curve
}

test.each([
  ['a cube', (x: number) => x ** 3 - 2, 0, 3, Math.cbrt(2)],
  ['a cosine', (x: number) => Math.cos(x) - x, 0, 1, 0.739_085_133_215_160_6],
  ['an exponential', (x: number) => Math.exp(-40 * x) - 1e-3, 0, 1, Math.log(1000) / 40],
  ['a falling line', (x: number) => 1 - 4 * x, -2, 5, 0.25],
])('the zero of %s is met to rounding in few looks', (_name, f, a, b, expected) => {
  const curve = counted(f)
  near(brent(curve, a, b, f(a), f(b), 1e-15), expected, 4e-15 * Math.max(1, Math.abs(expected)))
  expect(curve.calls).toBeLessThan(16)
})

test('a step, on which no line can be drawn, costs no more than twice the halvings', () => {
  const f = (x: number) => (x < 0.3 ? 1 : -1)
  const curve = counted(f)
  near(brent(curve, 0, 1, 1, -1, 1e-12), 0.3, 1e-12)
  expect(curve.calls).toBeLessThan(100)
})

test('an end that is the zero is the answer', () => {
  const line = { at: (x: number) => x - 2 }
  expect(brent(line, 0, 2, -2, 0, 1e-15)).toBe(2)
  expect(brent(line, 2, 5, 0, 3, 1e-15)).toBe(2)
})
