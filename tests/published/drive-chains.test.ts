/**
 * Worked examples once more, through whole machines: from the description to the reading. The figures come from an open
 * companion data set of the books (inputs and computed result); the printed pages were not seen.
 */
import { describe, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import type { Reading } from '../../sim/drive/reading.ts'
import { newReading, readAt } from '../../sim/drive/reading.ts'
import type { Machine, Motor } from '../../sim/machine/machine.ts'
import type { Supply } from '../../sim/machine/supply.ts'
import { radPerSecond } from '../../sim/quantity/convert.ts'
import { batterySeries, triacBridge } from '../support/other-machines.ts'
import { cordWinder } from '../support/machines.ts'
import { between, near } from '../support/near.ts'

/** Beyond any current here, so that the field does not saturate [A] */
const NEVER = 1e12

/** Reads a machine whose protection lets everything pass, at a speed [r/min]. */
const readingOf = (machine: Machine, speed: number): Reading =>
  readAt(
    newReading(),
    compileDrive({ ...machine, protection: { kind: 'none' } }),
    firstInput(),
    radPerSecond(speed),
    0,
  )

const mains = (voltage: number, frequency: number, resistance = 0): Supply => ({
  kind: 'mains',
  voltage,
  frequency,
  resistance,
})

const series = (emfConstant: number, resistance: number, inductance: number): Motor => ({
  kind: 'universal',
  resistance,
  inductance,
  fieldInductance: 0,
  emfConstant,
  saturationCurrent: NEVER,
  brushDrop: 0,
})

/** A triac without drop that fires at the mains zero: nothing stands between mains and motor. */
const untouched = { kind: 'phase', switchDrop: 0, steps: [{ angle: 0 }] } as const

describe('universal motor on the mains', () => {
  test('1 A at 220 V and 1606 r/min: Theraja & Theraja, Electrical Technology, vol. II, Example 36.4', () => {
    const motor = series((220 - 20) / radPerSecond(2000), 20, 400)
    const read = (speed: number) =>
      readingOf({ ...cordWinder, supply: mains(220, 50), control: untouched, motor }, speed)
    // a slower motor takes more, a faster less
    between(1, read(1606 + 1.5).currentRms, read(1606 - 1.5).currentRms)
    const reading = read(1605)
    near(reading.motorTorque, 0.955, 0.001)
    near(reading.powerFactor, 0.82, 0.005)
  })
  test('17.58 A at 120 V, 60 Hz and 8000 r/min: Guru & Hiziroglu, Electric Machinery, 3rd ed., Ex. 10.5', () => {
    const I = 17.58
    const motor = series(
      74.1 / (I * radPerSecond(8000)),
      0.65 + 1.36,
      ((1.2 + 1.6) / (2 * Math.PI * 60)) * 1000,
    )
    const reading = readingOf({ ...cordWinder, supply: mains(120, 60), control: untouched, motor }, 8000)
    near(reading.currentRms, I, 0.005)
    near(reading.powerFactor, 0.912, 0.0005)
    near(reading.motorTorque * reading.wormSpeed - 80, 1222.75, 1)
    near(reading.motorTorque - 80 / reading.wormSpeed, 1.46, 0.005)
  })
})

describe('series motor on a battery', () => {
  const battery = (voltage: number, resistance: number): Supply => ({ kind: 'battery', voltage, resistance })
  test('a fan slowed by a resistor: P. C. Sen, Principles of Electric Machines, 2nd ed., Example 4.9', () => {
    const motor = series((220 - 25) / (25 * radPerSecond(300)), 0.6 + 0.4, 1)
    const control = {
      kind: 'chopper',
      frequency: 1,
      switchDrop: 0,
      freewheelDrop: 0,
      steps: [{ duty: 100 }],
    } as const
    const fast = readingOf({ ...batterySeries, supply: battery(220, 0), control, motor }, 300)
    near(fast.motorTorque * fast.wormSpeed, 4875, 1)
    near(fast.motorTorque, 155.2, 0.1)
    const slow = readingOf({ ...batterySeries, supply: battery(220, 7), control, motor }, 200)
    near(slow.motorTorque, 68.98, 0.05)
    near(slow.currentMean, 16.67, 0.01)
  })
  test('behind a chopper at 2626.1 r/min: P. S. Bimbhra, Power Electronics, Example 12.16', () => {
    const motor = series(0.004, 0.1, 1e4)
    const control = {
      kind: 'chopper',
      frequency: 1,
      switchDrop: 0,
      freewheelDrop: 0,
      steps: [{ duty: 60 }],
    } as const
    const reading = readingOf({ ...batterySeries, supply: battery(600, 0), control, motor }, 2626.1)
    near(reading.currentMean, 300, 0.05)
    near(reading.motorTorque, 360, 0.1)
    near(reading.inputPower / 1000, 108, 0.05)
  })
})

test('magnet motor behind triac and bridge from 60 deg: G. K. Dubey, Electrical Drives, 2nd ed., Example 5.16', () => {
  const K = (220 - 12.8 * 2) / radPerSecond(960)
  const machine: Machine = {
    ...triacBridge,
    // next to no resistance, and so much inductance that the current has no gap
    supply: mains(230, 50, 1e-6),
    rectifier: { diodeDrop: 0, capacitance: 0, bleedResistance: 10 },
    control: { kind: 'phase', switchDrop: 0, steps: [{ angle: 60 }] },
    motor: { kind: 'permanent-magnet', resistance: 2, inductance: 1e6, emfConstant: K, brushDrop: 0 },
  }
  near(readingOf(machine, 600).motorTorque, 32.68, 0.006)
  near(readingOf(machine, 664.8).motorTorque, 20, 0.006)
})
