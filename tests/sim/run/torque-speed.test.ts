import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import { torqueSpeedCurve, torqueSpeedCurves } from '../../../sim/run/torque-speed.ts'
import { directCurrentMachine } from '../../support/direct-current.ts'
import { bootCleaner, cordWinder, ventOpener } from '../../support/machines.ts'
import { near, relativelyNear } from '../../support/near.ts'

test.each([
  ['boot cleaner', bootCleaner, 4, 51],
  ['vent opener', ventOpener, 3, 51],
  ['cord winder', cordWinder, 4, 21],
])('curve and demand of the %s cross where it settles', (_, machine, setting, n) => {
  const drive = compileDrive(machine)
  const input = { ...firstInput(), setting }
  const curve = torqueSpeedCurve(drive, input, n)
  const point = operatingPoint(drive, input)!
  const stable = curve.crossings.filter((crossing) => crossing.isStable)
  expect(stable).toHaveLength(1)
  relativelyNear(stable[0]!.speed, point.speed, 1e-9)
  relativelyNear(stable[0]!.torque, point.reading.motorTorque, 1e-9)
  near(curve.torque[0]!, point.stallTorque, 1e-12)
  expect(curve.torque[0]!).toBeGreaterThan(curve.breakawayTorque)
})

test('with magnets the curve ends where the current does', () => {
  const unlimited = compileDrive({ ...ventOpener, protection: { kind: 'none' } })
  const input = { ...firstInput(), setting: 3 }
  const { torque, currentRms } = torqueSpeedCurve(unlimited, input, 11)
  near(torque[10]!, 0, 1e-12)
  near(currentRms[10]!, 0, 1e-12)
  expect([...torque]).toEqual([...torque].toSorted((a, b) => b - a))
  // A current limit cuts the curve off at low speeds and leaves the rest as it is.
  const limited = torqueSpeedCurve(compileDrive(ventOpener), input, 11).torque
  expect(limited[0]!).toBeLessThan(0.8 * torque[0]!)
  expect(limited.slice(4)).toEqual(torque.slice(4))
})

test('without any friction the crossing is where the current ends, as where it settles', () => {
  const drive = compileDrive(directCurrentMachine({ voltage: 40, resistance: 0.8, constant: 0.38 }))
  const { crossings } = torqueSpeedCurve(drive, firstInput(), 7, 200)
  relativelyNear(crossings[0]!.speed, 40 / 0.38, 1e-12)
  relativelyNear(operatingPoint(drive, firstInput())!.speed, 40 / 0.38, 1e-12)
})

test('all settings share one axis, a higher one above a lower one, and come one by one', () => {
  const curves = torqueSpeedCurves(compileDrive(bootCleaner), firstInput(), 21)
  const first = curves.next().value!
  expect(first.setting).toBe(0)
  const rest = [...curves]
  expect(rest.map(({ setting }) => setting)).toEqual([1, 2, 3, 4])
  for (const curve of rest) {
    expect(curve.speed).toEqual(first.speed)
    expect(curve.demand).toEqual(first.demand)
    expect(curve.torque[10]!).toBeGreaterThanOrEqual(first.torque[10]!)
  }
})

test('a stronger hold before the start shows as a higher torque to start, and not while running', () => {
  const sticky = compileDrive({ ...bootCleaner, rotor: { ...bootCleaner.rotor, breakaway: 2 } })
  const smooth = compileDrive(bootCleaner)
  const [held, free] = [sticky, smooth].map((drive) => torqueSpeedCurve(drive, firstInput(), 5))
  expect(held!.demand).toEqual(free!.demand)
  near(held!.breakawayTorque, 2 * free!.breakawayTorque, 1e-15)
})
