/**
 * How the wheels follow the worm. The worm turns about +z, both wheels about +y (right-hand rule), the right
 * wheel stands at +x of the worm and the left one at -x. Senses: F. L. Litvin and A. Fuentes, Gear Geometry
 * and Applied Theory, 2nd ed. (Cambridge, 2004), sign rule of the screw parameter; the phase of the far side
 * is derived here.
 */
import type { Hand, Side } from './gear-numbers.ts'

export const handSign = (hand: Hand): 1 | -1 => (hand === 'right' ? 1 : -1)

/** Turn of a wheel about +y = wheelSense x z1/z2 x turn of the worm about +z. */
export const wheelSense = (side: Side, hand: Hand): 1 | -1 => {
  const right = hand === 'right' ? -1 : 1
  return side === 'right' ? right : right === 1 ? -1 : 1
}

/**
 * Angle [rad] about +y that the left wheel needs at zero turns to mesh: half a tooth pitch where z1 + z2 is
 * odd, else none. Seen from above (+y towards the reader, x to the right, z down the page), at zero turns:
 *
 *      left wheel            worm             right wheel
 *      +--------+            ====            +--------+
 *      |  x=-a  |==tooth or  |  |   thread==>| space  |
 *      |        |  space     |  |  into space|  x=+a  |
 *      +--------+            ====            +--------+
 *
 * The worm is made with the middle of a thread at +x in the plane z = 0, the wheel with the middle of a tooth
 * space towards -x, so the right wheel meshes as it is made. On the far side the thread has gone half a turn
 * further, which is z1 half pitches, and the ray opposite a space is a space only on a wheel with an even
 * number of teeth.
 */
export const farSidePhase = (z1: number, z2: number): number => ((z1 + z2) % 2 === 0 ? 0 : Math.PI / z2)
