/**
 * Printed figures of phase control, run through the circuits. They come from an open companion data set of the book
 * (inputs and computed result); the printed pages were not seen. Tolerances are half a unit of the last figure.
 */
import { describe, expect, test } from 'vitest'
import { checkMachine } from '../../sim/machine/check.ts'
import {
  displacementFactor,
  distortionFactor,
  formFactor,
  harmonicFactor,
  overStretches,
  powerFactor,
  rippleFactor,
} from '../../sim/measuring/wave-shape.ts'
import { near } from '../support/near.ts'
import { bootCleaner, cordWinder } from '../support/machines.ts'
import { cycleOf, overResistance, resistive } from './electric-circuit.ts'

const BIMBHRA = 'P. S. Bimbhra, Power Electronics'

describe('phase control of one half wave', () => {
  test(`a thyristor charging 150 V through 8 ohm from 35 deg: ${BIMBHRA}, Example 6.3`, () => {
    const given = {
      voltage: 230,
      rectifier: 'half-wave',
      firingAngle: 35,
      resistance: 8,
      constant: 1,
      speed: 150,
    } as const
    near(
      resistive(given, ({ mean }) => mean),
      4.9208,
      0.0005,
    )
    near(150 * resistive(given, ({ mean }) => mean), 738.12, 0.05)
    near(
      resistive(given, ({ square }) => 8 * square),
      689.54,
      0.5,
    )
    const factor = resistive(given, (cycle) =>
      powerFactor({
        voltage: 230,
        current: Math.sqrt(cycle.sourceSquare),
        power: cycle.sourcePower,
        quadrature: 0,
      }),
    )
    near(factor, 0.6686, 0.0005)
  })
  test(`10 ohm from 60 deg: ${BIMBHRA}, Example 6.5`, () => {
    const { mean, rms } = overResistance({ voltage: 230, rectifier: 'half-wave', firingAngle: 60 })
    near((mean / rms) ** 2, 0.2834, 5e-5)
    near(formFactor(rms, mean), 1.879, 0.0005)
    near(rippleFactor(rms, mean), 1.5903, 5e-5)
    near(mean ** 2 / (230 * rms), 0.1797, 5e-5)
  })
  test.each([
    [45, 454.58],
    [90, 250],
  ])(`a heater of 1000 W from %i deg: ${BIMBHRA}, Example 6.1`, (firingAngle, power) => {
    const { rms } = overResistance({ voltage: 230, rectifier: 'half-wave', firingAngle })
    near((1000 * rms ** 2) / 230 ** 2, power, 0.005)
  })
})

describe('phase control of both half waves', () => {
  test(`half-controlled bridge from 45 deg: ${BIMBHRA}, Example 6.12`, () => {
    const given = { voltage: 230, rectifier: 'bridge', firingAngle: 45 } as const
    const { mean, rms } = overResistance(given)
    near(formFactor(rms, mean), 1.241, 0.0006)
    near(rippleFactor(rms, mean), 0.735, 0.001)
    // a constant current: so much inductance that it does not ripple
    const cycle = cycleOf({ ...given, resistance: 10, inductance: 1e4 })
    const means = {
      voltage: 230,
      current: Math.sqrt(cycle.sourceSquare),
      power: cycle.sourcePower,
      quadrature: cycle.sourceQuadrature,
    }
    near(displacementFactor(means), 0.9239, 5e-5)
    near(distortionFactor(means), 0.9605, 6e-5)
    near(powerFactor(means), 0.8874, 6e-5)
    near(harmonicFactor(means), 0.2899, 0.0002)
  })
  test(`triac and 20 ohm from 45 deg: ${BIMBHRA}, Example 9.2`, () => {
    const given = { voltage: 230, firingAngle: 45, seriesConstant: 0 }
    const { mean, rms } = overResistance(given)
    near(rms, 219.304, 0.0006)
    near(rms ** 2 / 20, 2404.71, 0.006)
    near(rms / 230, 0.95, 0.005)
    near(mean / 20 / 2, 4.42, 0.005)
    near(rms / 20 / Math.SQRT2, 7.75, 0.005)
  })
  const half = (firingAngle: number, sense: 1 | -1) => {
    const { mean, rms } = overResistance({ voltage: 230, firingAngle, seriesConstant: 0 })
    return { mean: sense * mean, square: rms ** 2 }
  }
  test(`only one half wave controlled, from 45 deg: ${BIMBHRA}, Example 9.1`, () => {
    const { mean, rms } = overStretches([
      { share: 0.5, ...half(45, 1) },
      { share: 0.5, ...half(0, -1) },
    ])
    near(rms, 224.716, 0.0006)
    near(rms ** 2 / 20, 2524.9, 0.06)
    near(rms / 230, 0.977, 6e-5)
    near(mean / 20, -0.7581, 6e-5)
  })
  test('which is why one half wave is refused ahead of a transformer', () => {
    const halfWave = {
      ...cordWinder,
      control: { kind: 'half-wave', diodeDrop: 0.8, freewheel: 'none', steps: [{ waves: 1 }] },
    } as const
    expect(checkMachine(halfWave).filter(({ path }) => path === 'transformer')).toEqual([])
    const { transformer } = bootCleaner
    const found = checkMachine({ ...halfWave, transformer }).filter(({ path }) => path === 'transformer')
    expect(found.map(({ severity }) => severity)).toEqual(['error'])
  })
  test(`bursts of 6 cycles and 4 without: ${BIMBHRA}, Example 9.3`, () => {
    const on = half(0, 1)
    const { mean, rms } = overStretches([
      { share: 0.6, ...on },
      { share: 0.4, mean: 0, square: 0 },
    ])
    near(rms, 178.16, 0.005)
    near(rms / 230, 0.77, 0.005)
    near(mean / 15 / 2, 4.14, 0.005)
    near(rms / 15 / Math.SQRT2, 8.4, 0.005)
  })
})
