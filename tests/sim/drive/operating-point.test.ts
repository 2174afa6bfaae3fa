import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import type { DriveInput } from '../../../sim/drive/input.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint, settling } from '../../../sim/drive/operating-point.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { bootCleaner, cordWinder, ventOpener } from '../../support/machines.ts'
import { between, near } from '../../support/near.ts'

const settled = (machine: Machine, input: Partial<DriveInput>) =>
  operatingPoint(compileDrive(machine), { ...firstInput(), ...input })!

const both = { leftLoad: 1, rightLoad: 1 }

/** The second solution knew no current limit. */
const unlimited: Machine = { ...ventOpener, protection: { kind: 'none' } }

describe('at standstill', () => {
  test.each([
    [bootCleaner, 0, 0.209],
    [ventOpener, 0, 0.089],
    [ventOpener, 1, 0.15],
    [unlimited, 2, 0.209],
    [unlimited, 3, 0.27],
    [cordWinder, 0, 0.241],
    [cordWinder, 1, 0.513],
    [cordWinder, 2, 0.865],
    [cordWinder, 3, 1.254],
    [cordWinder, 4, 1.637],
  ])('the motor of %# gives the torque of the second solution', (machine, setting, torque) => {
    near(settled(machine, { setting }).stallTorque, torque, 0.0005)
  })

  test.each([
    [0, 0.209],
    [1, 0.259],
    [2, 0.3],
    [3, 0.332],
    [4, 0.358],
  ])(
    'leakage counted as motor inductance gives the larger torque of that simpler circuit, step %i',
    (setting, torque) => {
      const { control, motor } = bootCleaner
      if (control.kind !== 'taps' || motor?.kind !== 'permanent-magnet')
        throw new Error('needs taps and magnets')
      const tap = control.steps[setting]!
      const merged: Machine = {
        ...bootCleaner,
        control: { kind: 'taps', steps: [{ ...tap, inductance: 0 }] },
        motor: { ...motor, inductance: motor.inductance + tap.inductance },
      }
      near(settled(merged, {}).stallTorque, torque, 0.0005)
    },
  )

  test('a jammed boot cleaner on step 5 draws what the second solution with overlap draws', () => {
    const { reading, locked, stallTorque, speed } = settled(bootCleaner, { setting: 4, jammed: 'left' })
    expect(locked).toBe(true)
    expect(speed).toBe(0)
    near(reading.currentMean, 8.184, 0.0005)
    near(reading.currentRms, 8.981, 0.0005)
    near(stallTorque, 0.3535, 0.00005)
    near(reading.meshTorqueLeft, 3.48, 0.005)
  })
})

test('the boot cleaner at the wall, step 5, brushes free', () => {
  const { reading } = settled(bootCleaner, { setting: 4 })
  near(reading.wallPower, 31.54, 0.005)
  near(reading.apparentPower, 39.65, 0.005)
  near(reading.powerFactor, 0.795, 0.0005)
})

test('the vent opener stalls on step 1 with stiff hinges, and friction carries its torque', () => {
  const { reading, stalled, stallTorque } = settled(ventOpener, both)
  expect(stalled).toBe(true)
  expect(reading.residual).toBeCloseTo(0, 10)
  between(reading.leftTorque, 0.57, 0.63)
  near(reading.motorTorque, stallTorque, 0)
})

test('without losses each wheel carries its ten times of the motor torque of a 20-tooth wheel: common practice', () => {
  const ideal: Machine = {
    ...bootCleaner,
    rotor: { ...bootCleaner.rotor, frictionTorque: 0, viscousTorque: 0, fanTorque: 0 },
    gearing: { ...bootCleaner.gearing, friction: 0 },
    outputs: { ...bootCleaner.outputs, bearingTorque: 0 },
  }
  const { reading } = settled(ideal, {})
  near(reading.leftTorque, 10 * reading.motorTorque, 1e-9)
  near(reading.leftTorque + reading.rightTorque, reading.idealTotal, 1e-9)
})

test('a rectified motor drives its overhauled load no faster than the load allows', () => {
  const pulled: Machine = {
    ...bootCleaner,
    gearing: { ...bootCleaner.gearing, wormStarts: 4, wheelTeeth: 40, friction: 0.02 },
    outputs: {
      ...bootCleaner.outputs,
      loads: [{ name: 'Weight', active: -2, passive: 0, linear: 0.01, quadratic: 0 }],
    },
  }
  const point = settled(pulled, { connected: false })
  expect(point.speed).toBeGreaterThan(0)
  expect(point.stalled).toBe(false)
  near(point.reading.residual, 0, 1e-9)
})

test('the stalled cord winder draws what the second solution draws', () => {
  const { reading, locked } = settled(cordWinder, { setting: 4, jammed: 'right' })
  expect(locked).toBe(true)
  near(reading.currentRms, 7.38, 0.005)
})

test('the current limit of the vent opener holds the crest of its stalled current, and says so', () => {
  const { reading, stallTorque } = settled(ventOpener, { setting: 3, jammed: 'left' })
  expect(reading.isLimited).toBe(true)
  near(reading.currentPeak, 6, 1e-9)
  between(stallTorque, 0.9 * 6 * 0.035, 6 * 0.035)
  expect(settled(ventOpener, { setting: 3 }).reading.isLimited).toBe(false)
})

describe('flags', () => {
  test('a vent that closes overhauls its motor, one that opens does not', () => {
    expect(settled(ventOpener, { sense: -1 }).overhauling).toBe(true)
    expect(settled(ventOpener, {}).overhauling).toBe(false)
  })

  test('a jammed boot cleaner is over the limit of its fuse, a free one is not', () => {
    expect(settled(bootCleaner, { setting: 4, jammed: 'left' }).overLimit).toBe(true)
    expect(settled(bootCleaner, { setting: 4 }).overLimit).toBe(false)
  })

  test('a jam that is too weak for the motor slips, and the wheel takes its torque on', () => {
    const weak: Machine = { ...bootCleaner, outputs: { ...bootCleaner.outputs, jamTorque: 0.5 } }
    const { reading, locked, stalled } = settled(weak, { setting: 4, jammed: 'left' })
    expect([locked, stalled]).toEqual([false, false])
    near(reading.leftTorque - reading.rightTorque, 0.5, 1e-12)
    expect(settled(bootCleaner, { setting: 4, jammed: 'left' }).locked).toBe(true)
  })
})

test('a machine that cannot settle says why', () => {
  const freed: Machine = {
    ...bootCleaner,
    rotor: { ...bootCleaner.rotor, viscousTorque: 0, fanTorque: 0 },
    gearing: { ...bootCleaner.gearing, wormStarts: 4, wheelTeeth: 40, friction: 0.02 },
    outputs: {
      ...bootCleaner.outputs,
      loads: [{ name: 'falling weight', active: -2, passive: 0, linear: 0, quadratic: 0 }],
    },
  }
  const falling = settling(compileDrive(freed), { ...firstInput(), connected: false })
  expect(falling.point).toBeNull()
  expect(falling.reason).toMatch(/loads drive the machine ever faster/)
  const idle: Machine = {
    ...cordWinder,
    rotor: { ...cordWinder.rotor, frictionTorque: 0, viscousTorque: 0, fanTorque: 0 },
    outputs: {
      ...cordWinder.outputs,
      bearingTorque: 0,
      loads: [{ name: 'none', active: 0, passive: 0, linear: 0, quadratic: 0 }],
    },
  }
  expect(settling(compileDrive(idle), firstInput()).reason).toMatch(/gains speed without end/)
  const heavy: Machine = { ...ventOpener, outputs: { ...ventOpener.outputs, wheelInertia: 5000 } }
  expect(settling(compileDrive(heavy), firstInput()).reason).toMatch(/make the wheels lighter/)
})
