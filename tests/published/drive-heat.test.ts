/**
 * Printed figures of windings and surfaces that grow warm. Companion: an open data set of the book (inputs and computed
 * result); the printed page itself was not seen.
 */
import { describe, expect, test } from 'vitest'
import {
  APPLIANCE_RISE,
  CLASS_TEMPERATURE,
  heatLevel,
  lifeFactor,
  ROTATING_MACHINE_RISE,
  temperatureAtLoad,
} from '../../sim/heat/insulation.ts'
import { constantFromReadings, riseByResistance, temperatureCoefficient } from '../../sim/heat/resistance.ts'
import {
  dutyPeakRise,
  riseAfter,
  riseBefore,
  settledFromEqualTimes,
  settledRise,
} from '../../sim/heat/single-node.ts'
import {
  blackBodyPower,
  FORCED_CONVECTION,
  FREE_CONVECTION,
  surfaceHeatFlux,
  ZERO_CELSIUS,
} from '../../sim/heat/surface.ts'
import { SURFACE_KINDS, thermometerReading } from '../../sim/heat/thermometer.ts'
import { fitHeatingCurve, settledFromSlopes, timeConstantTo } from '../../sim/measuring/heating-fit.ts'
import { near } from '../support/near.ts'

const GUPTA = 'Gupta & Singhal, Fundamentals of Electric Drives and Control'
const KOSOW = 'I. L. Kosow, Electric Machinery and Transformers, 2nd ed.'

describe('resistance tells temperature', () => {
  test('coefficients at 20 degC from 234.5 and 228: IEC 60028, page seen', () => {
    near(temperatureCoefficient(20), 0.00393, 5e-6)
    near(temperatureCoefficient(20, 228), 0.00403, 5e-6)
  })
  test('3.42 to 4.22 ohm: D. C. Kulshreshtha, Basic Electrical Engineering, Example 2.18 (companion)', () => {
    near(riseByResistance(3.42, 4.22, 20, 20, 1 / 0.00426), 59.59, 0.01)
    near(riseByResistance(3.42, 4.22, 20, 20), 59.59, 0.1)
  })
  test('18, 20 and 21 ohm: B. R. Patil, Basic Electrical and Electronics Engineering, Ex. 1.7 (companion)', () => {
    const k = constantFromReadings(18, 20, 20, 50)
    // from 20 degC to the air of 15 degC
    const rise = riseByResistance(18, 21, 20, 15, k)
    near(rise, 50, 0.01)
    near(15 + rise, 65, 0.01)
  })
  test('the same rise with the air 3 K warmer: form of IEC 60335-1, clause 11, numbers derived', () => {
    near(riseByResistance(3.42, 4.22, 20, 23), 56.53, 0.01)
  })
})

describe('heating curves', () => {
  const sure = (time: number, temperature: number) => ({ time, temperature, uncertainty: 1 })
  test(`20 K after 30 and 30 K after 60 minutes: ${GUPTA}, Example 4.2 (companion)`, () => {
    const settled = settledFromEqualTimes(20, 30)
    near(settled, 40, 0.01)
    near(timeConstantTo(settled, 0, 20, 30), 43.28, 0.006)
  })
  test(`24 K after one hour and 37 K after two, then cooling: ${GUPTA}, Example 4.3 (companion)`, () => {
    const settled = settledFromEqualTimes(24, 37)
    near(30 + settled, 82.36, 0.01)
    near(timeConstantTo(settled, 0, 24, 1), 1.63, 0.005)
    near(timeConstantTo(0, settled, 10, 2.7), 1.63, 0.005)
  })
  test(`the fit of readings agrees where they leave no choice: ${GUPTA}, Examples 4.2 and 4.3 (companion)`, () => {
    const minutes = fitHeatingCurve([sure(0, 0), sure(30, 20), sure(60, 30)]).fit!
    near(minutes.settled.value, 40, 0.01)
    near(minutes.timeConstant.value, 43.28, 0.006)
    const hours = fitHeatingCurve([sure(0, 30), sure(1, 54), sure(2, 67)]).fit!
    near(hours.settled.value, 82.36, 0.01)
    near(hours.timeConstant.value, 1.63, 0.005)
  })
  test(`30 minutes on and 45 off: ${GUPTA}, Example 4.4 (companion)`, () => {
    near(dutyPeakRise(50, { on: 30, off: 45, heating: 110, cooling: 150 }), 27.37, 0.006)
  })
  test(`0.08 K/min at 20 K and 0.06 K/min at 28 K: ${GUPTA}, Example 4.5 (companion)`, () => {
    const first = { temperature: 20, slope: 0.08 }
    const { settled, timeConstant } = settledFromSlopes(first, { temperature: 28, slope: 0.06 })
    near(settled, 52, 0.01)
    near(timeConstant, 400, 0.1)
  })
  test('a load on for 10 s and off for 20: Dubey, Fundamentals of Electrical Drives, 2nd ed., Ex. 4.1 (companion)', () => {
    // cooling from th2 to 40 K while settling at 15 K, then warming from 40 K to th2
    const th2 = riseBefore(15, 40, 20, 60)
    near(th2, 49.9, 0.06)
    near(riseAfter(15, th2, 20, 60), 40, 1e-9)
    near(settledRise(40, th2, 10, 60), 104.4, 0.1)
  })
})

describe('insulation', () => {
  test('classes: IEC 60085:2007, table seen', () => {
    const classes = { A: 105, E: 120, B: 130, F: 155, H: 180, N: 200 } as const
    expect(CLASS_TEMPERATURE).toEqual(classes)
    for (const name of ['A', 'E', 'B', 'F', 'H', 'N'] as const) {
      expect(heatLevel(classes[name], name)).toBe('red')
      expect(heatLevel(classes[name] - 0.01, name)).toBe('amber')
    }
  })
  test('rises of rotating machines by resistance: IEC 60034-1, rows seen', () => {
    expect(ROTATING_MACHINE_RISE).toEqual({ A: 60, E: 75, B: 80, F: 105, H: 125 })
  })
  test('rises of household appliances by resistance: IEC 60335-1, Table 3, from memory', () => {
    expect(APPLIANCE_RISE).toEqual({ A: 75, E: 90, B: 95, F: 115, H: 140 })
  })
  test(`17 K above class F leaves 3.08 of 10 years: ${KOSOW}, Example 13.6 (companion)`, () => {
    near(10 * lifeFactor(172, 'F'), 3.08, 0.005)
  })
  test(`four fifths and eleven tenths of the load: ${KOSOW}, Example 13.5 (companion)`, () => {
    near(temperatureAtLoad(160, 40, 40 / 50), 136, 0.5)
    near(temperatureAtLoad(160, 40, 55 / 50), 172, 0.5)
  })
})

describe('surfaces', () => {
  test('a pipe at 200 degC in a room at 25: Incropera, Heat and Mass Transfer, 6th ed., Example 1.2 (companion)', () => {
    near(blackBodyPower(473.15) * 0.8, 2273.4, 0.6)
    near(blackBodyPower(298.15), 448.05, 0.3)
    near(Math.PI * 0.07 * surfaceHeatFlux(15, 0.8, 473.15, 298.15), 998.4, 0.5)
  })
  test('coefficients in air: Incropera, Table 1.1, table seen', () => {
    expect(FREE_CONVECTION).toEqual({ least: 2, most: 25 })
    expect(FORCED_CONVECTION).toEqual({ least: 25, most: 250 })
  })
  test('a thermometer set to 0.95 before bare metal of 0.2 at 80 degC: radiometric balance, from memory', () => {
    const reading = thermometerReading(353.15, { emissivity: 0.2, setting: 0.95, reflected: 296.15 })
    near(reading - ZERO_CELSIUS, 37.79, 0.02)
  })
  test.each([
    ['Matt paint', 0.95, 0.95],
    ['Polished aluminium or foil', 0.04, 0.04],
    ['Oxidised aluminium', 0.11, 0.19],
  ])('emissivity of %s: manuals of instruments, tables seen', (name, least, most) => {
    const kind = SURFACE_KINDS.find((each) => each.name.startsWith(name))!
    expect([kind.least, kind.most]).toEqual([least, most])
  })
})
