import { expect, test } from 'vitest'
import type { Circuit } from '../../../sim/electric/circuit.ts'
import { newCycle } from '../../../sim/electric/cycle.ts'
import { solveDirect } from '../../../sim/electric/steady-direct.ts'
import { boot, vent, winder } from '../../support/circuits.ts'
import { near, relativelyNear } from '../../support/near.ts'

const solved = (circuit: Circuit, speed: number, connected = true) => {
  const cycle = newCycle()
  return { isDirect: solveDirect(cycle, circuit, speed, connected), ...cycle }
}
const direct: Circuit = { ...vent, chopper: null }
const series: Circuit = {
  ...winder,
  triac: null,
  source: { emf: 200, angularFrequency: 0, resistance: 0.4, inductance: 0 },
}

test('a motor with magnets on a battery takes what its emf leaves over', () => {
  for (const speed of [-50, 0, 100, 300])
    relativelyNear(solved(direct, speed).mean, (12.4 - 1 - 0.035 * speed) / 1.48, 1e-12)
  expect(solved(direct, 400).mean).toBe(0)
  near(solved(direct, 400).motorVoltage, 14, 1e-12)
})

test('a series motor on direct current meets its own law, whichever way it turns', () => {
  for (const speed of [-80, 0, 300, 2000]) {
    const { mean, torque } = solved(series, speed)
    const k = 0.12 / (1 + mean / 3)
    near(mean * (17.4 + k * speed), 200 - 2.4, 1e-9)
    relativelyNear(torque, k * mean ** 2, 1e-12)
  }
})

test('power is all accounted for', () => {
  for (const circuit of [direct, series]) {
    const { mean, square, torque, sourcePower } = solved(circuit, 120)
    const { source, winding } = circuit
    const spent = (source.resistance + winding.resistance) * square + winding.brushDrop * mean + torque * 120
    relativelyNear(spent, sourcePower, 1e-12)
  }
})

test('without its source, and without another way, no current flows', () => {
  expect(solved(direct, -300, false).mean).toBe(0)
})

test('what alternates, is switched, smoothed or limited is left to others', () => {
  expect(solved(boot, 0).isDirect).toBe(false)
  expect(solved(vent, 0).isDirect).toBe(false)
  expect(solved({ ...direct, capacitance: 1e-3 }, 0).isDirect).toBe(false)
  const relay = { ...vent.chopper!, duty: 1 }
  expect(solved({ ...vent, chopper: relay }, 0).isDirect).toBe(true)
  expect(solved({ ...vent, chopper: { ...relay, currentLimit: 6 } }, 0).isDirect).toBe(false)
  expect(solved({ ...vent, chopper: { ...relay, currentLimit: 6 } }, 200).isDirect).toBe(true)
})
