import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type ChopperCircuit, solveChopper } from '../../../sim/electric/chopper.ts'
import { newCycle } from '../../../sim/electric/cycle.ts'
import { averageDecay, newDecay } from '../../../sim/electric/decay.ts'

/** What the battery gives and what takes it, as parts of the larger of the two. */
function imbalance(circuit: ChopperCircuit, opposing: number): number {
  const cycle = newCycle()
  cycle.opposing = opposing
  solveChopper(cycle, circuit)
  expect(cycle.square).toBeGreaterThanOrEqual(0)
  expect(Number.isFinite(cycle.mean + cycle.square)).toBe(true)
  const taken =
    circuit.sourceResistance * cycle.sourceSquare +
    circuit.motorResistance * cycle.square +
    circuit.switchDrop * cycle.switchMean +
    circuit.freewheelDrop * cycle.freewheelMean +
    opposing * cycle.mean
  const flow = Math.max(Math.abs(cycle.sourcePower), Math.abs(taken))
  return flow === 0 ? 0 : Math.abs(cycle.sourcePower - taken) / flow
}

const vent: ChopperCircuit = {
  voltage: 12.4,
  sourceResistance: 0.08,
  motorResistance: 1.4,
  motorInductance: 1.6e-3,
  period: 1 / 8000,
  duty: 0.4,
  switchDrop: 0.12,
  freewheelDrop: 0.45,
  currentLimit: Infinity,
}

test.each([
  [1.6e-3, 8e3, 0.4],
  [16e-3, 20e3, 0.01],
  [50e-3, 40e3, 0.01],
  [100e-3, 100e3, 0.01],
])('the battery power is all accounted for with %d H, %d Hz, duty %d', (motorInductance, hertz, duty) => {
  for (const opposing of [0, 0.01, 1, 1.1, 5, 11, 12]) {
    expect(imbalance({ ...vent, motorInductance, period: 1 / hertz, duty }, opposing)).toBeLessThan(1e-11)
  }
})

test('it is for 2000 random circuits, and no mean square is negative, seed 20261125', () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  const circuit = fc.record({
    voltage: between(1, 60),
    sourceResistance: between(0, 2),
    motorResistance: between(0.1, 20),
    motorInductance: between(1e-5, 0.1),
    period: between(1e-5, 1e-2),
    duty: between(0.01, 0.99),
    switchDrop: between(0, 1),
    freewheelDrop: between(0.01, 1),
    currentLimit: fc.oneof(fc.constant(Infinity), between(0.5, 20)),
  })
  fc.assert(
    fc.property(circuit, between(0, 1.2), (drawn, part) => {
      expect(imbalance(drawn, part * drawn.voltage)).toBeLessThan(1e-11)
    }),
    { seed: 20261125, numRuns: 2000 },
  )
})

test('series and closed form of a decay meet where they take over', () => {
  const [below, above] = [0.3 - 1e-9, 0.3 + 1e-9].map((x) => {
    const decay = { ...newDecay(), start: 3, aim: -1, x }
    averageDecay(decay)
    return decay
  })
  expect(Math.abs(below!.mean - above!.mean)).toBeLessThan(1e-8)
  expect(Math.abs(below!.square - above!.square)).toBeLessThan(1e-7)
})

test('where nothing at all opposes the falling current it flows all the time', () => {
  const cycle = { ...newCycle(), opposing: -1 }
  const circuit = { ...vent, motorInductance: 1e-5, motorResistance: 2000, freewheelDrop: 1, duty: 0.01 }
  solveChopper(cycle, { ...circuit, period: 1e-3 })
  expect(Number.isFinite(cycle.mean + cycle.square)).toBe(true)
  expect(cycle.conducting).toBe(1)
})

test('a limit shortens the pulses until the crest just reaches it, and leaves a smaller current alone', () => {
  const crest = (opposing: number, duty: number) => {
    const cycle = { ...newCycle(), opposing }
    solveChopper(cycle, { ...vent, duty, currentLimit: 2 })
    return cycle
  }
  for (const duty of [0.4, 0.8, 1]) {
    const held = crest(1, duty)
    expect(held.peak).toBeLessThanOrEqual(2)
    expect(held.peak).toBeGreaterThan(2 - 1e-12)
    expect(held.duty).toBeLessThan(duty)
    expect(held.mean).toBeGreaterThan(1.5)
  }
  expect(crest(11, 1).peak).toBeCloseTo(1.4 / 1.48, 12)
})
