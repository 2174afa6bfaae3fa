import { expect, test } from 'vitest'
import type { Circuit } from '../../../sim/electric/circuit.ts'
import { newCycle } from '../../../sim/electric/cycle.ts'
import { newSteadyWork, solveCycle } from '../../../sim/electric/steady-cycle.ts'
import { boot } from '../../support/circuits.ts'
import { near } from '../../support/near.ts'
import { inSmallSteps } from '../../support/small-step-circuit.ts'

const plain: Circuit = { ...boot, source: { ...boot.source, inductance: 0 } }
const heavy: Circuit = { ...plain, winding: { ...plain.winding, inductance: 12e-3 } }
const triac = { firingAngle: 0.4 * Math.PI, drop: 1 }

const circuits: readonly (readonly [string, Circuit])[] = [
  ['a bridge', plain],
  ['a bridge and a capacitor', { ...plain, capacitance: 1500e-6 }],
  ['a small capacitor with a bleed resistor', { ...plain, capacitance: 500e-6, bleedResistance: 47 }],
  ['a diode', { ...plain, rectifier: 'half-wave' }],
  ['a diode and one to freewheel', { ...plain, rectifier: 'half-wave-freewheel' }],
  ['a diode, one to freewheel and much inductance', { ...heavy, rectifier: 'half-wave-freewheel' }],
  ['a triac ahead of a bridge', { ...plain, triac }],
  [
    'a triac without drop ahead of a bridge, on a source without resistance',
    { ...plain, source: { ...plain.source, resistance: 0 }, triac: { ...triac, drop: 0 } },
  ],
  [
    'a late triac ahead of a bridge and much inductance',
    { ...heavy, triac: { firingAngle: 0.7 * Math.PI, drop: 1 } },
  ],
]

test.each(circuits)('%s feeds a motor as small steps without modes say', (_name, circuit) => {
  for (const speed of [0, 120, 350, 550]) {
    const cycle = newCycle()
    solveCycle(cycle, circuit, speed, newSteadyWork())
    const coarse = inSmallSteps(circuit, speed, 20_000, 12)
    const fine = inSmallSteps(circuit, speed, 40_000, 12)
    // The error of the steps halves with them: their difference is its size.
    const within = (a: number, b: number) => 2 * Math.abs(a - b) + 5e-5 * Math.abs(b) + 1e-6
    near(cycle.mean, 2 * fine.mean - coarse.mean, within(coarse.mean, fine.mean))
    near(cycle.square, 2 * fine.square - coarse.square, within(coarse.square, fine.square))
    near(cycle.sourcePower, 2 * fine.power - coarse.power, within(coarse.power, fine.power))
    near(cycle.capacitorMean, 2 * fine.held - coarse.held, within(coarse.held, fine.held))
    expect(cycle.torque).toBeCloseTo(circuit.winding.emfConstant * cycle.mean, 12)
  }
})
