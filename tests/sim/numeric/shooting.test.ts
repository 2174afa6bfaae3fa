import { expect, test } from 'vitest'
import type { PeriodMap } from '../../../sim/numeric/shooting.ts'
import { closePeriod, MOST_UNKNOWNS, newSearch } from '../../../sim/numeric/shooting.ts'
import { near } from '../../support/near.ts'

function mapOf(unknowns: number, f: (x: Float64Array) => readonly number[]): PeriodMap {
  const map: PeriodMap = {
    unknowns,
    start: new Float64Array(MOST_UNKNOWNS),
    end: new Float64Array(MOST_UNKNOWNS),
    sizes: new Float64Array(MOST_UNKNOWNS).fill(1),
    least: new Float64Array(MOST_UNKNOWNS).fill(-Infinity),
    most: new Float64Array(MOST_UNKNOWNS).fill(Infinity),
    search: newSearch(),
    pass: () => map.end.set(f(map.start)),
  }
  return map
}

test('a map that forgets its start is closed by its second pass', () => {
  const map = mapOf(1, () => [0.7])
  closePeriod(map)
  expect(map.end[0]).toBe(0.7)
  expect(map.search.passes).toBe(2)
})

test.each([-0.9, 0.5, 0.999, -3])('an affine map of slope %d is closed in a few passes', (slope) => {
  const map = mapOf(1, ([x]) => [slope * x! + 1])
  closePeriod(map)
  near(map.start[0]!, 1 / (1 - slope), 1e-9 / Math.abs(1 - slope))
  expect(map.search.passes).toBeLessThan(16)
})

test('a bent map is closed from the side where no line leads there', () => {
  // Gains at first the more the larger the start is, as a motor does that excites itself.
  const map = mapOf(1, ([x]) => [x! + 0.05 + 0.1 * x! - 0.02 * x! ** 2])
  closePeriod(map)
  near(map.start[0]!, (0.1 + Math.sqrt(0.01 + 0.004)) / 0.04, 1e-8)
  expect(map.search.passes).toBeLessThan(30)
})

test('maps of two and three numbers, slow in one direction, are closed', () => {
  const two = mapOf(2, ([x, y]) => [0.1 * x! + 0.3 * y! + 1, -0.2 * x! + 0.95 * y! + 0.1])
  closePeriod(two)
  near(two.start[0]!, two.end[0]!, 1e-9)
  near(two.start[1]!, two.end[1]!, 1e-9)
  const three = mapOf(3, ([x, y, z]) => [Math.cos(z!) / 2, 0.9 * y! + 0.2 * x! * x!, Math.sin(x!) + 0.1 * y!])
  closePeriod(three)
  for (const n of [0, 1, 2]) near(three.start[n]!, three.end[n]!, 1e-8)
  expect(three.search.passes).toBeLessThan(26)
})

test('a start keeps to what makes sense', () => {
  const map = mapOf(1, ([x]) => [Math.max(0, 0.5 * x! - 1)])
  map.least[0] = 0
  map.start[0] = 6
  closePeriod(map)
  expect(map.end[0]).toBe(0)
})

test('what runs away is let go', () => {
  const map = mapOf(1, ([x]) => [1e6 * (x! + 1) ** 2])
  closePeriod(map)
  expect(map.search.passes).toBeLessThan(4)
})
