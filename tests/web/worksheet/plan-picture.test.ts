import { describe, expect, test } from 'vitest'
import type { Machine } from '../../../sim/machine/machine.ts'
import type { Flat } from '../../../web/models/flat.ts'
import { type Drawing, type Mark, innerSvg } from '../../../web/models/marks.ts'
import { planPicture } from '../../../web/worksheet/plan-picture.ts'
import { thinned } from '../../../web/worksheet/thinned.ts'
import { bootCleaner, demoMachines } from '../../support/machines.ts'

const ROOM = { width: 62, height: 50 }

const withCounts = (wormStarts: number, wheelTeeth: number, hand: 'right' | 'left' = 'right'): Machine => ({
  ...bootCleaner,
  gearing: { ...bootCleaner.gearing, wormStarts, wheelTeeth, hand },
})

const pointsOf = (d: string): Flat[] =>
  [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]): Flat => [Number(x), Number(y)])

/** Closed outlines of bodies where they stand on the drawing */
function outlines(marks: readonly Mark[], x = 0, y = 0): Flat[][] {
  return marks.flatMap((mark): Flat[][] => {
    if (mark.kind === 'group') return outlines(mark.marks, x + mark.x, y + mark.y)
    if (mark.kind !== 'stroke' || !mark.d.endsWith('Z') || mark.d.includes('A')) return []
    return [pointsOf(mark.d).map(([u, v]): Flat => [u + x, v + y])]
  })
}

const longest = (lines: readonly Flat[][]): Flat[][] => lines.toSorted((a, b) => b.length - a.length)

/** Both wheels and the worm between them: the three outlines of most points, from left to right. */
function gears(drawing: Drawing): readonly [Flat[], Flat[], Flat[]] {
  const middle = (line: readonly Flat[]) => line.reduce((sum, [x]) => sum + x, 0) / line.length
  const [left, worm, right] = longest(outlines(drawing.marks))
    .slice(0, 3)
    .toSorted((a, b) => middle(a) - middle(b))
  return [left!, worm!, right!]
}

function isInside([x, y]: Flat, area: readonly Flat[]): boolean {
  let inside = false
  area.forEach(([bx, by], i) => {
    const [ax, ay] = area.at(i - 1)!
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  })
  return inside
}

function distance([px, py]: Flat, area: readonly Flat[]): number {
  return Math.min(
    ...area.map(([bx, by], i) => {
      const [ax, ay] = area.at(i - 1)!
      const [ux, uy] = [bx - ax, by - ay]
      const along = Math.max(0, Math.min(1, ((px - ax) * ux + (py - ay) * uy) / (ux * ux + uy * uy || 1)))
      return Math.hypot(px - ax - along * ux, py - ay - along * uy)
    }),
  )
}

/** How deep one outline reaches into another [mm on paper] */
const depth = (line: readonly Flat[], area: readonly Flat[]): number =>
  Math.max(0, ...line.filter((point) => isInside(point, area)).map((point) => distance(point, area)))

/** What thinning leaves of the truth on each of two lines [mm on paper] */
const FINE = 2 * 0.02 + 0.002

const PAIRS = [
  [1, 12],
  [1, 20],
  [2, 35],
  [3, 31],
  [4, 25],
  [1, 17],
] as const

describe('the machine from above on paper', () => {
  test.each(PAIRS)('%i starts, %i teeth: no tooth crosses a thread, on either side', (starts, teeth) => {
    const [left, worm, right] = gears(planPicture(withCounts(starts, teeth), ROOM))
    expect(depth(left, worm)).toBeLessThan(FINE)
    expect(depth(right, worm)).toBeLessThan(FINE)
    expect(depth(worm, left)).toBeLessThan(FINE)
    expect(depth(worm, right)).toBeLessThan(FINE)
  })

  test('would show a wheel that stands a quarter of a tooth off', () => {
    const [, worm, right] = gears(planPicture(withCounts(1, 20), ROOM))
    const middle = right.reduce((sum, [x, y]) => [sum[0] + x, sum[1] + y] as const, [0, 0] as const)
    const [cx, cy] = [middle[0] / right.length, middle[1] / right.length]
    const turn = (2 * Math.PI) / 20 / 4
    const off = right.map(([x, y]): Flat => {
      const [u, v] = [x - cx, y - cy]
      return [cx + u * Math.cos(turn) - v * Math.sin(turn), cy + u * Math.sin(turn) + v * Math.cos(turn)]
    })
    expect(depth(off, worm)).toBeGreaterThan(5 * FINE)
  })

  test('keeps inside its room, whole numbers of teeth, no number missing, for every demo machine', () => {
    for (const machine of [...demoMachines, ...PAIRS.map(([z1, z2]) => withCounts(z1, z2, 'left'))]) {
      const drawing = planPicture(machine, ROOM)
      expect(drawing.width).toBeLessThanOrEqual(ROOM.width + 8)
      expect(drawing.height).toBeLessThanOrEqual(ROOM.height + 1e-9)
      expect(innerSvg(drawing)).not.toMatch(/NaN|undefined|Infinity|<image/)
      for (const line of outlines(drawing.marks)) {
        for (const [x, y] of line) {
          expect(x).toBeGreaterThanOrEqual(0)
          expect(x).toBeLessThanOrEqual(drawing.width)
          expect(y).toBeGreaterThanOrEqual(0)
          expect(y).toBeLessThanOrEqual(drawing.height)
        }
      }
    }
  })
})

describe('a thinned line', () => {
  const curve = Array.from({ length: 400 }, (_, i): Flat => [i / 100, Math.sin(i / 20)])

  test('keeps its ends, and no point that it drops lies further off than told', () => {
    const fewer = thinned(curve, 0.01)
    expect(fewer.length).toBeLessThan(curve.length / 3)
    expect(fewer[0]).toBe(curve[0])
    expect(fewer.at(-1)).toBe(curve.at(-1))
    for (const point of curve) expect(distance(point, [...fewer, ...fewer.toReversed()])).toBeLessThan(0.0101)
  })
})
