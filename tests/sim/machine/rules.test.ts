import { describe, expect, test } from 'vitest'
import { checkShape } from '../../../sim/machine/check.ts'
import { withValue } from '../../../sim/machine/fields.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../../support/machines.ts'
import {
  directChopper,
  halfWaveMagnet,
  halfWaveSeries,
  smoothed,
  triacBridge,
} from '../../support/other-machines.ts'
import { shapeAt } from './told-at.ts'

describe('parts that do not go together', () => {
  const { transformer, rectifier, motor, supply, control } = bootCleaner

  test.each([
    ['taps behind a battery', { ...bootCleaner, supply: ventOpener.supply }, 'supply.kind'],
    ['taps behind a crank', { ...bootCleaner, supply: { kind: 'crank' } }, 'supply.kind'],
    ['taps without a transformer', { ...bootCleaner, transformer: null }, 'transformer'],
    [
      'a permanent-magnet motor on mains without a rectifier',
      { ...bootCleaner, rectifier: null },
      'rectifier',
    ],
    ['taps with a universal motor', { ...bootCleaner, motor: cordWinder.motor }, 'motor.kind'],
    ['taps without a motor', { ...bootCleaner, motor: null }, 'motor'],
    ['a chopper behind mains without a rectifier', { ...ventOpener, supply }, 'rectifier'],
    ['a transformer behind a battery', { ...ventOpener, transformer }, 'transformer'],
    ['a rectifier behind a battery', { ...ventOpener, rectifier }, 'rectifier'],
    ['phase control behind a battery', { ...cordWinder, supply: ventOpener.supply }, 'supply.kind'],
    ['phase control of a permanent-magnet motor without a rectifier', { ...cordWinder, motor }, 'rectifier'],
    ['phase control behind a transformer', { ...cordWinder, transformer }, 'transformer'],
    ['a crank with a motor', { ...classroomModel, motor }, 'motor'],
    ['a crank with mains', { ...classroomModel, supply }, 'supply.kind'],
    ['a crank with a transformer', { ...classroomModel, transformer }, 'transformer'],
  ])('%s', (_, value, path) => {
    const { machine, problems } = checkShape(value)
    expect(machine).toBeNull()
    expect(problems.map((problem) => problem.path)).toEqual([path])
    expect(problems[0]?.message).toMatch(/^must be .* where the control is '.*', got /)
  })

  test('the message about a supply says which controls go with it', () => {
    expect(shapeAt({ ...classroomModel, supply }, 'supply.kind')).toEqual([
      "error: must be 'crank' where the control is 'crank', got 'mains', which goes with 'taps' or 'chopper' or 'phase' or 'half-wave'",
    ])
  })

  test('a control of another supply shows each of its misfits at once', () => {
    const { problems } = checkShape({ ...classroomModel, control })
    expect(problems.map(({ path }) => path)).toEqual(['supply.kind', 'transformer', 'rectifier', 'motor'])
  })
})

describe('chains that are not built', () => {
  test.each([
    [
      'a diode ahead of a transformer',
      { ...halfWaveSeries, transformer: bootCleaner.transformer },
      'transformer',
      /^must be null where .*, got a transformer, since one half wave alone would magnetise its core$/,
    ],
    [
      'a smoothing capacitor behind a triac',
      { ...triacBridge, rectifier: smoothed.rectifier },
      'rectifier.capacitance',
      /^must be 0 behind a triac, got 2200 uF/,
    ],
    [
      'a chopper behind a bridge that is not smoothed',
      { ...directChopper, rectifier: triacBridge.rectifier },
      'rectifier.capacitance',
      /^must be above 0 where a chopper stands behind the bridge/,
    ],
    [
      'a capacitor that nothing limits the charging of',
      withValue(directChopper, 'supply.resistance', 0),
      'supply.resistance',
      /^must be above 0 ahead of a smoothing capacitor/,
    ],
    [
      'both half waves for a magnet motor',
      withValue(halfWaveMagnet, 'control.steps[0].waves', 2),
      'control.steps[0].waves',
      /^must be 1 where the motor has fixed magnets, got 2$/,
    ],
    [
      'a current limit without a chopper',
      { ...bootCleaner, protection: { kind: 'limit', current: 6 } },
      'protection.kind',
      /got 'limit', which needs a chopper$/,
    ],
    ['heat behind a crank', { ...classroomModel, thermal: bootCleaner.thermal }, 'thermal', /behind a crank/],
    [
      'brushes behind a crank',
      { ...classroomModel, brushes: bootCleaner.brushes },
      'brushes',
      /behind a crank/,
    ],
    [
      'a fuse behind a crank',
      { ...classroomModel, protection: bootCleaner.protection },
      'protection.kind',
      /^must be 'none' behind a crank/,
    ],
  ])('%s', (_, value, path, message) => {
    const { machine, problems } = checkShape(value)
    expect(machine).toBeNull()
    expect(problems.map((problem) => problem.path)).toEqual([path])
    expect(problems[0]!.message).toMatch(message)
  })

  test('brushes that reach a quarter of the way round are warned of', () => {
    const wide = withValue(bootCleaner, 'brushes.arcWidth', 12)
    expect(shapeAt(wide, 'brushes.arcWidth')).toEqual([
      'warning: should be below 11 mm, a quarter of the way round the commutator, got 12 mm',
    ])
  })
})

describe('the mains', () => {
  const mains = (path: string, value: number): string[] => shapeAt(withValue(bootCleaner, path, value), path)

  // IEC 60038: 230 V within 10 %, from memory; EN 50160: 50 Hz, 49.5 to 50.5 Hz usually and 47 to 52 Hz
  // always
  test.each([
    ['supply.voltage', 207, []],
    ['supply.voltage', 253, []],
    ['supply.voltage', 206.9, ['warning: is usually 207 to 253 V at a 230 V supply, got 206.9 V']],
    ['supply.voltage', 253.1, ['warning: is usually 207 to 253 V at a 230 V supply, got 253.1 V']],
    ['supply.voltage', 120, []],
    ['supply.frequency', 49.5, []],
    ['supply.frequency', 50.5, []],
    ['supply.frequency', 60, []],
    ['supply.frequency', 49.4, ['warning: is usually 49.5 to 50.5 Hz at a 50 Hz supply, got 49.4 Hz']],
    ['supply.frequency', 60.6, ['warning: is usually 59.5 to 60.5 Hz at a 60 Hz supply, got 60.6 Hz']],
    ['supply.frequency', 52.1, ['error: must be 47 to 52 Hz or 57 to 62 Hz, got 52.1 Hz']],
    ['supply.frequency', 56.9, ['error: must be 47 to 52 Hz or 57 to 62 Hz, got 56.9 Hz']],
    ['supply.frequency', 46.9, ['error: must be a number, 47 to 62 Hz, got 46.9 Hz']],
  ])('%s of %s', (path, value, told) => {
    expect(mains(path, value)).toEqual(told)
  })
})
