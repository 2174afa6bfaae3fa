import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import { newReading, readState } from '../../../sim/drive/reading.ts'
import { restState } from '../../../sim/drive/state.ts'
import { step } from '../../../sim/drive/step.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { bootCleaner } from '../../support/machines.ts'
import { between, near, relativelyNear } from '../../support/near.ts'

const DT = 1 / 240
const { control } = bootCleaner
if (control.kind !== 'taps') throw new Error('needs taps')

/** The boot cleaner with 2200 uF, its leakage left out, as the second solution had it. */
const smoothed: Machine = {
  ...bootCleaner,
  rectifier: { diodeDrop: 0.8, capacitance: 2200, bleedResistance: 10 },
  control: { kind: 'taps', steps: control.steps.map((tap) => ({ ...tap, inductance: 0 })) },
}
const input = { ...firstInput(), setting: 4 }
const off = { ...input, connected: false }

function running() {
  const drive = compileDrive(smoothed)
  const state = restState()
  for (let n = 0; n < 720; n++) step(state, drive, input, DT)
  return { drive, state }
}

/** Figures of a second solution, which integrated the waves: unplugged at 562 rad/s with 26.0 V. */
test('unplugged, the capacitor falls with the coasting motor as integrated waves do', () => {
  const drive = compileDrive(smoothed)
  const state = { ...restState(), speed: 562, capacitorVoltage: 26 }
  for (let n = 0; n < 72; n++) step(state, drive, off, DT)
  near(state.capacitorVoltage, 14.6, 0.15)
  for (let n = 0; n < 72; n++) step(state, drive, off, DT)
  near(state.capacitorVoltage, 6.9, 0.15)
  for (let n = 0; n < 72; n++) step(state, drive, off, DT)
  expect(state.speed).toBe(0)
  between(state.capacitorVoltage, 1.5, 1.6)
})

test('what is left below the drop of the brushes goes through the bleed resistor', () => {
  const { drive, state } = running()
  for (let n = 0; n < 480; n++) step(state, drive, off, DT)
  const before = state.capacitorVoltage
  for (let n = 0; n < 2400; n++) step(state, drive, off, DT)
  relativelyNear(state.capacitorVoltage, before * Math.exp(-10 / (10e3 * 2.2e-3)), 1e-9)
})

test('of the energy in capacitor and rotor none is lost on the way, but what the steps miss', () => {
  const { drive, state } = running()
  const reading = newReading()
  const stored = () =>
    (2.2e-3 * state.capacitorVoltage ** 2) / 2 +
    (drive.rotorInertia / 2 + drive.wheelInertia / drive.ratio ** 2) * state.speed ** 2
  const before = stored()
  let lost = 0
  const fine = DT / 16
  for (let n = 0; n < 0.5 / fine; n++) {
    step(state, drive, off, fine)
    readState(reading, drive, off, state)
    expect(Math.abs(reading.residual)).toBeLessThan(1e-9)
    lost -= reading.storedRate * fine
  }
  relativelyNear(lost, before - stored(), 0.01)
})

test('a reading while unplugged shows the voltage, and plugged in its ripple too', () => {
  const { drive, state } = running()
  const on = readState(newReading(), drive, input, state)
  relativelyNear(on.capacitorVoltage, operatingPoint(drive, input)!.reading.capacitorVoltage, 1e-6)
  expect(on.capacitorRipple).toBeGreaterThan(1)
  step(state, drive, off, DT)
  const reading = readState(newReading(), drive, off, state)
  expect(reading.capacitorVoltage).toBe(state.capacitorVoltage)
  expect(reading.capacitorRipple).toBe(0)
  expect(reading.wallPower).toBe(0)
})
