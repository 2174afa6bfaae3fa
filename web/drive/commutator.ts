/**
 * The commutator as it is drawn: seen from the worm, angles from the right brush, positive the way a positive worm
 * turn goes, anticlockwise. Bar k reaches from coil k to coil k + 1, where a coil is known by the gap between the two
 * bars that it joins. Coil 0 is the one that is followed; at zero turns it stands one bar before the right brush.
 */
import { TICKS_PER_TURN, type WormTurns, wormFraction } from '../../sim/drive/turns.ts'
import type { Brushes } from '../../sim/machine/machine.ts'
import { coilCurrent } from '../../sim/heat/commutation.ts'
import { barPitch, coveredAngle } from './brushes-state.ts'

export interface Commutator {
  readonly bars: number
  /** From one bar to the next, and what a brush covers [rad] */
  readonly pitch: number
  readonly arc: number
}

export const commutatorOf = (brushes: Brushes): Commutator => ({
  bars: brushes.bars,
  pitch: barPitch(brushes),
  arc: Math.min(Math.PI, coveredAngle(brushes)),
})

const TURN = 2 * Math.PI

/** The same angle in [-pi, pi). */
export const wrapped = (angle: number): number => angle - TURN * Math.floor(angle / TURN + 0.5)

/** Angle of the followed coil from the right brush [rad], in [-pi, pi). */
export const followedAngle = ({ pitch }: Commutator, turns: WormTurns): number =>
  wrapped(TURN * wormFraction(turns) - pitch)

/** Part of half the armature's current in a coil at this angle, -1 to 1; `sense` - of the armature's current. */
export const coilPart = ({ arc }: Commutator, angle: number, sense: 1 | -1): number =>
  coilCurrent(2 * sense, angle, arc)

/** Whole ticks of the worm until the next coil, or the last one, stands under the middle of a brush. */
export function ticksToBar({ bars }: Commutator, { ticks, rest }: WormTurns, by: 1 | -1): number {
  const place = ((ticks + rest) * bars) / TICKS_PER_TURN
  // Within a tick of a bar it stands there: most numbers of bars do not divide a turn into whole ticks.
  const tick = bars / TICKS_PER_TURN
  const next = by > 0 ? Math.floor(place + tick) + 1 : Math.ceil(place - tick) - 1
  return Math.round((next * TICKS_PER_TURN) / bars) - ticks
}

/** One degree of the worm, in ticks. */
export const DEGREE = TICKS_PER_TURN / 360

/** Corners of the current of one coil over a whole turn: angle [deg] and current [A]. */
export function coilTrace({ arc }: Commutator, current: number): { x: Float64Array; y: Float64Array } {
  const half = arc / 2
  const angles = [-Math.PI, -Math.PI + half, -half, 0, half, Math.PI - half, Math.PI]
  return {
    x: Float64Array.from(angles, (angle) => (angle * 360) / TURN),
    y: Float64Array.from(angles, (angle) => coilCurrent(current, angle, arc)),
  }
}
