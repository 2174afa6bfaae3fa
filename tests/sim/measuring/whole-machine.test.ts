/** What a person would read off the running program gives back the numbers that its machine was described with. */
import { describe, expect, test } from 'vitest'
import type { Drive } from '../../../sim/drive/drive.ts'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import type { Reading } from '../../../sim/drive/reading.ts'
import { newReading, readAt } from '../../../sim/drive/reading.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { compareReading } from '../../../sim/measuring/comparison.ts'
import { turnRatioUncertainty } from '../../../sim/measuring/counting.ts'
import { identifyLosses } from '../../../sim/measuring/loss-fit.ts'
import { identifyMotor } from '../../../sim/measuring/motor-fit.ts'
import type { MotorReading } from '../../../sim/measuring/motor-reading.ts'
import { identifySeriesMotor } from '../../../sim/measuring/series-motor-fit.ts'
import { instrument, readingUncertainty } from '../../../sim/measuring/uncertainty.ts'
import { demoMachines, ventOpener } from '../../support/machines.ts'
import { batterySeries } from '../../support/other-machines.ts'
import { near, relativelyNear } from '../../support/near.ts'

const METER = instrument({ ofReading: 0.005, digits: 2, resolution: 0.001 })
/** Duty at which the battery's current is direct */
const FULL = 3

const rowOf = (reading: Reading): MotorReading => ({
  voltage: reading.motorVoltage,
  voltageUncertainty: readingUncertainty(reading.motorVoltage, METER),
  current: reading.currentMean,
  currentUncertainty: readingUncertainty(reading.currentMean, METER),
  speed: reading.wormSpeed,
  speedUncertainty: 0.1,
})

const unlimited = (machine: Machine): Machine => ({ ...machine, protection: { kind: 'none' } })
const rowsOf = (drive: Drive, speeds: readonly number[]) =>
  speeds.map((speed) => rowOf(readAt(newReading(), drive, { ...firstInput(), setting: FULL }, speed, 0)))

describe('battery machines at full duty', () => {
  const { motor } = ventOpener
  const at = (voltage: number, speeds: readonly number[]) =>
    rowsOf(
      compileDrive({ ...unlimited(ventOpener), supply: { kind: 'battery', voltage, resistance: 0.08 } }),
      speeds,
    )
  test('the vent opener tells resistance and constant of its motor', () => {
    const { fit, problems } = identifyMotor(at(12.4, [0, 100, 200, 280]), motor!.brushDrop)
    relativelyNear(fit!.resistance.value, motor!.resistance, 1e-9)
    relativelyNear(fit!.emfConstant.value, motor!.emfConstant, 1e-9)
    expect(problems).toEqual([])
  })
  test('its brush drop takes two voltages to tell: at one, current and speed go in step', () => {
    const rows = at(12.4, [0, 100, 200, 280])
    const refused = identifyMotor(rows, null)
    expect(refused.fit).toBeNull()
    expect(refused.problems[0]!.message).toContain('more than one voltage')
    const { fit } = identifyMotor([...rows, ...at(6, [0, 80])], null)
    relativelyNear(fit!.resistance.value, motor!.resistance, 1e-6)
    relativelyNear(fit!.emfConstant.value, motor!.emfConstant, 1e-6)
    relativelyNear(fit!.brushDrop.value, motor!.brushDrop, 1e-6)
  })
  test('a series motor tells resistance, constant and saturation', () => {
    const { motor: field } = batterySeries
    if (field?.kind !== 'universal') throw new Error('needs a series motor')
    const rows = rowsOf(compileDrive(unlimited(batterySeries)), [0, 20, 60, 150, 300, 600])
    const { fit } = identifySeriesMotor(rows, field.brushDrop)
    relativelyNear(fit!.resistance.value, field.resistance, 1e-6)
    relativelyNear(fit!.emfConstant.value, field.emfConstant, 1e-6)
    relativelyNear(fit!.saturation.value, 1 / field.saturationCurrent, 1e-6)
  })
  test('the vent opener without wheels tells its friction', () => {
    const { rotor, outputs, control } = ventOpener
    if (control.kind !== 'chopper') throw new Error('needs a chopper')
    const bare = {
      ...unlimited(ventOpener),
      outputs: {
        ...outputs,
        bearingTorque: 0,
        loads: [{ name: 'None', active: 0, passive: 0, linear: 0, quadratic: 0 }],
      },
      control: { ...control, steps: [40, 55, 70, 85, 100].map((duty) => ({ duty })) },
    }
    const drive = compileDrive(bare)
    const rows = bare.control.steps.map((_, setting) =>
      rowOf(operatingPoint(drive, { ...firstInput(), setting })!.reading),
    )
    const { fit } = identifyLosses(rows, motor!.emfConstant)
    near(fit!.friction.value, rotor.frictionTorque, 1e-6)
    near(fit!.viscous.value, rotor.viscousTorque, 1e-8)
    near(fit!.fan.value, rotor.fanTorque, 1e-11)
  })
})

test.each(demoMachines.map((machine) => [machine.name, machine] as const))(
  'turns counted on the %s agree with its teeth',
  (_name, { gearing }) => {
    const ratio = gearing.wheelTeeth / gearing.wormStarts
    const counted = turnRatioUncertainty(Math.floor(10 * ratio), 10)
    expect(compareReading(counted, { value: ratio, uncertainty: 0 }).agrees).toBe(true)
    // one tooth more or less is told apart after so many turns
    const long = turnRatioUncertainty(Math.floor(200 * ratio), 200)
    const wrong = { value: (gearing.wheelTeeth + 1) / gearing.wormStarts, uncertainty: 0 }
    expect(compareReading(long, wrong).agrees).toBe(false)
  },
)
