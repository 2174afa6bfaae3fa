/** Figures and cautions of safety. IEC 60335-1 as quoted on pages seen. */
import { describe, expect, test } from 'vitest'
import {
  bledVoltage,
  bleedTime,
  capacitorEnergy,
  largestBleedConstant,
  PLUG_PIN_CAPACITANCE,
  PLUG_PIN_LIMIT,
} from '../../sim/heat/capacitor-bleed.ts'
import {
  countsAsLive,
  EXTRA_LOW_PEAK,
  MOST_ALTERNATING_PEAK,
  MOST_CAPACITANCE,
  MOST_CHARGE,
  MOST_DIRECT,
  MOST_ENERGY,
} from '../../sim/measuring/live-part.ts'
import { MEASUREMENT_CATEGORIES } from '../../sim/measuring/measurement-category.ts'
import { near } from '../support/near.ts'

const PEAK = 325.27

test('34 V at the pins 1 s after the plug is pulled: IEC 60335-1, clause 22.5, text seen', () => {
  expect(PLUG_PIN_LIMIT).toBe(34)
  expect(PLUG_PIN_CAPACITANCE).toBe(0.1e-6)
  const RC = largestBleedConstant(PEAK, PLUG_PIN_LIMIT, 1)
  near(RC, 0.4427, 0.0005)
  near(bledVoltage(PEAK, 1, RC / PLUG_PIN_CAPACITANCE, PLUG_PIN_CAPACITANCE), 34, 1e-9)
})

describe('a smoothing capacitor of 100 uF at the mains peak', () => {
  test('stores 5.29 J and takes 18.73 s to 50 V through 100 kohm: identities, numbers derived', () => {
    near(capacitorEnergy(1e-4, PEAK), 5.29, 0.01)
    near(bleedTime(PEAK, 50, 1e5, 1e-4), 18.73, 0.02)
  })
})

describe('parts within reach: IEC 60335-1, clause 8.1.4, quoted on a page seen', () => {
  const none = { direct: 0, alternatingPeak: 0 }
  test('limits as printed', () => {
    near(EXTRA_LOW_PEAK, 42.4, 0)
    near(1e3 * MOST_DIRECT, 2, 1e-12)
    near(1e3 * MOST_ALTERNATING_PEAK, 0.7, 1e-12)
    near(1e6 * MOST_CAPACITANCE, 0.1, 1e-12)
    near(1e6 * MOST_CHARGE, 45, 1e-12)
    near(1e3 * MOST_ENERGY, 350, 1e-12)
  })
  test.each([
    ['extra-low voltage', 42.4, null, 1, false],
    ['a little more, with nothing to hold the current back', 42.5, null, 0, true],
    ['2 mA direct', 60, { ...none, direct: 2e-3 }, 0, false],
    ['more than 2 mA direct', 60, { ...none, direct: 2.01e-3 }, 0, true],
    ['0.7 mA peak', 325, { ...none, alternatingPeak: 0.7e-3 }, 0, false],
    ['more than 0.7 mA peak', 325, { ...none, alternatingPeak: 0.71e-3 }, 0, true],
    ['0.1 uF up to 450 V', 450, none, 0.1e-6, false],
    ['more than 0.1 uF up to 450 V', 450, none, 0.101e-6, true],
    ['45 uC up to 15 kV', 15e3, none, 2.99e-9, false],
    ['more than 45 uC up to 15 kV', 15e3, none, 3.01e-9, true],
    ['350 mJ above 15 kV', 20e3, none, 1.74e-9, false],
    ['more than 350 mJ above 15 kV', 20e3, none, 1.76e-9, true],
  ])('%s', (_words, peakVoltage, current, capacitance, live) => {
    expect(countsAsLive({ peakVoltage, current, capacitance })).toBe(live)
  })
})

test('sockets are CAT II, fixed wiring CAT III, entry of the supply CAT IV: IEC 61010-2-030, from memory', () => {
  const places = MEASUREMENT_CATEGORIES.map(({ name, place }) => `${name}: ${place}`)
  expect(places).toHaveLength(3)
  expect(places[0]).toMatch(/^CAT II: Sockets/)
  expect(places[1]).toMatch(/^CAT III: Fixed wiring/)
  expect(places[2]).toMatch(/^CAT IV: .*supply enters/)
})
