import { expect, test } from 'vitest'
import type { BridgeCircuit } from '../../../sim/electric/bridge-circuit.ts'
import { newBridgeWork } from '../../../sim/electric/bridge-circuit.ts'
import { solveBridge } from '../../../sim/electric/bridge.ts'
import { circulate, newCycle } from '../../../sim/electric/cycle.ts'
import { near, relativelyNear } from '../../support/near.ts'
import { inSmallSteps } from '../../support/small-steps.ts'

const circuit: BridgeCircuit = {
  emfPeak: 24 * Math.SQRT2,
  angularFrequency: 100 * Math.PI,
  sourceResistance: 1.15,
  sourceInductance: 0.4e-3,
  motorResistance: 1.1,
  motorInductance: 2.2e-3,
  diodeDrops: 1.6,
}

const solved = (given: BridgeCircuit, opposing: number) => {
  const cycle = { ...newCycle(), opposing }
  solveBridge(cycle, given, newBridgeWork())
  return cycle
}

test.each([-5, 0, 1.6, 3, 5, 6, 7, 8, 12, 20, 28])(
  'against %d V the closed half cycle agrees with small time steps',
  (opposing) => {
    const exact = solved(circuit, opposing)
    const coarse = inSmallSteps(circuit, opposing, 20_000, 12)
    const fine = inSmallSteps(circuit, opposing, 40_000, 12)
    // The error of the steps halves with them: their difference is its size.
    const within = (a: number, b: number) => 2 * Math.abs(a - b) + 2e-5 * Math.abs(b)
    near(exact.mean, 2 * fine.mean - coarse.mean, within(coarse.mean, fine.mean))
    near(exact.square, 2 * fine.square - coarse.square, within(coarse.square, fine.square))
    near(exact.sourcePower, 2 * fine.power - coarse.power, within(coarse.power, fine.power))
  },
)

test('power in equals losses and power against the opposing voltage in every regime', () => {
  for (const motorInductance of [1e-5, 1e-3, 0.05])
    for (const sourceInductance of [0, 1e-5, 4e-4])
      for (let opposing = -40; opposing < 32; opposing += 0.37) {
        const given = {
          ...circuit,
          motorInductance,
          sourceInductance: Math.min(sourceInductance, motorInductance),
        }
        const cycle = solved(given, opposing)
        const spent =
          given.sourceResistance * cycle.sourceSquare +
          given.motorResistance * cycle.square +
          (given.diodeDrops + opposing) * cycle.mean
        near(spent, cycle.sourcePower, 1e-12 * Math.max(1, cycle.sourcePower))
      }
})

test('no current flows against more than the crest, and mean current falls as the opposing voltage rises', () => {
  expect(solved(circuit, 33).mean).toBe(0)
  let last = Infinity
  for (let opposing = -10; opposing < 33; opposing += 0.05) {
    const { mean } = solved(circuit, opposing)
    expect(mean).toBeLessThanOrEqual(last)
    last = mean
  }
})

test('with much inductance the mean current is that of the mean voltage', () => {
  const smooth = { ...circuit, sourceInductance: 0, sourceResistance: 0, motorInductance: 1 }
  const { mean } = solved(smooth, 5)
  relativelyNear(mean, ((2 / Math.PI) * circuit.emfPeak - 1.6 - 5) / 1.1, 1e-9)
})

test('without a source a current circulates only when the motor is turned backward', () => {
  const forward = { ...newCycle(), opposing: 11.6 }
  circulate(forward, { resistance: 1.1 })
  expect(forward.mean).toBe(0)
  const backward = { ...newCycle(), opposing: -8.4 }
  circulate(backward, { resistance: 1.1 })
  near(backward.mean, 8.4 / 1.1, 1e-12)
})
