import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import type { DriveInput } from '../../../sim/drive/input.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import type { Machine, PermanentMagnetMotor } from '../../../sim/machine/machine.ts'
import { fittings } from '../../support/fittings.ts'
import { bootCleaner, cordWinder, demoMachines, ventOpener } from '../../support/machines.ts'
import { near, relativelyNear } from '../../support/near.ts'

const settled = (machine: Machine, input: Partial<DriveInput> = {}) =>
  operatingPoint(compileDrive(machine), { ...firstInput(), ...input })!

const fitting = (name: string): Machine => fittings.find((machine) => machine.name === name)!

test.each(demoMachines.map((machine) => [machine.name, machine] as const))(
  '%s without friction in the mesh: the outputs carry u times what the shaft gives on',
  (_, machine) => {
    const smooth: Machine = { ...machine, gearing: { ...machine.gearing, friction: 0 } }
    const drive = compileDrive(smooth)
    near(drive.forwardEfficiency, 1, 1e-15)
    near(drive.backwardEfficiency, 1, 1e-15)
    const { reading, speed } = settled(smooth, { setting: drive.steps - 1 })
    const lost = (reading.frictionLoss + reading.fanLoss) / speed
    relativelyNear(
      reading.meshTorqueLeft + reading.meshTorqueRight,
      drive.ratio * (reading.motorTorque - lost),
      1e-12,
    )
    near(reading.meshLossLeft, 0, 1e-12)
  },
)

test('a chopper that hardly opens is a direct supply, but for the drop of its switch', () => {
  const chopped = (duty: number): Machine => ({
    ...ventOpener,
    control: { kind: 'chopper', frequency: 8, switchDrop: 0, freewheelDrop: 0.45, steps: [{ duty }] },
  })
  relativelyNear(settled(chopped(99.9999)).speed, settled(chopped(100)).speed, 1e-5)
  const series = fitting('battery, chopper, series motor')
  const fed = (duty: number): Machine => ({
    ...series,
    control: { kind: 'chopper', frequency: 8, switchDrop: 0, freewheelDrop: 0.45, steps: [{ duty }] },
  })
  relativelyNear(settled(fed(99.999)).speed, settled(fed(100)).speed, 1e-4)
})

test('a triac ahead of a bridge that fires at once is a plain bridge', () => {
  const fired = fitting('triac, bridge, magnets')
  const { motor, supply } = fired
  if (supply.kind !== 'mains') throw new Error('needs mains')
  const plain: Machine = {
    ...fired,
    transformer: { primaryVoltage: 230, coreResistance: 1000, magnetisingReactance: 1000 },
    supply: { ...supply, resistance: 0 },
    motor,
    control: { kind: 'taps', steps: [{ voltage: 230, resistance: 0.4, inductance: 0 }] },
  }
  const at = (angle: number): Machine => ({
    ...fired,
    control: { kind: 'phase', switchDrop: 0, steps: [{ angle }] },
  })
  const bridge = settled(plain)
  relativelyNear(settled(at(0)).speed, bridge.speed, 1e-8)
  relativelyNear(settled(at(0)).reading.currentRms, bridge.reading.currentRms, 1e-8)
  relativelyNear(settled(at(0.01)).speed, bridge.speed, 1e-4)
})

test('a large capacitor makes direct current of what charges it', () => {
  const smoothed = (capacitance: number): Machine => ({
    ...bootCleaner,
    rectifier: { diodeDrop: 0.8, capacitance, bleedResistance: 10 },
  })
  const ripples = [2200, 22_000, 100_000].map((uF) => settled(smoothed(uF), { setting: 4 }).reading)
  expect(ripples[1]!.capacitorRipple).toBeLessThan(ripples[0]!.capacitorRipple / 5)
  expect(ripples[2]!.capacitorRipple).toBeLessThan(ripples[1]!.capacitorRipple / 3)
  // Direct current has no form: r.m.s. and mean are the same.
  relativelyNear(ripples[2]!.currentRms, ripples[2]!.currentMean, 1e-4)
  expect(ripples[0]!.currentRms / ripples[0]!.currentMean).toBeGreaterThan(1.001)
})

test('a series motor that does not saturate is the linear one', () => {
  const { motor } = cordWinder
  if (motor?.kind !== 'universal') throw new Error('needs a series motor')
  const with0 = (saturationCurrent: number): Machine => ({
    ...cordWinder,
    motor: { ...motor, saturationCurrent },
  })
  relativelyNear(settled(with0(1e8)).speed, settled(with0(1e10)).speed, 1e-7)
})

test('the sense of a direct supply mirrors everything on a series motor too, since its field turns with it', () => {
  const series = fitting('battery, chopper, series motor')
  const loads = series.outputs.loads.map((load) => ({ ...load, active: 0 }))
  const machine: Machine = { ...series, outputs: { ...series.outputs, loads } }
  const [there, back] = ([1, -1] as const).map((sense) => settled(machine, { sense, setting: 2 }))
  expect(back!.speed).toBe(-there!.speed)
  expect(back!.reading.motorTorque).toBe(there!.reading.motorTorque)
})

test('a warm motor: less flux turns faster without a load and stalls weaker', () => {
  const { motor } = bootCleaner
  const at = (winding: number, magnet: number) =>
    operatingPoint(compileDrive(bootCleaner, { winding, magnet }), { ...firstInput(), setting: 4 })!
  const [cold, warm] = [at(20, 20), at(100, 60)]
  expect((motor as PermanentMagnetMotor).emfConstant).toBe(0.0432)
  expect(warm.speed).toBeGreaterThan(cold.speed)
  expect(warm.stallTorque).toBeLessThan(0.9 * cold.stallTorque)
})
