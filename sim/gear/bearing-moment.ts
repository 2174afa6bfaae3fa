/** What bears at one moment: the gaps of every tooth flank in reach, with the wheel turned into contact. */
import { FAR, flankPattern, MICROMETRES } from './bearing-pattern.ts'
import { bearingMoment } from './bearing-sweep.ts'
import type { GearNumbers, Side } from './gear-numbers.ts'
import { type Misplacement, misplacedMesh } from './misplaced.ts'
import { axialPitch } from './proportions.ts'
import { thinning } from './thread-profile.ts'
import type { Flank } from './wheel-flank.ts'
import { handSign } from './wheel-motion.ts'

export interface TouchingNow {
  /** Turn of the wheel onto the flank from its place in an ideal mesh without backlash, at r2 [um] */
  readonly play: number
  /** For each tooth in reach: number of the space in the wheel's own frame, and the gaps [mm] on its grid */
  readonly teeth: readonly { readonly space: number; readonly gap: Float32Array }[]
}

/**
 * Number of the tooth space in the wheel's own frame, from 0, that thread k of the side's mesh is in. The left mesh
 * counts backwards from the space that stands opposite when the worm is at zero.
 */
export function ownSpace(
  { wormStarts: z1, wheelTeeth: z2, hand }: GearNumbers,
  side: Side,
  k: number,
): number {
  const odd = (z1 + z2) % 2
  const space = side === 'right' ? k : (z2 + handSign(hand) * z1 - odd) / 2 - k
  return ((space % z2) + z2) % z2
}

/** Gaps at one worm angle [rad], on the same grid as `bearingPattern`. */
export function touchingNow(
  gearing: GearNumbers,
  side: Side,
  sigma: Flank,
  misplacement: Misplacement,
  wormAngle: number,
): TouchingNow {
  const mesh = misplacedMesh(gearing, side, sigma, misplacement)
  const grid = flankPattern(gearing, sigma)
  const phi = side === 'left' ? wormAngle + Math.PI : wormAngle
  const moved = mesh.signedParameter * phi + sigma * thinning('worm', gearing)
  const moments = bearingMoment(mesh, grid, axialPitch(gearing.axialModule), moved)
  const touch = Math.min(...moments.map((moment) => moment.touch))
  const r2 = mesh.wheelRadius
  return {
    play: MICROMETRES * r2 * touch,
    teeth: moments.map(({ thread, turns }) => ({
      space: ownSpace(gearing, side, thread),
      gap: Float32Array.from(turns, (turn, k) =>
        turn < Infinity ? Math.min(FAR, (turn - touch) * r2 * grid.normalPart[k]!) : FAR,
      ),
    })),
  }
}
