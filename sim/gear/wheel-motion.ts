/**
 * How the wheels follow the worm. The worm turns about +z, both wheels about +y (right-hand rule), the right wheel
 * stands at +x of the worm and the left one at -x. Senses: F. L. Litvin and A. Fuentes, Gear Geometry and Applied
 * Theory, 2nd ed. (Cambridge, 2004), sign rule of the screw parameter; the phase of the far side is derived here.
 */
import type { Hand, Side } from './gear-numbers.ts'

export const handSign = (hand: Hand): 1 | -1 => (hand === 'right' ? 1 : -1)

/** Turn of a wheel about +y = wheelSense x z1/z2 x turn of the worm about +z. */
export const wheelSense = (side: Side, hand: Hand): 1 | -1 => {
  const right = hand === 'right' ? -1 : 1
  return side === 'right' ? right : right === 1 ? -1 : 1
}

/**
 * Angle [rad] about +y that the left wheel needs at zero turns, when the right one has a tooth space on the line of
 * centres: half a tooth pitch where z1 + z2 is odd, else none. Half a turn of the thread is z1 half pitches, and the
 * ray opposite a space is a space only on a wheel with an even number of teeth.
 */
export const farSidePhase = (z1: number, z2: number): number => ((z1 + z2) % 2 === 0 ? 0 : Math.PI / z2)
