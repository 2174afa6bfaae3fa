import { brent } from '../numeric/brent.ts'
import type { Circuit, Winding } from './circuit.ts'
import type { CurrentCycle } from './cycle.ts'

const ROOT = 1e-15

/**
 * Direct current that nothing switches, in closed form but for a saturating motor: i (R + Rs) + E(i) = V - drops.
 * False where the circuit is another, or where a limit would cut the current.
 */
export function solveDirect(
  cycle: CurrentCycle,
  circuit: Circuit,
  speed: number,
  connected: boolean,
): boolean {
  const { source, winding, chopper } = circuit
  if (source.angularFrequency > 0 || circuit.capacitance > 0) return false
  if (chopper && (chopper.duty < 1 || !connected)) return false
  const i = connected ? directCurrent(circuit, speed) : 0
  if (chopper && i > chopper.currentLimit) return false
  const k = constantAt(winding, i)
  const isSeries = winding.kind === 'universal'
  cycle.duty = 1
  cycle.mean = i
  cycle.square = i * i
  cycle.peak = i
  cycle.conducting = i > 0 ? 1 : 0
  cycle.torque = isSeries ? k * i * i : k * i
  cycle.motorVoltage =
    i > 0 ? source.emf - source.resistance * i - circuit.diodeDrops : emfAt(winding, 0, speed)
  cycle.rectifiedMean = i
  cycle.sourceMean = i
  cycle.sourceSquare = i * i
  cycle.sourcePower = source.emf * i
  return true
}

/** k of a winding at current i >= 0, in a series motor for each ampere. */
const constantAt = (winding: Winding, i: number): number =>
  winding.kind === 'universal'
    ? winding.emfConstant / (1 + i / winding.saturationCurrent)
    : winding.emfConstant

/** Emf of a winding at current i >= 0 and a speed [V] */
const emfAt = (winding: Winding, i: number, speed: number): number =>
  constantAt(winding, i) * speed * (winding.kind === 'universal' ? i : 1)

function directCurrent(circuit: Circuit, speed: number): number {
  const { source, winding } = circuit
  const voltage = source.emf - winding.brushDrop - circuit.diodeDrops
  const resistance = source.resistance + winding.resistance
  const excess = (i: number): number => voltage - emfAt(winding, i, speed) - resistance * i
  const most = mostCurrent(circuit, speed, voltage)
  if (excess(0) <= 0) return 0
  return excess(most) < 0 ? brent({ at: excess }, 0, most, excess(0), excess(most), ROOT) : most
}

/** Beyond it a motor turned the wrong way excites itself without end, and no current is steady. */
const RUNAWAY = 1e3
/** So that rounding cannot put the current itself beyond it */
const SPARE = 1 + 1e-6

/** A current that a steady one cannot exceed [A] */
function mostCurrent({ source, winding }: Circuit, speed: number, voltage: number): number {
  const resistance = source.resistance + winding.resistance
  const { emfConstant: k } = winding
  const field = winding.kind === 'universal' ? winding.saturationCurrent : 1
  const driving = speed < 0 ? Math.min(-k * field * speed, RUNAWAY * voltage) : 0
  return (SPARE * (voltage + driving)) / resistance
}
