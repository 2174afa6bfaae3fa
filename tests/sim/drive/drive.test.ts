import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { checkMachine } from '../../../sim/machine/check.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { hasErrors } from '../../../sim/machine/problem.ts'
import { bootCleaner, classroomModel, cordWinder, demoMachines, ventOpener } from '../../support/machines.ts'
import { fittings } from '../../support/fittings.ts'
import { near } from '../../support/near.ts'

test('trade units become SI once', () => {
  const drive = compileDrive(bootCleaner)
  near(drive.rotorInertia, 3.2e-5, 1e-18)
  near(drive.wheelInertia, 1.5e-4, 1e-18)
  near(drive.circuits[4]!.source.inductance, 4e-4, 1e-18)
  near(drive.circuits[4]!.source.emf, 24 * Math.SQRT2, 1e-13)
  near(compileDrive(classroomModel).crankSpeeds[0]!, 2 * Math.PI, 1e-15)
  near(compileDrive(ventOpener).circuits[0]!.chopper!.period, 1.25e-4, 1e-18)
})

test('counts and hand come through', () => {
  expect(demoMachines.map((machine) => compileDrive(machine).steps)).toEqual([5, 4, 5, 1])
  const left: Machine = { ...cordWinder, gearing: { ...cordWinder.gearing, hand: 'left' } }
  const drive = compileDrive(left)
  expect([drive.starts, drive.teeth, drive.handSign]).toEqual([3, 31, -1])
  expect(drive.ratio).toBe(31 / 3)
})

test('a higher mains voltage raises every tap in proportion', () => {
  const high: Machine = {
    ...bootCleaner,
    supply: { kind: 'mains', voltage: 253, frequency: 50, resistance: 0 },
  }
  near(compileDrive(high).circuits[0]!.source.emf, 1.1 * 12 * Math.SQRT2, 1e-13)
})

test('an unchecked number that is not finite is a programming mistake, named by its path', () => {
  const broken: Machine = { ...bootCleaner, rotor: { ...bootCleaner.rotor, inertia: Number.NaN } }
  expect(() => compileDrive(broken)).toThrow('rotor.inertia must be finite, got NaN')
})

test('combinations that are not computed say so and still compile', () => {
  expect(compileDrive(bootCleaner).notComputed).toBeNull()
  expect(compileDrive({ ...bootCleaner, rectifier: null }).notComputed).toMatch(/combination/)
  const heavy: Machine = { ...ventOpener, outputs: { ...ventOpener.outputs, wheelInertia: 5000 } }
  expect(compileDrive(heavy).notComputed).toMatch(/make the wheels lighter/)
})

test('a warm winding has more resistance and a warm magnet less flux', () => {
  const cold = compileDrive(bootCleaner).circuits[0]!.winding
  const warm = compileDrive(bootCleaner, { winding: 100, magnet: 60 }).circuits[0]!.winding
  near(warm.resistance, 1.1 * (334.5 / 254.5), 1e-15)
  near(warm.emfConstant, 0.0432 * (1 - 0.002 * 40), 1e-17)
  expect([cold.resistance, cold.emfConstant]).toEqual([1.1, 0.0432])
  const universal = compileDrive(cordWinder, { winding: 100, magnet: 100 }).circuits[0]!.winding
  near(universal.emfConstant, 0.12, 0)
})

test('every chain that the rules let through is compiled, each with its circuit', () => {
  for (const machine of fittings) {
    const drive = compileDrive(machine)
    expect([machine.name, drive.notComputed]).toEqual([machine.name, null])
    expect(drive.circuits).toHaveLength(machine.control.steps.length)
    expect(hasErrors(checkMachine(machine)), machine.name).toBe(false)
  }
})
