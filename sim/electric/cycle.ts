import type { Decay } from './decay.ts'
import { newDecay } from './decay.ts'

/**
 * Means of one electrical period at a speed that stands still in time. Written in place; all SI. Currents and
 * voltages that alternate are taken by their size.
 */
export interface CurrentCycle {
  /** Emf and brush drop that the current works against, in the supply's sense [V]; set before solving */
  opposing: number
  /** Mean motor current, in the supply's sense never negative but where a motor charges a capacitor [A] */
  mean: number
  /** By how much its mean size is more than the size of its mean, 0 while it keeps one sense [A] */
  reversal: number
  /** Mean square of the motor current [A2] */
  square: number
  /** Largest motor current [A] */
  peak: number
  /** Part of the period in which motor current flows, 0 to 1 */
  conducting: number
  /** Mean torque of the motor in the supply's sense [N m] */
  torque: number
  /** At the brushes: mean of a direct voltage, r.m.s. of an alternating one [V] */
  motorVoltage: number
  /** Mean current out of a battery [A]; 0 for an alternating source */
  sourceMean: number
  /** Mean square of the current through the source [A2] */
  sourceSquare: number
  /** Mean of source emf times source current [W] */
  sourcePower: number
  /** Mean of source current times the emf a quarter period ahead [W] */
  sourceQuadrature: number
  /** Mean of the current that meets the drops of the rectifier [A] */
  rectifiedMean: number
  /** Mean of the current that meets the drop of triac or switch [A]; 0 where a relay bridges it */
  switchMean: number
  /** Mean current through the freewheel diode of a chopper [A] */
  freewheelMean: number
  /** Part of the period with a chopper's switch closed; below what is set where the current limit opens it */
  duty: number
  /** Across the smoothing capacitor, all 0 without one: mean [V], mean square [V2], from least to most [V] */
  capacitorMean: number
  capacitorSquare: number
  capacitorRipple: number
  /** Current in the primary of a transformer [A r.m.s.] */
  primary: number
  /** The stretch of current that is being averaged */
  readonly decay: Decay
}

export const newCycle = (): CurrentCycle => ({
  opposing: 0,
  mean: 0,
  reversal: 0,
  square: 0,
  peak: 0,
  conducting: 0,
  torque: 0,
  motorVoltage: 0,
  sourceMean: 0,
  sourceSquare: 0,
  sourcePower: 0,
  sourceQuadrature: 0,
  rectifiedMean: 0,
  switchMean: 0,
  freewheelMean: 0,
  duty: 0,
  capacitorMean: 0,
  capacitorSquare: 0,
  capacitorRipple: 0,
  primary: 0,
  decay: newDecay(),
})

/** Forgets the means and keeps what the current works against. */
export function clearCycle(cycle: CurrentCycle): void {
  cycle.mean = 0
  cycle.reversal = 0
  cycle.square = 0
  cycle.peak = 0
  cycle.conducting = 0
  cycle.torque = 0
  cycle.motorVoltage = 0
  cycle.sourceMean = 0
  cycle.sourceSquare = 0
  cycle.sourcePower = 0
  cycle.sourceQuadrature = 0
  cycle.rectifiedMean = 0
  cycle.switchMean = 0
  cycle.freewheelMean = 0
  cycle.duty = 0
  cycle.capacitorMean = 0
  cycle.capacitorSquare = 0
  cycle.capacitorRipple = 0
  cycle.primary = 0
}

/**
 * Without a source, a motor with magnets that is turned the wrong way drives a steady current round through diodes,
 * whose drops are among what opposes. The resistance comes with its winding, since a number alone could cost a box.
 */
export function circulate(cycle: CurrentCycle, winding: { readonly resistance: number }): void {
  const current = -cycle.opposing / winding.resistance
  if (current <= 0) return
  cycle.mean = current
  cycle.square = current * current
  cycle.peak = current
  cycle.conducting = 1
}
