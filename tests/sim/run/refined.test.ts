import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { advance } from '../../../sim/numeric/event-steps.ts'
import { refinedPoint } from '../../../sim/run/refined.ts'
import { createRun } from '../../../sim/run/waveform.ts'
import { steadyWave } from '../../../sim/run/waveform-steady.ts'
import { CAPACITOR } from '../../../sim/electric/wave-network.ts'
import { ANGLE } from '../../../sim/run/waveform-state.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../../support/machines.ts'
import { smoothed } from '../../support/other-machines.ts'
import { near, relativelyNear } from '../../support/near.ts'

const both = (setting: number, load: number) => ({
  ...firstInput(),
  setting,
  leftLoad: load,
  rightLoad: load,
})

/** Design figures: cycle means, waveform, ripple; all measured there with a second program. */
const rows: readonly (readonly [string, Machine, number, number, number, number, number])[] = [
  ['boot cleaner, step 5, light', bootCleaner, 4, 0, 528.893, 529.754, 1.2],
  ['boot cleaner, step 5, both loaded', bootCleaner, 4, 1, 394.051, 395.416, 3.1],
  ['boot cleaner, step 1, both loaded', bootCleaner, 0, 1, 135.279, 136.449, 7.2],
  ['cord winder, step 3, light', cordWinder, 2, 0, 947.65, 948.349, 1.2],
]

test.each(rows)('both levels agree as far as the ripple lets them: %s', (...row) => {
  const [, machine, setting, load, averaged, waveform, ripple] = row
  const drive = compileDrive(machine)
  const means = operatingPoint(drive, both(setting, load))!
  const fine = refinedPoint(drive, both(setting, load))!
  near(means.speed, averaged, 5e-3)
  near(fine.speed, waveform, 5e-3)
  near(100 * fine.ripple, ripple, 0.05)
  expect(fine.isNeeded).toBe(false)
  expect(Math.abs(fine.speed / means.speed - 1)).toBeLessThan(0.2 * fine.ripple)
  relativelyNear(fine.currentMean, means.reading.currentMean, 5e-3)
  relativelyNear(fine.currentRms, means.reading.currentRms, 5e-3)
  relativelyNear(fine.inputPower, means.reading.inputPower, 8e-3)
})

test.each([
  ['boot cleaner', bootCleaner],
  ['vent opener', ventOpener],
  ['cord winder', cordWinder],
])('both levels agree at every setting and load of the %s, unless its ripple is too much', (_, machine) => {
  const drive = compileDrive(machine)
  for (const setting of machine.control.steps.keys())
    for (const [leftLoad, rightLoad] of [
      [0, 0],
      [1, 0],
      [1, 1],
    ] as const) {
      const fine = refinedPoint(drive, { ...firstInput(), setting, leftLoad, rightLoad })!
      expect(fine.isNeeded).toBe(fine.ripple > 0.08)
    }
})

test('where a capacitor and the speed swing together, cycle means are no longer enough at any ripple', () => {
  const fine = refinedPoint(compileDrive(smoothed), both(4, 0))!
  const { currentRms } = operatingPoint(compileDrive(smoothed), both(4, 0))!.reading
  expect(fine.ripple).toBeLessThan(0.08)
  expect(Math.abs(fine.currentRms / currentRms - 1)).toBeGreaterThan(5e-3)
  expect(fine.isNeeded).toBe(true)
})

test.each([
  ['light', 0],
  ['both loaded', 1],
])('a long run of the boot cleaner ends where shooting begins: %s', (_name, load) => {
  const drive = compileDrive(bootCleaner)
  const fine = refinedPoint(drive, both(4, load))!
  const run = createRun(drive, both(4, load), { speed: fine.speed, tolerance: 1e-9 })
  advance(run.events, 2)
  const before = run.y[ANGLE]!
  advance(run.events, 2.01)
  relativelyNear((run.y[ANGLE]! - before) / 0.01, fine.speed, 1e-6)
})

test('the period that shooting finds comes back', () => {
  for (const [, machine, setting, load] of rows) {
    const fine = refinedPoint(compileDrive(machine), both(setting, load))!
    expect(Math.abs(fine.speedMiss)).toBeLessThan(1e-9 * fine.speed)
    expect(fine.currentMiss).toBeLessThan(1e-9)
  }
})

test('torque that pulses more than light parts can even out asks for the refined point, which says so', () => {
  const light = {
    ...bootCleaner,
    rotor: { ...bootCleaner.rotor, inertia: 0.02 },
    outputs: { ...bootCleaner.outputs, wheelInertia: 0.1 },
  }
  const fine = refinedPoint(compileDrive(light), both(4, 1))!
  expect(fine.ripple).toBeGreaterThan(0.08)
  expect(fine.isNeeded).toBe(true)
  expect(fine.currentMiss).toBeLessThan(1e-9)
})

test('a chopper swings the speed by next to nothing', () => {
  const drive = compileDrive(ventOpener)
  const fine = refinedPoint(drive, both(0, 0))!
  relativelyNear(fine.speed, operatingPoint(drive, both(0, 0))!.speed, 1e-6)
  expect(fine.ripple).toBeLessThan(1e-3)
})

test('a crank has no waveforms', () => {
  expect(refinedPoint(compileDrive(classroomModel), firstInput())).toBeNull()
  expect(steadyWave(compileDrive(classroomModel), firstInput(), 1, 10)).toBeNull()
})

test('the waves of two periods begin at a mains zero, rise first, and repeat', () => {
  for (const [machine, setting] of [
    [bootCleaner, 4],
    [cordWinder, 4],
  ] as const) {
    const { wave, period } = steadyWave(compileDrive(machine), both(setting, 0), 2, 401)!
    near(period, 0.02, 1e-15)
    near(wave.time[400]!, 0.04, 1e-15)
    near(wave.sourceVoltage[0]!, 0, 1e-9)
    expect(wave.sourceVoltage[1]).toBeGreaterThan(0)
    for (let n = 0; n <= 200; n++) {
      near(wave.sourceCurrent[n]!, wave.sourceCurrent[n + 200]!, 1e-6)
      near(wave.motorCurrent[n]!, wave.motorCurrent[n + 200]!, 1e-6)
      near(wave.speed[n]!, wave.speed[n + 200]!, 1e-6)
    }
  }
})

test('the waves of the boot cleaner hold the laws of its parts at every sample', () => {
  const drive = compileDrive(bootCleaner)
  const { wave } = steadyWave(drive, both(4, 1), 1, 501)!
  const { source, winding } = drive.circuits[4]!
  for (let n = 0; n < wave.samples; n++) {
    near(wave.sourceVoltage[n]!, source.emf * Math.sin(source.angularFrequency * wave.time[n]!), 1e-9)
    near(wave.torque[n]!, winding.emfConstant * wave.motorCurrent[n]!, 1e-12)
    expect(Math.abs(wave.sourceCurrent[n]!)).toBeLessThan(wave.motorCurrent[n]! + 1e-9)
    if (wave.motorCurrent[n] === 0) near(wave.motorVoltage[n]!, winding.emfConstant * wave.speed[n]!, 1e-9)
  }
  const mean = wave.motorCurrent.subarray(1).reduce((sum, i) => sum + i, 0) / 500
  near(mean, refinedPoint(drive, both(4, 1))!.currentMean, 1e-3)
})

test('the current from the socket has the size that cycle means give it, with what the core takes', () => {
  const drive = compileDrive(bootCleaner)
  const { wave } = steadyWave(drive, both(4, 0), 1, 20_001)!
  const square = wave.lineCurrent.subarray(1).reduce((sum, i) => sum + i * i, 0) / 20_000
  relativelyNear(Math.sqrt(square), operatingPoint(drive, both(4, 0))!.reading.wallCurrent, 5e-3)
})

test('a chopper behind a capacitor, taken at its mean, runs as fast as the same one switched', () => {
  const machine: Machine = {
    ...bootCleaner,
    transformer: null,
    supply: { kind: 'mains', voltage: 24, frequency: 50, resistance: 1.15 },
    rectifier: { ...bootCleaner.rectifier!, capacitance: 2200, bleedResistance: 10 },
    control: {
      kind: 'chopper',
      frequency: 4,
      switchDrop: 0.3,
      freewheelDrop: 0.6,
      steps: [{ duty: 60 }],
    },
  }
  const drive = compileDrive(machine)
  const mean = refinedPoint(drive, firstInput())!
  const run = createRun(drive, firstInput(), {
    speed: mean.speed,
    capacitorVoltage: mean.run.y[CAPACITOR]!,
    tolerance: 1e-6,
  })
  advance(run.events, 0.5)
  const before = run.y[ANGLE]!
  advance(run.events, 0.6)
  relativelyNear((run.y[ANGLE]! - before) / 0.1, mean.speed, 5e-3)
})
