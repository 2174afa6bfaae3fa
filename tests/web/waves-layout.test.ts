import { describe, expect, test } from 'vitest'
import { type LaneSize, laneNumbers, scopeLayout } from '../../web/drive/waves-layout.ts'

const short: LaneSize = { span: [0, 2], words: 'Motor current, A', meters: 'rms 0.864 · mean 0.543 · 100 Hz' }
const long: LaneSize = { ...short, words: 'Motor voltage, V (dashed: emf)' }
const options = { cursors: true, tall: false }

describe('lanes of the scope', () => {
  test.each([260, 316, 408, 560, 868])('stand clear of each other at %i px', (width) => {
    const { lanes, top, bottom, height, across } = scopeLayout(width, [0, 40], [short, long, short], options)
    let below = top
    for (const { head, up } of lanes) {
      expect(head).toBeGreaterThanOrEqual(below)
      expect(up.high).toBeGreaterThan(head + 14)
      expect(up.low).toBeGreaterThan(up.high + 40)
      below = up.low
    }
    expect(bottom).toBe(below)
    expect(height).toBeGreaterThan(bottom + 19)
    expect(across.high).toBeLessThan(width)
  })

  test('meters go under a name that leaves them no room, lane by lane', () => {
    const under = (width: number) =>
      scopeLayout(width, [0, 40], [short, long], options).lanes.map((lane) => lane.under)
    expect(under(408)).toEqual([false, false])
    expect(under(318)).toEqual([false, true])
    expect(under(260)).toEqual([true, true])
  })

  test('0 is written where it stands clear of the ends', () => {
    expect(laneNumbers({ from: -400, to: 400, low: 70, high: 22 })).toEqual([-400, 0, 400])
    expect(laneNumbers({ from: -5, to: 15, low: 70, high: 22 })).toEqual([-5, 15])
    expect(laneNumbers({ from: 0, to: 2, low: 70, high: 22 })).toEqual([0, 2])
  })
})
