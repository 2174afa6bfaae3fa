/** Where one chain passes into another, both have to say the same. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { bridgeOf, chopperOf } from '../../sim/drive/closed-forms.ts'
import { newBridgeWork } from '../../sim/electric/bridge-circuit.ts'
import { solveBridge } from '../../sim/electric/bridge.ts'
import { solveChopper } from '../../sim/electric/chopper.ts'
import type { Circuit } from '../../sim/electric/circuit.ts'
import type { CurrentCycle } from '../../sim/electric/cycle.ts'
import { newCycle } from '../../sim/electric/cycle.ts'
import { newSteadyWork, solveCycle } from '../../sim/electric/steady-cycle.ts'
import { advanceRun, createRun, speedOf } from '../../sim/run/waveform.ts'
import { chains, ordinarySpeed } from '../support/arbitrary-circuits.ts'
import { ventOpener } from '../support/machines.ts'
import { near } from '../support/near.ts'

const seed = 20_261_125
const parts = fc.double({ min: 0, max: 0.9, noNaN: true })

function solved(circuit: Circuit, speed: number): CurrentCycle {
  const cycle = newCycle()
  solveCycle(cycle, circuit, speed, newSteadyWork())
  return cycle
}

function alike(a: CurrentCycle, b: CurrentCycle, part: number): void {
  for (const name of ['mean', 'torque', 'sourcePower'] as const)
    near(a[name], b[name], part * Math.max(Math.abs(b[name]), 1e-3 * b.peak))
}

test.each(['bridge', 'chopper'])('the closed form of a %s is what shooting finds, gap or none', (chain) => {
  // The closed form of a bridge is exact while leakage stays below the motor's inductance.
  const known = chains[chain]!.filter(({ source, winding }) => source.inductance < winding.inductance)
  fc.assert(
    fc.property(known, parts, (circuit, part) => {
      const { winding } = circuit
      const speed = part * ordinarySpeed(circuit)
      const closed = { ...newCycle(), opposing: winding.emfConstant * speed + winding.brushDrop }
      const bridge = bridgeOf(circuit)
      const chopped = chopperOf(circuit)
      if (bridge) solveBridge(closed, bridge, newBridgeWork())
      if (chopped) solveChopper(closed, chopped)
      near(solved(circuit, speed).mean, closed.mean, 1e-8 * Math.max(closed.mean, 1e-3))
    }),
    { seed, numRuns: 150, endOnFailure: true },
  )
})

test('a triac that is fired at once and drops nothing leaves a plain bridge', () => {
  fc.assert(
    fc.property(chains['bridge']!, parts, (circuit, part) => {
      const speed = part * ordinarySpeed(circuit)
      alike(solved({ ...circuit, triac: { firingAngle: 0, drop: 0 } }, speed), solved(circuit, speed), 1e-8)
    }),
    { seed, numRuns: 30 },
  )
})

test('the later a triac ahead of a bridge fires, the less torque is left', () => {
  fc.assert(
    fc.property(chains['bridge']!, parts, (circuit, part) => {
      const speed = part * ordinarySpeed(circuit)
      let last = Infinity
      for (const firingAngle of [0.5, 1, 1.5, 2, 2.5, 3]) {
        const { torque } = solved({ ...circuit, triac: { firingAngle, drop: 1 } }, speed)
        expect(torque).toBeLessThanOrEqual(last * (1 + 1e-9))
        last = torque
      }
    }),
    { seed, numRuns: 15 },
  )
})

test('a chopper that hardly opens and drops nothing leaves direct current', () => {
  fc.assert(
    fc.property(chains['chopper']!, parts, (circuit, part) => {
      const chopper = { ...circuit.chopper!, switchDrop: 0, currentLimit: Infinity }
      const speed = part * ordinarySpeed(circuit)
      const nearly = solved({ ...circuit, chopper: { ...chopper, duty: 1 - 1e-7 } }, speed)
      alike(nearly, solved({ ...circuit, chopper: { ...chopper, duty: 1 } }, speed), 1e-4)
      alike(
        solved({ ...circuit, chopper: null }, speed),
        solved({ ...circuit, chopper: { ...chopper, duty: 1 } }, speed),
        1e-12,
      )
    }),
    { seed, numRuns: 30 },
  )
})

test('with more capacitance the ripple falls, until the motor runs on direct current', () => {
  fc.assert(
    fc.property(chains['bridge and capacitor']!, parts, (drawn, part) => {
      const speed = part * ordinarySpeed(drawn)
      const circuit = { ...drawn, bleedResistance: Infinity }
      const large = solved({ ...circuit, capacitance: 0.3 }, speed)
      const larger = solved({ ...circuit, capacitance: 3 }, speed)
      if (larger.mean === 0) return
      near(larger.capacitorRipple, large.capacitorRipple / 10, 0.02 * large.capacitorRipple)
      const source = { emf: larger.capacitorMean, angularFrequency: 0, resistance: 0, inductance: 0 }
      const direct = solved({ ...circuit, capacitance: 0, rectifier: 'none', diodeDrops: 0, source }, speed)
      near(larger.mean, direct.mean, 1e-6 * source.emf)
      near(larger.square, direct.square, 1e-3 * direct.square)
    }),
    { seed, numRuns: 15 },
  )
})

test('a motor that saturates at a current out of all reach is the linear one', () => {
  fc.assert(
    fc.property(chains['triac and series motor']!, parts, (circuit, part) => {
      const speed = part * ordinarySpeed(circuit)
      const { winding } = circuit
      if (winding.kind !== 'universal') return
      const saturating = (saturationCurrent: number): Circuit => ({
        ...circuit,
        winding: { ...winding, saturationCurrent },
      })
      alike(solved(saturating(1e9), speed), solved(saturating(Infinity), speed), 1e-6)
    }),
    { seed, numRuns: 20 },
  )
})

test('direct current turned round, with every load turned round, turns all round', () => {
  const machine = (sign: number) =>
    compileDrive({
      ...ventOpener,
      outputs: {
        ...ventOpener.outputs,
        loads: ventOpener.outputs.loads.map((load) => ({ ...load, active: sign * load.active })),
      },
    })
  for (const setting of [0, 1, 2, 3]) {
    const ahead = createRun(machine(1), { ...firstInput(), setting })
    const back = createRun(machine(-1), { ...firstInput(), setting, sense: -1 })
    advanceRun(ahead, 0.05)
    advanceRun(back, 0.05)
    expect(speedOf(back)).toBe(-speedOf(ahead))
    expect(ahead.turns.turns).toBe(-back.turns.turns - 1)
  }
})
