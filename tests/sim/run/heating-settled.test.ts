import { describe, expect, test } from 'vitest'
import type { DriveInput } from '../../../sim/drive/input.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { newHeatPoint, writeRunning } from '../../../sim/run/heating-point.ts'
import type { SettledHeat } from '../../../sim/run/heating-settled.ts'
import { settledHeat } from '../../../sim/run/heating-settled.ts'
import type { HeatingConditions } from '../../../sim/run/heating-source.ts'
import { heatSource } from '../../../sim/run/heating-source.ts'
import { bootCleaner, cordWinder, ventOpener } from '../../support/machines.ts'
import { near } from '../../support/near.ts'

function settled(
  machine: Machine,
  setting: number,
  load = 0,
  conditions: HeatingConditions = {},
): SettledHeat {
  const found = settledHeat(machine, told(setting, load), conditions)
  if (!found || 'reason' in found) throw new Error(found?.reason ?? 'no thermal description')
  return found
}

const told = (setting: number, load: number): DriveInput => ({
  ...firstInput(),
  setting,
  leftLoad: load,
  rightLoad: load,
})

const rise = (machine: Machine, { case: body }: SettledHeat): number => body - machine.thermal!.ambient

// Figures of a prototype of this model, written separately; half of the last digit.
describe('a machine that runs on and on settles', () => {
  test.each([
    { setting: 0, expected: 9 },
    { setting: 2, expected: 11.9 },
    { setting: 4, expected: 14.9 },
  ])('boot cleaner, brush free, step $setting: case $expected K above the air', ({ setting, expected }) => {
    near(rise(bootCleaner, settled(bootCleaner, setting)), expected, 0.05)
  })

  test('as the trade has it, near 15 K above a room of 21 °C in a light demonstration: common practice', () => {
    near(rise(bootCleaner, settled(bootCleaner, 4)), 15, 1)
  })

  test('the boot cleaner at full speed with its winding at 43.4 °C and the motor at 5125 r/min', () => {
    const { winding, point } = settled(bootCleaner, 4)
    near(winding, 43.4, 0.05)
    near((point.speed * 30) / Math.PI, 5125, 0.5)
  })

  test('the boot cleaner with a boot pressed on: 42.8 K, winding 92.2 °C', () => {
    const found = settled(bootCleaner, 4, 1)
    near(rise(bootCleaner, found), 42.8, 0.05)
    near(found.winding, 92.2, 0.05)
  })

  test('the cord winder: 41.2 K, winding 102.0 °C', () => {
    const found = settled(cordWinder, 4)
    near(rise(cordWinder, found), 41.2, 0.06)
    near(found.winding, 102, 0.05)
  })

  test('the vent opener warmer on a slower step, whose fan is slower: 132 and 154 °C', () => {
    near(settled(ventOpener, 3).winding, 132, 0.5)
    near(settled(ventOpener, 2).winding, 154, 0.5)
  })
})

test('at the settled temperatures as much heat goes off as arises', () => {
  for (const [machine, setting, load] of [
    [bootCleaner, 4, 0],
    [bootCleaner, 4, 1],
    [ventOpener, 2, 0],
    [cordWinder, 4, 0],
  ] as const) {
    const found = settled(machine, setting, load)
    const point = newHeatPoint()
    writeRunning(point, heatSource(machine, told(setting, load))!, found.winding, found.case)
    const across = point.windingToCase * (found.winding - found.case)
    const out = point.caseToAir * rise(machine, found)
    // 1e-6 K of the conductance that it would take
    near(across, point.windingHeat, 1e-6 * point.windingToCase)
    near(out, point.windingHeat + point.caseHeat, 1e-6 * point.caseToAir)
  }
})

test('without the fan’s air it settles hotter, and the more the faster it runs', () => {
  const gain = (setting: number): number =>
    settled(bootCleaner, setting, 0, { fanCools: false }).winding - settled(bootCleaner, setting).winding
  expect(gain(0)).toBeGreaterThan(5)
  expect(gain(4)).toBeGreaterThan(gain(0))
})

test('a machine unplugged settles at the air', () => {
  const found = settledHeat(bootCleaner, { ...told(4, 0), connected: false })
  expect(found).toMatchObject({ winding: 21, case: 21 })
})

test('a load that drives the machine ever faster settles nowhere, and that is said', () => {
  const { outputs, rotor } = cordWinder
  const driven: Machine = {
    ...cordWinder,
    rotor: { ...rotor, frictionTorque: 0, viscousTorque: 0, fanTorque: 0 },
    outputs: {
      ...outputs,
      bearingTorque: 0,
      loads: [{ name: 'Falling weight', active: -3, passive: 0, linear: 0, quadratic: 0 }],
    },
  }
  expect(settledHeat(driven, { ...told(4, 0), connected: false })).toEqual({
    reason: 'no settling: the load drives the machine ever faster',
  })
})
