import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Rows, clearanceAt, freeWay, leastClearance, rowPitch } from '../../../sim/gear/row-clearance.ts'
import {
  type TimedPair,
  assemblyPhase,
  assemblyPhases,
  clashAhead,
  clashZones,
  nearestClearPhase,
  neededDistance,
  phaseCount,
  phaseSpacing,
  rowOffset,
} from '../../../sim/gear/timing.ts'
import { farSidePhase } from '../../../sim/gear/wheel-motion.ts'
import { degrees, radians } from '../../../sim/quantity/convert.ts'
import { near } from '../../support/near.ts'

const rowsOf = (count: number, sweepRadius: number): Rows => ({
  count,
  centreDistance: 30,
  hubRadius: 6,
  sweepRadius,
})

const pairOf = (starts: number, teeth: number, count: number, keyDeg = 0, sweep = 34): TimedPair => ({
  rows: rowsOf(count, sweep),
  starts,
  teeth,
  handSign: 1,
  keyRight: radians(keyDeg),
  keyLeft: radians(keyDeg),
  farSide: farSidePhase(starts, teeth),
  need: neededDistance(3, sweep, 0),
})

/** Every D that any tooth gives, from the formula alone, without asking which of them are the same. */
const offsetsOf = (pair: TimedPair): number[] => {
  const all = Array.from({ length: pair.teeth }, (_, tooth) => degrees(rowOffset(pair, tooth)))
  return [...new Set(all.map((offset) => Number(offset.toFixed(6))))].sort((a, b) => a - b)
}

describe('phases that the choice of the tooth reaches', () => {
  test('1/20 with 4 rows: 9, 27, 45, 63, 81 degrees', () => {
    expect(offsetsOf(pairOf(1, 20, 4))).toEqual([9, 27, 45, 63, 81])
  })
  test('1/20 with 6 rows: 3, 9 and so on to 57 degrees', () => {
    expect(offsetsOf(pairOf(1, 20, 6))).toEqual(Array.from({ length: 10 }, (_, n) => 3 + 6 * n))
  })
  test('1/21 with 4 rows: 21 in steps of 4.286 degrees', () => {
    const offsets = offsetsOf(pairOf(1, 21, 4))
    expect(offsets).toHaveLength(21)
    for (let n = 1; n < 21; n++) near(offsets[n]! - offsets[n - 1]!, 4.286, 5e-4)
  })
  test('a key at 1.5 degrees reaches half a pitch, 30 degrees, with 6 rows', () => {
    expect(offsetsOf(pairOf(1, 20, 6, 1.5))).toContain(30)
    expect(offsetsOf(pairOf(1, 20, 6))).not.toContain(30)
  })
  test('one tooth at the boot cleaner is 27 degrees', () => {
    near(degrees(rowOffset(pairOf(1, 20, 6), 1)), 27, 1e-9)
  })
  test('are as many and as far from each other as told, for any pair', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.integer({ min: 8, max: 120 }),
        fc.integer({ min: 1, max: 24 }),
        (starts, teeth, count) => {
          const offsets = offsetsOf(pairOf(starts, teeth, count))
          expect(offsets).toHaveLength(phaseCount(teeth, count))
          const spacing = degrees(phaseSpacing(teeth, count))
          for (let n = 1; n < offsets.length; n++) near(offsets[n]! - offsets[n - 1]!, spacing, 1e-5)
        },
      ),
    )
  })
})

/** From a separate script that was written before this one; `within` is half of its last digit. */
const KNOWN = [
  { count: 4, sweep: 34, offset: 9, distance: 2.97, within: 0.005 },
  { count: 4, sweep: 34, offset: 27, distance: 11.2, within: 0.05 },
  { count: 4, sweep: 34, offset: 45, distance: 18.1, within: 0.05 },
  { count: 4, sweep: 38, offset: 9, distance: 0.37, within: 0.005 },
  { count: 6, sweep: 38, offset: 3, distance: 0, within: 0 },
]

describe('least distance of the rows', () => {
  test.each(KNOWN)('$count rows to $sweep mm, $offset degrees: $distance mm', (row) => {
    near(leastClearance(rowsOf(row.count, row.sweep), radians(row.offset)).distance, row.distance, row.within)
  })

  test('is the same for an offset and for its mirror image', () => {
    for (const offset of [4, 9, 27, 33.3]) {
      const there = leastClearance(rowsOf(6, 34), radians(offset)).distance
      near(leastClearance(rowsOf(6, 34), radians(60 - offset)).distance, there, 1e-6)
    }
  })
})

type Point = readonly [number, number]

/** Distance of two lines by many points on each, with no geometry but that of two points. */
function sampledDistance(a: Point, b: Point, c: Point, d: Point, points: number): number {
  let least = Infinity
  for (let i = 0; i <= points; i++) {
    const [px, pz] = [a[0] + ((b[0] - a[0]) * i) / points, a[1] + ((b[1] - a[1]) * i) / points]
    for (let j = 0; j <= points; j++) {
      const [qx, qz] = [c[0] + ((d[0] - c[0]) * j) / points, c[1] + ((d[1] - c[1]) * j) / points]
      least = Math.min(least, Math.hypot(px - qx, pz - qz))
    }
  }
  return least
}

/** The rows as they stand in the machine, from the turns of each wheel about its own axis. */
function sampledClearance({ count, centreDistance: a, hubRadius, sweepRadius }: Rows, u: number, D: number) {
  const radial = (x: number, angle: number, r: number): Point => [
    x - r * Math.cos(angle),
    r * Math.sin(angle),
  ]
  const line = (x: number, angle: number): [Point, Point] => [
    radial(x, angle, hubRadius),
    radial(x, angle, sweepRadius),
  ]
  let least = Infinity
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const right = line(a, u + (i * 2 * Math.PI) / count)
      const left = line(-a, Math.PI - (u - D) + (j * 2 * Math.PI) / count)
      least = Math.min(least, sampledDistance(...right, ...left, 40))
    }
  }
  return least
}

describe('against points along every row', () => {
  const anyRows = fc.record({
    count: fc.integer({ min: 1, max: 7 }),
    centreDistance: fc.constant(30),
    hubRadius: fc.double({ min: 3, max: 10, noNaN: true }),
    sweepRadius: fc.double({ min: 20, max: 48, noNaN: true }),
  })
  const angle = fc.double({ min: -7, max: 7, noNaN: true })

  test('the distance at a moment is theirs, to the spacing of the points', () => {
    fc.assert(
      fc.property(anyRows, angle, angle, (rows, u, D) => {
        const spacing = (rows.sweepRadius - rows.hubRadius) / 40
        const sampled = sampledClearance(rows, u, D)
        const exact = clearanceAt(rows, u, D)
        expect(exact).toBeLessThanOrEqual(sampled + 1e-9)
        expect(exact).toBeGreaterThanOrEqual(sampled - spacing)
      }),
      { numRuns: 60, seed: 3 },
    )
  })

  test('no moment of a turn lies under the least distance, and one comes to it', () => {
    fc.assert(
      fc.property(anyRows, angle, (rows, D) => {
        const least = leastClearance(rows, D)
        near(clearanceAt(rows, least.at, D), least.distance, 1e-9)
        const pitch = rowPitch(rows.count)
        for (let n = 0; n < 3000; n++) {
          const at = ((n * 0.618_034) % 1) * pitch
          expect(clearanceAt(rows, at, D)).toBeGreaterThanOrEqual(least.distance - 1e-7)
        }
      }),
      { numRuns: 25, seed: 4 },
    )
  })
})

describe('ways to put the left wheel in', () => {
  const pair = pairOf(1, 20, 6)

  test('are all told, the one with most room first, with what is clear', () => {
    const phases = assemblyPhases(pair)
    expect(phases).toHaveLength(10)
    expect(phases[0]!.toothOffset).toBe(1)
    for (let n = 1; n < phases.length; n++)
      expect(phases[n]!.distance).toBeLessThanOrEqual(phases[n - 1]!.distance + 1e-6)
    for (const phase of phases) expect(phase.clear).toBe(phase.distance > pair.need)
    expect(phases.some(({ clear }) => !clear)).toBe(true)
  })

  test('the nearest clear tooth is no further off than any other clear one', () => {
    for (let tooth = 0; tooth < 20; tooth++) {
      const found = nearestClearPhase(pair, tooth)!
      const away = (other: number) => Math.min((other - tooth + 40) % 20, (tooth - other + 40) % 20)
      for (let other = 0; other < 20; other++)
        if (assemblyPhase(pair, other).clear) expect(away(found.toothOffset)).toBeLessThanOrEqual(away(other))
      expect(assemblyPhase(pair, found.toothOffset).clear).toBe(true)
    }
  })

  test('there is none where no tooth clears, nor where the tips strike the other hub', () => {
    expect(nearestClearPhase({ ...pair, need: 20 }, 0)).toBe(null)
    expect(nearestClearPhase({ ...pair, rows: rowsOf(6, 54) }, 0)).toBe(null)
  })
})

describe('zones of offsets that clash', () => {
  test.each([1, 3, 4, 6, 9])('with %i rows hold every offset that clashes and none that clears', (count) => {
    const { rows, need } = pairOf(1, 20, count)
    const pitch = rowPitch(count)
    const zones = clashZones({ rows, need })
    let [clear, clash] = [0, 0]
    for (let n = 0; n <= 200; n++) {
      const offset = (n / 200) * pitch
      const fromEdge = Math.min(...zones.flat().map((edge) => Math.abs(edge - offset)))
      if (fromEdge < pitch / 1000) continue
      const within = zones.some(([from, to]) => from < offset && offset < to)
      const meets = leastClearance(rows, offset).distance <= need
      expect([offset, within]).toEqual([offset, meets])
      if (meets) clash++
      else clear++
    }
    expect(clash).toBeGreaterThan(0)
    expect(clear + clash).toBeGreaterThan(190)
  })

  test('are none where the sweeps do not reach each other', () => {
    expect(clashZones({ rows: rowsOf(6, 26), need: 3 })).toEqual([])
  })
})

describe('the way that is free', () => {
  const pair = pairOf(1, 20, 6)
  const clash = rowOffset(pair, 3)

  test('ends just where the rows come to the distance that they need, and not before', () => {
    const { rows, need } = pair
    for (let n = 0; n < 40; n++) {
      const u = (n / 40) * rowPitch(6)
      if (clearanceAt(rows, u, clash) <= need) continue
      for (const sense of [1, -1] as const) {
        const way = freeWay(rows, u, clash, sense, need)!
        for (let i = 0; i <= 500; i++)
          expect(clearanceAt(rows, u + (sense * way * i) / 500, clash)).toBeGreaterThan(need)
        expect(clearanceAt(rows, u + sense * (way + rowPitch(6) / 10_000), clash)).toBeLessThanOrEqual(need)
      }
    }
  })

  test('is endless for a tooth that clears, and none in a clash', () => {
    expect(freeWay(pair.rows, 0.2, rowOffset(pair, 1), 1, pair.need)).toBe(null)
    const { at } = leastClearance(pair.rows, clash)
    expect(freeWay(pair.rows, at, clash, 1, pair.need)).toBe(0)
  })

  test('is told in turns of the worm for both senses, which a left-hand worm exchanges', () => {
    const ahead = clashAhead(pair, 0.35, clash)
    const way = freeWay(pair.rows, 0.35, clash, -1, pair.need)!
    near(ahead.forward!, (way * 20) / (2 * Math.PI), 1e-12)
    const other = clashAhead({ ...pair, handSign: -1 }, 0.35, clash)
    expect([other.forward, other.back]).toEqual([ahead.back, ahead.forward])
  })
})
