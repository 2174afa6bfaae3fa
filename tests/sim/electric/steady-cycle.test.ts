import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { newBridgeWork } from '../../../sim/electric/bridge-circuit.ts'
import { solveBridge } from '../../../sim/electric/bridge.ts'
import { solveChopper } from '../../../sim/electric/chopper.ts'
import type { Circuit } from '../../../sim/electric/circuit.ts'
import { newCycle } from '../../../sim/electric/cycle.ts'
import { newSteadyWork, solveCycle } from '../../../sim/electric/steady-cycle.ts'
import { TIME } from '../../../sim/numeric/dormand-prince.ts'
import { passNetworkInstant } from '../../../sim/electric/wave-changes.ts'
import { CAPACITOR, FREE, newNetwork, SOURCE } from '../../../sim/electric/wave-network.ts'
import { withValue } from '../../../sim/machine/fields.ts'
import { bootCleaner } from '../../support/machines.ts'
import { boot, vent, winder } from '../../support/circuits.ts'
import { near, relativelyNear } from '../../support/near.ts'

function shot(circuit: Circuit, speed: number) {
  const cycle = newCycle()
  const work = newSteadyWork()
  solveCycle(cycle, circuit, speed, work)
  return { ...cycle, missed: work.map?.search.worst ?? 0, chatter: work.solver?.run.chatter ?? 0 }
}

/** The same from closed expressions between events. */
function closedBridge(circuit: Circuit, speed: number) {
  const { source, winding, diodeDrops } = circuit
  const cycle = { ...newCycle(), opposing: winding.emfConstant * speed + winding.brushDrop }
  const given = {
    emfPeak: source.emf,
    angularFrequency: source.angularFrequency,
    sourceResistance: source.resistance,
    sourceInductance: source.inductance,
    motorResistance: winding.resistance,
    motorInductance: winding.inductance,
    diodeDrops,
  }
  solveBridge(cycle, given, newBridgeWork())
  return cycle
}

const bridges: readonly (readonly [string, Circuit])[] = [
  ['with leakage', boot],
  ['without leakage', { ...boot, source: { ...boot.source, inductance: 0 } }],
  ['without any impedance', { ...boot, source: { ...boot.source, inductance: 0, resistance: 0 } }],
]

const edges = [47, 50, 60].flatMap((frequency) =>
  [0, 1].map((setting) => ({ machine: withValue(bootCleaner, 'supply.frequency', frequency), setting })),
)

test.each(bridges)('shooting finds the closed half cycle of a bridge %s to 1e-9', (_name, circuit) => {
  for (const speed of [-1000, -200, -50, 0, 50, 100, 300, 500, 600]) {
    const found = shot(circuit, speed)
    const closed = closedBridge(circuit, speed)
    relativelyNear(found.mean, closed.mean, 1e-9)
    relativelyNear(found.square, closed.square, 1e-9)
    relativelyNear(found.sourceSquare, closed.sourceSquare, 1e-9)
    relativelyNear(found.sourcePower, closed.sourcePower, 1e-9)
    near(
      found.sourceQuadrature,
      closed.sourceQuadrature,
      1e-9 * circuit.source.emf * Math.sqrt(closed.sourceSquare),
    )
    near(found.conducting, closed.conducting, 1e-9)
    expect(found.chatter).toBe(0)
  }
})

test('the closed half cycle is that of shooting where the current just ends, or just does not', () => {
  for (const { machine, setting } of edges) {
    const [circuit] = compileDrive(machine, { winding: 20, magnet: 20 }).circuits.slice(setting)
    for (let speed = 40; speed < 60; speed++) {
      const closed = closedBridge(circuit!, speed)
      relativelyNear(closed.mean, shot(circuit!, speed).mean, 1e-9)
      relativelyNear(closed.conducting, shot(circuit!, speed).conducting, 1e-9)
    }
  }
})

test('shooting finds the closed period of a chopper to 1e-9, with gaps and without', () => {
  for (const duty of [0.4, 0.6, 0.8])
    for (const speed of [-50, 0, 50, 100, 150, 200, 300]) {
      const chopper = { ...vent.chopper!, duty }
      const found = shot({ ...vent, chopper }, speed)
      const closed = newCycle()
      closed.opposing = vent.winding.emfConstant * speed + vent.winding.brushDrop
      solveChopper(closed, {
        voltage: vent.source.emf,
        sourceResistance: vent.source.resistance,
        motorResistance: vent.winding.resistance,
        motorInductance: vent.winding.inductance,
        ...chopper,
      })
      relativelyNear(found.mean, closed.mean, 1e-9)
      relativelyNear(found.square, closed.square, 1e-9)
      relativelyNear(found.sourcePower, closed.sourcePower, 1e-9)
      relativelyNear(found.freewheelMean, closed.freewheelMean, 1e-9)
    }
})

test('a smoothing capacitor closes on itself, and its power is all accounted for', () => {
  for (const inductance of [0, 0.4e-3])
    for (const speed of [-200, 0, 300, 500, 562, 640]) {
      const circuit = { ...boot, capacitance: 2200e-6, source: { ...boot.source, inductance } }
      const cycle = shot(circuit, speed)
      expect(cycle.missed).toBeLessThan(1e-9)
      const spent =
        circuit.source.resistance * cycle.sourceSquare +
        circuit.diodeDrops * cycle.rectifiedMean +
        circuit.winding.resistance * cycle.square +
        circuit.winding.brushDrop * cycle.mean +
        cycle.torque * speed
      near(spent, cycle.sourcePower, 1e-8 * cycle.sourcePower)
    }
})

test('the currents of the cord winder are those of its design table', () => {
  const third = shot({ ...winder, triac: { firingAngle: Math.PI / 2, drop: 1.2 } }, 947.65)
  near(third.mean, 1.157, 5e-4)
  near(Math.sqrt(third.square), 1.669, 5e-4)
  near(third.torque, 0.1804, 5e-5)
  near(third.sourcePower, 223.57, 5e-3)
  const locked = shot(winder, 0)
  near(Math.sqrt(locked.square), 7.38, 5e-3)
  near(locked.torque, 1.637, 5e-4)
})

test('the power of a saturating motor is all accounted for, with a gap in its current and without', () => {
  for (const degrees of [0, 20, 60, 90, 120])
    for (const speed of [-50, 0, 500, 950]) {
      const circuit = { ...winder, triac: { firingAngle: (degrees * Math.PI) / 180, drop: 1.2 } }
      const cycle = shot(circuit, speed)
      const spent =
        (circuit.source.resistance + circuit.winding.resistance) * cycle.square +
        (1.2 + circuit.winding.brushDrop) * cycle.mean +
        cycle.torque * speed
      near(spent, cycle.sourcePower, 1e-8 * cycle.sourcePower)
    }
})

test('a current that flows back into a small capacitor meets the drop of the brushes on that way too', () => {
  const circuit = { ...boot, capacitance: 500e-6 }
  const cycle = shot(circuit, 350)
  expect(cycle.reversal).toBeGreaterThan(0.01)
  const spent =
    circuit.source.resistance * cycle.sourceSquare +
    circuit.diodeDrops * cycle.rectifiedMean +
    circuit.winding.resistance * cycle.square +
    circuit.winding.brushDrop * (cycle.mean + cycle.reversal) +
    cycle.torque * 350
  near(spent, cycle.sourcePower, 1e-8 * cycle.sourcePower)
  expect(shot({ ...boot, capacitance: 2200e-6 }, 562).reversal).toBeLessThan(1e-12)
})

test('a chopper whose period begins at a mains zero leaves the current of the leakage alone', () => {
  const chopper = { ...vent.chopper!, period: 1e-3, duty: 0.5 }
  const network = newNetwork({ ...boot, capacitance: 2200e-6, chopper })
  const y = new Float64Array(FREE)
  y[TIME] = network.length
  y[SOURCE] = 1.5
  y[CAPACITOR] = 5
  network.feed = 'charging'
  passNetworkInstant(network, y)
  expect(y[SOURCE]).toBe(-1.5)
  expect(network.turn).toBe(-1)
})
