import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { type WheelSection, spacePoints } from '../../../sim/gear/wheel-section.ts'
import { type Detail, wheelDetail } from '../../../sim/shape/detail.ts'
import { toothSpace } from '../../../sim/shape/tooth-space.ts'
import { type WheelSurface, wheelSurface } from '../../../sim/shape/wheel-surface.ts'

/** Distances [mm] of the flat triangles of a wheel's teeth to the exact surface. */
export interface Deviations {
  readonly flankMost: number
  readonly flankRms: number
  /** Flanks, fillets and root together */
  readonly most: number
}

/** Where the mesh is cut between two planes of its grid, and looked at between two corners of the cut. */
const PARTS = [1 / 4, 1 / 2, 3 / 4]
const EXACT = { flank: 120, fillet: 60, root: 16 }
/** Pieces of the exact section that are looked at on each side of the one at the same radius. */
const NEIGHBOURS = 12

interface Polyline {
  readonly x: Float64Array
  readonly z: Float64Array
}

const polyline = ({ radius, chi }: WheelSection, points: number): Polyline => ({
  x: Float64Array.from({ length: points }, (_, i) => -radius[i]! * Math.cos(chi[i]!)),
  z: Float64Array.from({ length: points }, (_, i) => radius[i]! * Math.sin(chi[i]!)),
})

/**
 * Distance of a point to the pieces `from` to `to` of a polyline, in their plane. Its ends go on straight, so
 * that a tip between two planes counts for its flank only.
 */
function distanceTo({ x, z }: Polyline, px: number, pz: number, from: number, to: number): number {
  let nearest = Infinity
  for (let i = Math.max(0, from); i < Math.min(x.length - 1, to); i++) {
    const [ux, uz] = [x[i + 1]! - x[i]!, z[i + 1]! - z[i]!]
    const [vx, vz] = [px - x[i]!, pz - z[i]!]
    const foot = (vx * ux + vz * uz) / (ux * ux + uz * uz || 1)
    const [least, most] = [i === 0 ? -Infinity : 0, i === x.length - 2 ? Infinity : 1]
    const part = Math.min(most, Math.max(least, foot))
    const [dx, dz] = [vx - part * ux, vz - part * uz]
    nearest = Math.min(nearest, dx * dx + dz * dz)
  }
  return Math.sqrt(nearest)
}

/** Number of the exact section's point on a side of the space at the radius R, which falls from the tip on. */
function pointAt({ radius }: WheelSection, R: number, plus: boolean): number {
  const points = spacePoints(EXACT)
  const at = (i: number) => (plus ? points - 1 - i : i)
  let [high, low] = [0, EXACT.flank + EXACT.fillet]
  while (low - high > 1) {
    const middle = (high + low) >> 1
    if (radius[at(middle)]! > R) high = middle
    else low = middle
  }
  return at(low)
}

/** Corners, in the plane part way from plane j to the next, of the cut through the grid's triangles. */
function cutCorners({ positions, columns, points, cuts }: WheelSurface, j: number, i: number, part: number) {
  const at = (plane: number, point: number, d: number) => positions[3 * (plane * columns + point) + d]!
  const between = (low: number, high: number): [number, number] => [
    at(j, low, 0) + part * (at(j + 1, high, 0) - at(j, low, 0)),
    at(j, low, 2) + part * (at(j + 1, high, 2) - at(j, low, 2)),
  ]
  const falls = cuts[j * (points - 1) + i] === 1
  return [between(i, i), falls ? between(i + 1, i) : between(i, i + 1), between(i + 1, i + 1)] as const
}

/** Part of a distance in the plane y = const that stands square to the surface. */
function squareness({ normals, columns }: WheelSurface, j: number, i: number): number {
  const at = 3 * (j * columns + i)
  return Math.hypot(normals[at]!, normals[at + 2]!)
}

/** The points to look at on piece i of the cut between planes j and j + 1. */
function cutPoints(surface: WheelSurface, j: number, i: number, part: number): [x: number, z: number][] {
  const corners = cutCorners(surface, j, i, part)
  return [0, 1].flatMap((piece) =>
    [0, ...PARTS].map((along): [number, number] => {
      const [from, to] = [corners[piece]!, corners[piece + 1]!]
      return [from[0] + along * (to[0] - from[0]), from[1] + along * (to[1] - from[1])]
    }),
  )
}

/** Piece i between planes j and j + 1 has all its corners on the exact flank, and is not the root. */
const onFlank = ({ sections, points, rootStart }: WheelSurface, j: number, i: number): boolean =>
  (i < rootStart || i >= points - 1 - rootStart) &&
  [j, j + 1].every((plane) => [i, i + 1].every((at) => !Number.isNaN(sections[plane]!.contact[at]!)))

/**
 * The mesh of `drawn` is cut by planes between those of its grid, and the cut compared with the exact section
 * of `gearing` in that plane.
 */
export function wheelDeviations(gearing: GearNumbers, level: Detail, drawn = gearing): Deviations {
  const surface = wheelSurface(drawn, wheelDetail(gearing.wheelTeeth, level))
  const space = toothSpace(gearing)
  const { sections, points } = surface
  let [flankMost, squares, samples, most] = [0, 0, 0, 0]
  for (let cut = 0; cut < PARTS.length * (sections.length - 1); cut++) {
    const j = Math.floor(cut / PARTS.length)
    const part = PARTS[cut % PARTS.length]!
    const section = space.section(sections[j]!.y + part * (sections[j + 1]!.y - sections[j]!.y), EXACT)
    const exact = polyline(section, spacePoints(EXACT))
    for (let i = 0; i + 1 < points; i++) {
      const flank = onFlank(surface, j, i)
      for (const [x, z] of cutPoints(surface, j, i, part)) {
        const near = flank ? pointAt(section, Math.hypot(x, z), i >= points / 2) : spacePoints(EXACT) / 2
        const around = flank ? NEIGHBOURS : spacePoints(EXACT) / 2
        const distance = distanceTo(exact, x, z, near - around, near + around) * squareness(surface, j, i)
        most = Math.max(most, distance)
        if (!flank) continue
        flankMost = Math.max(flankMost, distance)
        squares += distance * distance
        samples++
      }
    }
  }
  return { flankMost, flankRms: Math.sqrt(squares / samples), most }
}
