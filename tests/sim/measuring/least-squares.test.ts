import { expect, test } from 'vitest'
import type { Equation } from '../../../sim/measuring/least-squares.ts'
import { leastSquares } from '../../../sim/measuring/least-squares.ts'
import { near, relativelyNear } from '../../support/near.ts'
import { evenDraws } from './draws.ts'

const line = (x: number, y: number, uncertainty: number): Equation => ({
  factors: [1, x],
  target: y,
  uncertainty,
})

test('a line through four points of unlike weight: sums of the textbook', () => {
  const points = [line(0, 1.1, 0.1), line(1, 2.9, 0.2), line(2, 5.2, 0.1), line(4, 8.8, 0.4)]
  const sum = (part: (x: number, y: number) => number) =>
    points.reduce((total, p) => total + part(p.factors[1]!, p.target) / p.uncertainty ** 2, 0)
  const [S, Sx, Sy] = [sum(() => 1), sum((x) => x), sum((_, y) => y)]
  const [Sxx, Sxy] = [sum((x) => x * x), sum((x, y) => x * y)]
  const delta = S * Sxx - Sx ** 2
  const fit = leastSquares(points)!
  relativelyNear(fit.values[0]!, (Sxx * Sy - Sx * Sxy) / delta, 1e-12)
  relativelyNear(fit.values[1]!, (S * Sxy - Sx * Sy) / delta, 1e-12)
  relativelyNear(fit.covariance[0]![0]!, Sxx / delta, 1e-12)
  relativelyNear(fit.covariance[1]![1]!, S / delta, 1e-12)
  relativelyNear(fit.covariance[0]![1]!, -Sx / delta, 1e-12)
  const misses = points.map(
    (p) => (p.target - fit.values[0]! - fit.values[1]! * p.factors[1]!) / p.uncertainty,
  )
  relativelyNear(
    fit.chiSquare,
    misses.reduce((total, miss) => total + miss ** 2, 0),
    1e-9,
  )
  expect(fit.degreesOfFreedom).toBe(2)
})

test('units of the unknowns do not matter: columns a billion times apart', () => {
  const draw = evenDraws(5)
  const rows = Array.from({ length: 12 }, () => [draw(), draw(), draw()] as const)
  const scaled = (scale: number) =>
    leastSquares(
      rows.map(([a, b, noise]) => ({
        factors: [a, scale * b],
        target: 2 * a + 3 * b + noise,
        uncertainty: 0.5,
      })),
    )!
  const plain = scaled(1)
  for (const scale of [1e-9, 1e9]) {
    relativelyNear(scaled(scale).values[0]!, plain.values[0]!, 1e-12)
    relativelyNear(scaled(scale).values[1]! * scale, plain.values[1]!, 1e-12)
    relativelyNear(scaled(scale).condition, plain.condition, 1e-12)
  }
})

test('condition is the number of unknowns for columns at right angles, and grows as they draw together', () => {
  const apart = leastSquares([line(1, 0, 1), line(-1, 0, 1)])!
  near(apart.condition, 2, 1e-12)
  const together = leastSquares([line(1, 0, 1), line(1.01, 0, 1)])!
  expect(together.condition).toBeGreaterThan(100)
})

test('what does not fix the unknowns has no fit', () => {
  expect(leastSquares([])).toBeNull()
  expect(leastSquares([line(1, 2, 1)])).toBeNull()
  expect(leastSquares([line(3, 2, 1), line(3, 2.1, 1), line(3, 1.9, 1)])).toBeNull()
  expect(leastSquares([0, 1, 2].map((y) => ({ factors: [0, 1], target: y, uncertainty: 1 })))).toBeNull()
  expect(leastSquares([line(Number.NaN, 2, 1), line(1, 2, 1)])).toBeNull()
})
