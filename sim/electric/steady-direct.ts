import { brent } from '../numeric/brent.ts'
import type { Circuit } from './circuit.ts'
import type { CurrentCycle } from './cycle.ts'

const ROOT = 1e-15

/**
 * Direct current that nothing switches, in closed form but for a saturating motor: i (R + Rs) + E(i) = V - drops.
 * False where the circuit is another.
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
  const resistance = source.resistance + winding.resistance
  const emfOf = (i: number): number =>
    winding.kind === 'permanent-magnet'
      ? winding.emfConstant * speed
      : (winding.emfConstant * i * speed) / (1 + i / winding.saturationCurrent)
  const voltage = connected ? source.emf - winding.brushDrop - circuit.diodeDrops : 0
  const excess = (i: number): number => voltage - emfOf(i) - resistance * i
  const most = mostCurrent(circuit, speed, voltage)
  const i =
    excess(0) > 0 && excess(most) <= 0 ? brent({ at: excess }, 0, most, excess(0), excess(most), ROOT) : 0
  if (chopper && i > chopper.currentLimit) return false
  const k = winding.emfConstant
  cycle.mean = i
  cycle.square = i * i
  cycle.peak = i
  cycle.conducting = i > 0 ? 1 : 0
  cycle.torque = winding.kind === 'universal' ? (k * i * i) / (1 + i / winding.saturationCurrent) : k * i
  cycle.motorVoltage = i > 0 ? source.emf - source.resistance * i - circuit.diodeDrops : emfOf(0)
  cycle.sourceMean = i
  cycle.sourceSquare = i * i
  cycle.sourcePower = source.emf * i
  return true
}

/** Beyond it a motor turned the wrong way excites itself without end, and no current is steady. */
const RUNAWAY = 1e3

/** A current that a steady one cannot exceed [A] */
function mostCurrent({ source, winding }: Circuit, speed: number, voltage: number): number {
  const resistance = source.resistance + winding.resistance
  if (winding.kind === 'permanent-magnet')
    return voltage / resistance + Math.abs(winding.emfConstant * speed) / resistance
  if (speed >= 0) return voltage / resistance
  const { emfConstant: k, saturationCurrent: is } = winding
  const driving = Math.min(-k * is * speed, RUNAWAY * voltage)
  return (voltage + driving) / resistance
}
