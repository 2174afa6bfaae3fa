import type { Arc } from './arc.ts'
import { newArc } from './arc.ts'

/**
 * A sinusoidal source behind R and L, a two-drop bridge and a motor that opposes with a constant voltage; all
 * SI.
 */
export interface BridgeCircuit {
  /** [V] */
  readonly emfPeak: number
  /** [rad/s], > 0 */
  readonly angularFrequency: number
  /** [ohm] */
  readonly sourceResistance: number
  /** [H] */
  readonly sourceInductance: number
  /** [ohm], > 0 */
  readonly motorResistance: number
  /** [H], > 0 */
  readonly motorInductance: number
  /** Both conducting diodes together [V] */
  readonly diodeDrops: number
}

/** What one solution needs in passing: the arcs at hand and where the last overlap began. */
export interface BridgeWork {
  /** Motor current; while the bridge conducts it is the source current too. */
  readonly motor: Arc
  /** Source current during overlap; while the bridge conducts, the voltage that ends it. */
  readonly other: Arc
  /** Always zero, to look for the angle where an arc is. */
  readonly nothing: Arc
  /** All constant voltages against the current [V] */
  opposing: number
  /**
   * Rs La - Ls Ra: the voltage ahead of the diodes times (La + Ls) is La e + Ls opposing - cross i [ohm H]
   */
  cross: number
  /** Angle from which the source can drive a current that has died [rad] */
  restart: number
  /** Angle from which the motor current starts next [rad] */
  start: number
  /** Motor current there [A] */
  current: number
}

export const newBridgeWork = (): BridgeWork => ({
  motor: newArc(),
  other: newArc(),
  nothing: newArc(),
  opposing: 0,
  cross: 0,
  restart: 0,
  start: 0,
  current: 0,
})

/** The steady sine that the emf drives through source and motor, while one current runs through both. */
export function driveBoth(arc: Arc, circuit: BridgeCircuit): void {
  const resistance = circuit.sourceResistance + circuit.motorResistance
  const reactance = circuit.angularFrequency * (circuit.sourceInductance + circuit.motorInductance)
  const squared = resistance * resistance + reactance * reactance
  arc.sine = (circuit.emfPeak * resistance) / squared
  arc.cosine = (-circuit.emfPeak * reactance) / squared
  arc.rate = resistance / reactance
}

/** The steady sine that the emf drives through the source alone, short-circuited by the diodes. */
export function driveSource(arc: Arc, circuit: BridgeCircuit): void {
  const { emfPeak, sourceResistance } = circuit
  const reactance = circuit.angularFrequency * circuit.sourceInductance
  const squared = sourceResistance * sourceResistance + reactance * reactance
  arc.sine = (emfPeak * sourceResistance) / squared
  arc.cosine = (-emfPeak * reactance) / squared
  arc.rate = 1
  if (reactance > 0) arc.rate = sourceResistance / reactance
}
