import type { Decay } from './decay.ts'
import { newDecay } from './decay.ts'

/** Means of one electrical period at a speed that stands still in time. Written in place; all SI. */
export interface CurrentCycle {
  /** Emf and brush drop that the current works against, in the supply's sense [V]; set before solving */
  opposing: number
  /** Mean motor current [A], never negative in the supply's sense */
  mean: number
  /** Mean square of the motor current [A2] */
  square: number
  /** Part of the period in which motor current flows, 0 to 1 */
  conducting: number
  /** Mean current out of a battery [A]; 0 for an alternating source */
  sourceMean: number
  /** Mean square of the current through the source [A2] */
  sourceSquare: number
  /** Mean of source emf times source current [W] */
  sourcePower: number
  /** Mean of source current times the emf a quarter period ahead [W] */
  sourceQuadrature: number
  /** Mean current through the freewheel diode [A] */
  freewheelMean: number
  /** Current in the primary of a transformer [A r.m.s.] */
  primary: number
  /** The stretch of current that is being averaged */
  readonly decay: Decay
}

export const newCycle = (): CurrentCycle => ({
  opposing: 0,
  mean: 0,
  square: 0,
  conducting: 0,
  sourceMean: 0,
  sourceSquare: 0,
  sourcePower: 0,
  sourceQuadrature: 0,
  freewheelMean: 0,
  primary: 0,
  decay: newDecay(),
})

/** Forgets the means and keeps what the current works against. */
export function clearCycle(cycle: CurrentCycle): void {
  cycle.mean = 0
  cycle.square = 0
  cycle.conducting = 0
  cycle.sourceMean = 0
  cycle.sourceSquare = 0
  cycle.sourcePower = 0
  cycle.sourceQuadrature = 0
  cycle.freewheelMean = 0
  cycle.primary = 0
}

/** A steady current that only circulates: it flows when the motor is turned against the supply's sense [A] */
export function circulate(cycle: CurrentCycle, current: number): void {
  cycle.mean = current
  cycle.square = current * current
  cycle.conducting = 1
  cycle.freewheelMean = current
}
