import { expect, test } from 'vitest'
import {
  bledVoltage,
  bleedTime,
  capacitorEnergy,
  EXTRA_LOW_VOLTAGE,
  largestBleedConstant,
  PLUG_PIN_LIMIT,
} from '../../../sim/heat/capacitor-bleed.ts'
import { relativelyNear } from '../../support/near.ts'

test('a capacitor has bled to a limit after the time for it', () => {
  for (const limit of [PLUG_PIN_LIMIT, EXTRA_LOW_VOLTAGE])
    relativelyNear(bledVoltage(325, bleedTime(325, limit, 1e5, 1e-4), 1e5, 1e-4), limit, 1e-12)
})

test('a capacitor below the limit needs no time and any resistor', () => {
  expect(bleedTime(26, PLUG_PIN_LIMIT, 1e4, 2.2e-3)).toBe(0)
  expect(largestBleedConstant(26, PLUG_PIN_LIMIT, 1)).toBe(Infinity)
})

test('what it loses is what the resistor takes', () => {
  const [R, C, V] = [1e4, 2.2e-3, 26]
  const t = 12
  const steps = 20_000
  let taken = 0
  for (let n = 0; n < steps; n++)
    taken += (bledVoltage(V, ((n + 0.5) * t) / steps, R, C) ** 2 / R) * (t / steps)
  relativelyNear(capacitorEnergy(C, V) - capacitorEnergy(C, bledVoltage(V, t, R, C)), taken, 1e-7)
})
