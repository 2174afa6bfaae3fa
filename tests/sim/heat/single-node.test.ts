import { describe, expect, test } from 'vitest'
import {
  dutyPeakRise,
  dutyTroughRise,
  longestOnTime,
  riseAfter,
  riseBefore,
  settledFromEqualTimes,
  settledRise,
  timeBetween,
} from '../../../sim/heat/single-node.ts'
import { near, relativelyNear } from '../../support/near.ts'

/** Warms and cools by turns for so many cycles, and tells the last two turning points. */
function cycles(thetaF: number, on: number, off: number, heating: number, cooling: number, count: number) {
  let trough = 0
  let peak = 0
  for (let n = 0; n < count; n++) {
    peak = riseAfter(thetaF, trough, on, heating)
    trough = riseAfter(0, peak, off, cooling)
  }
  return { peak, trough }
}

describe('one body that warms', () => {
  test('each way of turning the law round gives back what was put in', () => {
    const later = riseAfter(50, 8, 17, 30)
    relativelyNear(riseBefore(50, later, 17, 30), 8, 1e-12)
    relativelyNear(settledRise(8, later, 17, 30), 50, 1e-12)
    relativelyNear(timeBetween(50, 8, later, 30), 17, 1e-12)
    relativelyNear(settledFromEqualTimes(riseAfter(50, 0, 17, 30), riseAfter(50, 0, 34, 30)), 50, 1e-12)
  })

  test('follows d theta/dt = (thetaF - theta)/tau', () => {
    const h = 1e-4
    const slope = (riseAfter(50, 8, 17 + h, 30) - riseAfter(50, 8, 17 - h, 30)) / (2 * h)
    relativelyNear(slope, (50 - riseAfter(50, 8, 17, 30)) / 30, 1e-8)
  })

  test('is never as warm as it would settle at, and says so', () => {
    expect(timeBetween(50, 0, 50, 30)).toBe(Infinity)
    expect(timeBetween(50, 0, 60, 30)).toBe(Infinity)
    expect(timeBetween(50, 60, 70, 30)).toBe(Infinity)
    relativelyNear(timeBetween(0, 60, 30, 30), 30 * Math.LN2, 1e-12)
  })
})

describe('intermittent duty', () => {
  const duty = { on: 30, off: 45, heating: 110, cooling: 150 }

  test('ends in what cycle after cycle leads to', () => {
    const ends = cycles(50, 30, 45, 110, 150, 200)
    relativelyNear(dutyPeakRise(50, duty), ends.peak, 1e-12)
    relativelyNear(dutyTroughRise(50, duty), ends.trough, 1e-12)
  })

  test('without a pause is running throughout, and with little time on stays cold', () => {
    relativelyNear(dutyPeakRise(50, { ...duty, off: 0 }), 50, 1e-12)
    near(dutyPeakRise(50, { ...duty, on: 1e-9 }), 0, 1e-7)
  })

  test('the longest time on is the one whose peak is the limit', () => {
    const on = longestOnTime(50, 20, duty)
    relativelyNear(dutyPeakRise(50, { ...duty, on }), 20, 1e-12)
    expect(longestOnTime(50, 50, duty)).toBe(Infinity)
    expect(longestOnTime(50, 0, duty)).toBe(0)
  })
})
