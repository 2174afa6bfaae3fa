/** How unevenly a plain helical wheel runs on a worm whose flank is not the involute that fits it. */
import { bearingSweep } from './bearing-sweep.ts'
import type { GearNumbers } from './gear-numbers.ts'
import { IN_PLACE, misplacedMesh } from './misplaced.ts'
import { flankGrid } from './misplaced-flank.ts'
import { axialPitch } from './proportions.ts'

/** Pieces over the face and points from tip to root: enough for one figure of the result. */
const PIECES = 12
const POINTS = 8

/** Transmission error, peak to peak, at the wheel's reference circle [mm]: the wheel turned onto the worm and measured. */
export function conjugateError(gearing: GearNumbers): number {
  const mesh = misplacedMesh(gearing, 'right', 1, IN_PLACE)
  const { touch } = bearingSweep(mesh, flankGrid(gearing, 1, PIECES, POINTS), axialPitch(gearing.axialModule))
  const [least, most] = [Math.min(...touch), Math.max(...touch)]
  return most < Infinity ? (most - least) * mesh.wheelRadius : 0
}
