import type { BridgeCircuit } from '../electric/bridge-circuit.ts'
import type { ChopperCircuit } from '../electric/chopper.ts'
import type { Circuit } from '../electric/circuit.ts'
import type { CycleTable } from '../electric/cycle-table.ts'
import { newCycleTable } from '../electric/cycle-table.ts'

/** The circuit as a plain bridge that feeds a motor with magnets; null where it is another. */
export function bridgeOf(circuit: Circuit): BridgeCircuit | null {
  const { source, winding, rectifier, capacitance, triac, chopper } = circuit
  if (rectifier !== 'bridge' || capacitance > 0 || triac || chopper) return null
  if (winding.kind !== 'permanent-magnet') return null
  return {
    emfPeak: source.emf,
    angularFrequency: source.angularFrequency,
    sourceResistance: source.resistance,
    sourceInductance: source.inductance,
    motorResistance: winding.resistance,
    motorInductance: winding.inductance,
    diodeDrops: circuit.diodeDrops,
  }
}

/** The circuit as a battery, a chopper and a motor with magnets; null where it is another. */
export function chopperOf(circuit: Circuit): ChopperCircuit | null {
  const { source, winding, capacitance, chopper } = circuit
  if (source.angularFrequency > 0 || capacitance > 0 || !chopper) return null
  if (winding.kind !== 'permanent-magnet') return null
  return {
    voltage: source.emf,
    sourceResistance: source.resistance,
    motorResistance: winding.resistance,
    motorInductance: winding.inductance,
    period: chopper.period,
    duty: chopper.duty,
    switchDrop: chopper.switchDrop,
    freewheelDrop: chopper.freewheelDrop,
    currentLimit: chopper.currentLimit,
  }
}

/** Parts of a motor's natural speed that the cells of its table begin with */
const CELLS = 2

/** A table of what has no closed form; null where there is one. */
export const tableOf = (circuit: Circuit): CycleTable | null =>
  bridgeOf(circuit) || chopperOf(circuit) ? null : newCycleTable(circuit, naturalSpeed(circuit) / CELLS)

/**
 * Speed over which torque changes [rad/s]: with magnets the one at which the emf reaches the source's, in
 * series the one at which the emf for a current is as large as what impedance takes.
 */
function naturalSpeed({ source, winding }: Circuit): number {
  if (winding.kind === 'permanent-magnet') return source.emf / winding.emfConstant
  const reactance = source.angularFrequency * (winding.inductance + winding.fieldInductance)
  return Math.hypot(winding.resistance, reactance) / winding.emfConstant
}
