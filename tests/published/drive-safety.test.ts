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
