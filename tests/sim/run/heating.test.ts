import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import type { DriveInput } from '../../../sim/drive/input.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { completed } from '../../../sim/run/completed.ts'
import type { HeatingOptions, HeatingRun } from '../../../sim/run/heating.ts'
import { heatingRun } from '../../../sim/run/heating.ts'
import { heatSource } from '../../../sim/run/heating-source.ts'
import { settledHeat } from '../../../sim/run/heating-settled.ts'
import { newHeating, stretch } from '../../../sim/run/heating-stretch.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../../support/machines.ts'
import { between, near } from '../../support/near.ts'
import { slowHeating } from './heating-oracle.ts'

const input = (setting: number, load = 0, more: Partial<DriveInput> = {}): DriveInput => ({
  ...firstInput(),
  setting,
  leftLoad: load,
  rightLoad: load,
  ...more,
})

const run = (machine: Machine, told: DriveInput, options: HeatingOptions): HeatingRun =>
  completed(heatingRun(machine, told, options))!

const last = (column: Float64Array): number => column.at(-1)!

/** When the mean of the winding came to a class [s] */
const passed = ({ passages }: HeatingRun, insulation: string): number =>
  passages.byMean.find((passage) => passage.insulation === insulation && passage.level === 'red')!.seconds

/** Error that a heating curve may have [K], and a curve of a locked machine */
const CURVE = 5e-3
const LOCKED = 1e-3

describe('a heating run', () => {
  test.each([
    ['the loaded boot cleaner', bootCleaner, input(4, 1), CURVE],
    ['the vent opener', ventOpener, input(3), CURVE],
    ['the jammed boot cleaner', bootCleaner, input(4, 0, { jammed: 'left' }), LOCKED],
  ] as const)('%s follows a slower solution at each of its moments', (_, machine, told, tolerance) => {
    const slow = slowHeating(machine, told, 10, 80)
    const { columns } = run(machine, told, { duration: 800, parts: 80 })
    for (const [n, [winding, body]] of slow.entries()) {
      near(columns.time[n]!, 10 * n, 1e-9)
      near(columns.winding[n]!, winding, tolerance)
      near(columns.case[n]!, body, tolerance)
    }
  })

  test('points solved some degrees apart give the same curve as solving at each', { timeout: 60_000 }, () => {
    const source = heatSource(cordWinder, input(4))!
    const from = { winding: 21, case: 21 }
    const exact = newHeating({ ...source, nodes: null }, from, 900, 30, false)
    completed(stretch(exact, true, 900))
    const { columns } = run(cordWinder, input(4), { duration: 900, parts: 30 })
    expect(source.nodes).not.toBeNull()
    for (const [n, winding] of exact.rows.winding.entries()) near(columns.winding[n]!, winding, CURVE)
    expect(last(columns.winding)).toBeGreaterThan(80)
  })

  test('what arises warms the machine or goes to the air', () => {
    const { columns, heat, givenOff } = run(bootCleaner, input(4, 1), { duration: 3600 })
    const { windingCapacity, caseCapacity, ambient } = bootCleaner.thermal!
    const stored =
      windingCapacity * (last(columns.winding) - ambient) + caseCapacity * (last(columns.case) - ambient)
    near(heat - givenOff - stored, 0, 1e-9 * heat)
    // The same heat from the rows, by the trapezoid.
    let drawn = 0
    for (let n = 1; n < columns.time.length; n++) {
      const before = columns.windingHeat[n - 1]! + columns.caseHeat[n - 1]!
      const now = columns.windingHeat[n]! + columns.caseHeat[n]!
      drawn += ((before + now) / 2) * (columns.time[n]! - columns.time[n - 1]!)
    }
    near(drawn, heat, 1e-4 * heat)
  })

  test('ends where heat and cooling settle', () => {
    for (const told of [input(4), input(4, 1)]) {
      const settled = settledHeat(bootCleaner, told)!
      if ('reason' in settled) throw new Error(settled.reason)
      const { columns } = run(bootCleaner, told, { duration: 8 * 3600 })
      near(last(columns.winding), settled.winding, CURVE)
      near(last(columns.case), settled.case, CURVE)
      near(last(columns.speed), Math.abs(settled.point.speed), 1e-2)
    }
  })

  test('cools to the air once it is unplugged', () => {
    const { columns, heat } = run(bootCleaner, input(4, 0, { connected: false }), {
      duration: 8 * 3600,
      from: { winding: 92, case: 64 },
    })
    expect(heat).toBe(0)
    expect(Math.max(...columns.speed)).toBe(0)
    near(last(columns.winding), 21, CURVE)
    for (let n = 1; n < columns.time.length; n++)
      expect(columns.winding[n]!).toBeLessThan(columns.winding[n - 1]!)
  })

  test('can be left before its end, having told how far it is', () => {
    const steps = heatingRun(bootCleaner, input(4), { duration: 3600 })
    const first = steps.next().value as number
    const second = steps.next().value as number
    between(first, 0, second)
    expect(second).toBeLessThan(0.5)
    expect(steps.return(null)).toEqual({ done: true, value: null })
  })

  test('is not there for a machine without a thermal description', () => {
    expect(completed(heatingRun(classroomModel, input(0), { duration: 60 }))).toBeNull()
    expect(settledHeat(classroomModel, input(0))).toBeNull()
  })
})

test('a machine whose drive is not computed tells why instead of a curve', () => {
  const unlikely: Machine = { ...bootCleaner, control: cordWinder.control, rectifier: ventOpener.rectifier }
  const reason = compileDrive(unlikely).notComputed
  expect(reason).not.toBeNull()
  const { columns, ended } = run(unlikely, input(0), { duration: 60 })
  expect(ended).toBe(reason)
  expect(columns.time.length).toBe(0)
  expect(settledHeat(unlikely, input(0))).toEqual({ reason })
})

describe('a jammed boot cleaner', () => {
  const jammed = input(4, 0, { jammed: 'left' })

  test('passes class B after 87 s: prototype of this model', () => {
    near(passed(run(bootCleaner, jammed, { duration: 200 }), 'B'), 87, 0.5)
  })

  test('opens its fuse within seconds, which spares the winding where it acts', () => {
    const ignored = run(bootCleaner, jammed, { duration: 200 })
    between(ignored.opened, 2.4, 2.6)
    const acting = run(bootCleaner, jammed, { duration: 200, protectionActs: true })
    near(acting.opened, ignored.opened, 0.01)
    expect(passed(acting, 'A')).toBe(Infinity)
    expect(Math.max(...acting.columns.winding)).toBeLessThan(26)
    expect(last(acting.columns.current)).toBe(0)
  })

  test('goes on to where nothing holds any more, and says so', () => {
    const { ended, columns } = run(bootCleaner, jammed, { duration: 7200 })
    expect(ended).toBe('the winding passed 400 °C: nothing here holds beyond that')
    expect(last(columns.time)).toBeLessThan(7200)
    expect(last(columns.winding)).toBeGreaterThan(400)
    expect(settledHeat(bootCleaner, jammed)).toEqual({
      reason: 'no settling: thermal runaway or locked, the winding would pass 400 °C',
    })
  })
})

test('a shaft that is held warms like one that a jam holds', () => {
  const jammed = run(bootCleaner, input(4, 0, { jammed: 'left' }), { duration: 100, parts: 10 })
  const held = run(bootCleaner, input(4), { duration: 100, parts: 10, held: true })
  expect(held.columns).toEqual(jammed.columns)
  expect(held.stalled).toBe(Infinity)
})

test('four hours take no more than eighty steps', () => {
  const heating = newHeating(heatSource(bootCleaner, input(4))!, { winding: 21, case: 21 }, 14_400, 1, false)
  completed(stretch(heating, true, 14_400))
  expect(heating.stepper.y[0]).toBe(14_400)
  expect(heating.steps).toBeLessThan(80)
})

describe('a winding passes its class', () => {
  test('at the moment that a slower solution has between two of its own', () => {
    const slow = slowHeating(ventOpener, input(2), 20, 160)
    const after = slow.findIndex(([winding]) => winding >= 130)
    const seconds = passed(run(ventOpener, input(2), { duration: 3200 }), 'B')
    between(seconds, 20 * (after - 1), 20 * after)
  })

  // 2 K below where it settles the curve is so flat that half of the last digit there is minutes here: this program and
  // the slower solution pass at 4861 s, a prototype of this model, whose 132 degC settled, at 5012 s.
  test('about when a prototype does at full setting without a pause', () => {
    const { columns, passages } = run(ventOpener, input(3), { duration: 5012 })
    near(last(columns.winding), 130, 0.5)
    expect(passages.byMean.some(({ insulation, level }) => insulation === 'B' && level === 'red')).toBe(true)
  })

  test('by its hottest spot earlier than by its mean, and is called hot before', () => {
    const { passages } = run(ventOpener, input(2), { duration: 6000 })
    const of = (list: HeatingRun['passages']['byMean'], level: string): number =>
      list.find((passage) => passage.insulation === 'B' && passage.level === level)!.seconds
    expect(of(passages.byHotSpot, 'red')).toBeLessThan(of(passages.byMean, 'red'))
    expect(of(passages.byHotSpot, 'amber')).toBeLessThan(of(passages.byHotSpot, 'red'))
    expect(of(passages.byMean, 'red')).toBeLessThan(6000)
  })

  test('at once where it begins there', () => {
    expect(passed(run(ventOpener, input(2), { duration: 60, from: { winding: 140, case: 90 } }), 'B')).toBe(0)
  })
})

test('a motor that grows weak with heat comes to rest, and its run tells when', () => {
  const { stalled, columns } = run(ventOpener, input(0), { duration: 3600 })
  between(stalled, 60, 3600)
  for (const [n, time] of columns.time.entries()) expect(columns.speed[n]! > 0).toBe(time < stalled)
})

test('a machine described by its 20 °C table reads like it at 20 °C, and weaker when warm', () => {
  const warm = run(bootCleaner, input(4, 1), { duration: 60, from: { winding: 20, case: 20 } })
  near((warm.columns.speed[0]! * 30) / Math.PI, 3763, 0.5)
  near(warm.columns.current[0]!, 3.023, 5e-4)
  expect(last(warm.columns.speed)).toBeLessThan(warm.columns.speed[0]!)
})
