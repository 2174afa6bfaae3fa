/**
 * Where the parts stand at zero turns, so that both wheels mesh exactly, seen from above (+y towards the reader):
 *
 *      left wheel            worm             right wheel
 *      +--------+            ====            +--------+
 *      |  x=-a  |==tooth or  |  |   thread==>| space  |      x to the right,
 *      |        |  space     |  |  into space|  x=+a  |      z down the page
 *      +--------+            ====            +--------+
 *
 * The worm mesh has the middle of a thread at +x in the plane z = 0; the wheel mesh has the middle of a tooth space
 * towards -x. So the right wheel meshes as it is built. On the far side the thread has gone half a turn further, and
 * the ray opposite a space need not be a space, so the left wheel, the same part, may need half a tooth pitch.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { farSidePhase } from '../gear/wheel-motion.ts'

/** Angle [rad] about +y of the right wheel's mesh at zero turns. */
export const rightWheelZero = (): number => 0

/** Angle [rad] about +y of the left wheel's mesh at zero turns. */
export const leftWheelZero = ({ wormStarts, wheelTeeth }: GearNumbers): number =>
  farSidePhase(wormStarts, wheelTeeth)

export interface MeshPhase {
  /** Angle [rad] about +z of the worm's mesh at zero turns */
  readonly worm: number
  readonly rightWheel: number
  readonly leftWheel: number
}

export const meshPhase = (gearing: GearNumbers): MeshPhase => ({
  worm: 0,
  rightWheel: rightWheelZero(),
  leftWheel: leftWheelZero(gearing),
})
