/** The planes of the face in which contact is looked for. */
import { lastPlace } from './last-place.ts'
import { soundHalfFace } from './wheel-section.ts'
import type { SpaceCutter } from './wheel-space.ts'

/** Of the way between two planes: far below what can be seen */
const HALVINGS = 16

/** Planes y [mm]: evenly over the face, and those where the throat meets the outside cylinder. */
function facePlanes(cutter: SpaceCutter, wheelWidth: number, pieces: number): number[] {
  const halfFace = soundHalfFace(cutter, wheelWidth)
  const even = Array.from({ length: pieces + 1 }, (_, j) => halfFace * ((2 * j) / pieces - 1))
  const outside = cutter.generation.centreDistance - cutter.outsideRadius
  const edge = Math.sqrt(Math.max(0, cutter.limits.gorge ** 2 - outside * outside))
  return edge > 0 && edge < halfFace ? [...even, edge, -edge].sort((a, b) => a - b) : even
}

/**
 * Those of them that hold what is asked for, from one end of such a stretch of the face to the other. At large
 * leads a flank ends before the face does, on one side.
 */
export function contactPlanes(
  cutter: SpaceCutter,
  wheelWidth: number,
  pieces: number,
  holds: (y: number) => boolean,
): number[] {
  const all = facePlanes(cutter, wheelWidth, pieces)
  const held = all.map(holds)
  const first = held.indexOf(true)
  const last = held.lastIndexOf(true)
  if (first < 0) return []
  const planes = all.slice(first, last + 1)
  const low = first > 0 ? lastPlace(all[first]!, all[first - 1]!, holds, HALVINGS) : planes[0]!
  const high = last + 1 < all.length ? lastPlace(all[last]!, all[last + 1]!, holds, HALVINGS) : planes.at(-1)!
  return [...(low < planes[0]! ? [low] : []), ...planes, ...(high > planes.at(-1)! ? [high] : [])]
}
