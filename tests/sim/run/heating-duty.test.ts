import { describe, expect, test } from 'vitest'
import { firstInput } from '../../../sim/drive/input.ts'
import { dutyPeakRise, dutyTroughRise } from '../../../sim/heat/single-node.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { completed } from '../../../sim/run/completed.ts'
import { heatingRun } from '../../../sim/run/heating.ts'
import type { Duty, SettledDuty } from '../../../sim/run/heating-duty.ts'
import { longestDuty, settledDuty } from '../../../sim/run/heating-duty.ts'
import { newHeatPoint, writeResting, writeRunning } from '../../../sim/run/heating-point.ts'
import { settledHeat } from '../../../sim/run/heating-settled.ts'
import { heatSource } from '../../../sim/run/heating-source.ts'
import { bootCleaner, ventOpener } from '../../support/machines.ts'
import { between, near, relativelyNear } from '../../support/near.ts'

const fastest = { ...firstInput(), setting: 3 }
const loaded = { ...firstInput(), setting: 4, leftLoad: 1, rightLoad: 1 }

function swing(machine: Machine, input: typeof fastest, duty: Duty): SettledDuty {
  const found = settledDuty(machine, input, duty)!
  if ('reason' in found) throw new Error(found.reason)
  return found
}

/** The case kept at the temperature of the air, so that the winding alone warms. */
const oneBody: Machine = {
  ...bootCleaner,
  thermal: {
    ...bootCleaner.thermal!,
    windingCapacity: 1000,
    windingToCase: 5,
    windingToCaseFan: 4,
    caseCapacity: 1e8,
    caseToAir: 1e6,
    caseToAirFan: 0,
  },
}

describe('a duty that goes on and on', () => {
  test('with one body swings as the closed form of Gupta & Singhal, chapter 4, has it', () => {
    const duty = { on: 90, off: 130 }
    const { hot, cool } = swing(oneBody, loaded, duty)
    const source = heatSource(oneBody, loaded)!
    const { ambient, windingCapacity } = source.thermal
    const heatAt = (winding: number) => {
      const point = newHeatPoint()
      writeRunning(point, source, winding, ambient)
      return { heat: point.windingHeat, conductance: point.windingToCase }
    }
    // Heat and cooling hardly change with the few kelvins here; where they do it is in proportion.
    const net = (winding: number): number =>
      heatAt(winding).heat - heatAt(winding).conductance * (winding - ambient)
    const middle = (hot.winding + cool.winding) / 2
    const slope = -(net(hot.winding) - net(cool.winding)) / (hot.winding - cool.winding)
    const settled = middle - ambient + (net(hot.winding) + net(cool.winding)) / 2 / slope
    const resting = newHeatPoint()
    writeResting(resting, source)
    const single = {
      ...duty,
      heating: windingCapacity / slope,
      cooling: windingCapacity / resting.windingToCase,
    }
    between(hot.winding - ambient, 1, 10)
    relativelyNear(hot.winding - ambient, dutyPeakRise(settled, single), 1e-3)
    relativelyNear(cool.winding - ambient, dutyTroughRise(settled, single), 1e-3)
  })

  test('is what a long run of cycles comes to', () => {
    const duty = { on: 120, off: 300 }
    const { hot, cool } = swing(bootCleaner, loaded, duty)
    const { columns } = completed(heatingRun(bootCleaner, loaded, { duration: 40 * 420, duty, parts: 1 }))!
    near(columns.winding.at(-1)!, cool.winding, 5e-3)
    near(columns.case.at(-1)!, cool.case, 5e-3)
    near(Math.max(...columns.winding.subarray(-4)), hot.winding, 5e-3)
  })

  test('with hardly a pause is running throughout', () => {
    const settled = settledHeat(ventOpener, fastest)!
    if ('reason' in settled) throw new Error(settled.reason)
    near(swing(ventOpener, fastest, { on: 2000, off: 1e-3 }).hot.winding, settled.winding, 0.01)
  })

  test('a machine that would burn throughout swings where pauses let it cool', () => {
    const jammed = { ...loaded, jammed: 'left' as const }
    expect(settledHeat(bootCleaner, jammed)).toHaveProperty('reason')
    const { hot, cool } = swing(bootCleaner, jammed, { on: 10, off: 600 })
    expect(cool.winding).toBeLessThan(hot.winding)
    expect(hot.winding).toBeLessThan(130)
    expect(settledDuty(bootCleaner, jammed, { on: 600, off: 10 })).toHaveProperty('reason')
  })

  test('a run tells each switching, before and after', () => {
    const { columns } = completed(
      heatingRun(ventOpener, fastest, { duration: 300, duty: { on: 60, off: 90 }, parts: 1 }),
    )!
    expect([...columns.time]).toEqual([0, 60, 60, 150, 150, 210, 210, 300])
    expect([...columns.speed].map((speed) => speed > 0)).toEqual([
      true,
      true,
      false,
      false,
      true,
      true,
      false,
      false,
    ])
  })
})

describe('the longest time on', () => {
  test('keeps the hottest spot just below its class', () => {
    const longest = completed(longestDuty(ventOpener, fastest, 300))!
    expect(longest.limit).toBe(120)
    near(swing(ventOpener, fastest, { on: longest.on, off: 300 }).hot.winding, 120, 0.05)
    expect(swing(ventOpener, fastest, { on: 1.05 * longest.on, off: 300 }).hot.winding).toBeGreaterThan(120)
  })

  test('is longer after a longer pause', () => {
    const on = (off: number): number => completed(longestDuty(ventOpener, fastest, off))!.on
    expect(on(40)).toBeGreaterThan(on(10))
  })

  test('is without end where the machine bears running throughout', () => {
    expect(completed(longestDuty(bootCleaner, loaded, 60))!.on).toBe(Infinity)
  })
})
