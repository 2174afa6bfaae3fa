import { describe, expect, test } from 'vitest'
import type { DriveInput } from '../../../sim/drive/input.ts'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import { sparkGrade } from '../../../sim/heat/commutation.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import type { BrushState } from '../../../sim/run/heating-brushes.ts'
import { brushState } from '../../../sim/run/heating-brushes.ts'
import { bootCleaner, classroomModel, cordWinder } from '../../support/machines.ts'
import { near, relativelyNear } from '../../support/near.ts'

const running = (machine: Machine, more: Partial<DriveInput> = {}): BrushState =>
  brushState(
    machine,
    operatingPoint(compileDrive(machine), { ...firstInput(), setting: 4, ...more })!.reading,
  )!

// Figures of a prototype of this model, written separately; half of the last digit.
describe('brushes', () => {
  test('of the boot cleaner, brush free, turn the current over without sparks: 0.033 V in the coil, index 0.04', () => {
    const brushes = running(bootCleaner)
    near(brushes.reactanceVoltage, 0.033, 5e-4)
    near(brushes.index, 0.04, 5e-3)
    expect(sparkGrade(brushes.index, 0).grade).toBe('1')
  })

  test('of the boot cleaner are graded by their density, which is nearer its limit than the index is', () => {
    const brushes = running(bootCleaner)
    relativelyNear(brushes.densityRatio, 1.421 / 0.24 / 10, 1e-3)
    expect(brushes.grade).toBe(sparkGrade(0, brushes.densityRatio))
  })

  test('of the jammed boot cleaner turn nothing over, and are overloaded at 37 A/cm2', () => {
    const brushes = running(bootCleaner, { jammed: 'left' })
    expect(brushes.commutationTime).toBe(Infinity)
    expect(brushes.index).toBe(0)
    near(brushes.density / 1e4, 37, 0.5)
    expect(brushes.grade.grade).toBe('3')
    expect(brushes.wear).toBe(0)
    expect(brushes.life).toBe(Infinity)
  })

  test('of the cord winder spark faintly: 1.3 V, index 1.1', () => {
    const brushes = running(cordWinder)
    near(brushes.reactanceVoltage, 1.3, 0.05)
    near(brushes.index, 1.1, 0.05)
    expect(brushes.grade.grade).toBe('1 1/2')
  })

  test('of a motor on alternating current that has its flux through the coil spark more', () => {
    const still = running(cordWinder)
    const fluxed = { ...cordWinder, brushes: { ...cordWinder.brushes!, peakFlux: 300 } }
    relativelyNear(running(fluxed).transformerVoltage, Math.SQRT2 * Math.PI * 50 * 14 * 300e-6, 1e-12)
    expect(running(fluxed).index).toBeGreaterThan(still.index)
  })

  test('wear sooner under load', () => {
    const pressed = running(bootCleaner, { leftLoad: 1, rightLoad: 1 })
    const free = running(bootCleaner)
    expect(pressed.wear / pressed.slidingSpeed).toBeGreaterThan(free.wear / free.slidingSpeed)
    relativelyNear(free.life, (1000 * 7) / free.wear, 1e-12)
  })

  test('take as contact loss what the ledger says, and less friction than the rotor has', () => {
    const { reading } = operatingPoint(compileDrive(bootCleaner), { ...firstInput(), setting: 4 })!
    const brushes = running(bootCleaner)
    relativelyNear(brushes.contactLoss, reading.brushLoss, 1e-12)
    expect(brushes.frictionLoss).toBeGreaterThan(0)
    expect(brushes.frictionLoss).toBeLessThan(reading.frictionLoss)
  })

  test('are not there on a crank, nor where they are not described', () => {
    const { reading } = operatingPoint(compileDrive(bootCleaner), firstInput())!
    expect(brushState(classroomModel, reading)).toBeNull()
    expect(brushState({ ...bootCleaner, brushes: null }, reading)).toBeNull()
  })
})
