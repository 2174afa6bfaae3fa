/**
 * The toothed surface of the wheel as a grid in full precision: planes across the face, points round one
 * tooth space (tooth-space.ts), with outward normals. Every other space is the same one turned by a tooth
 * pitch.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { type WheelSection, spacePoints } from '../gear/wheel-section.ts'
import { wheelBody } from './body.ts'
import type { WheelDetail } from './detail.ts'
import { toothSpace } from './tooth-space.ts'

export interface WheelSurface {
  readonly sections: readonly WheelSection[]
  /** Points of a section that belong to the space */
  readonly points: number
  /** All points of a section: the space, then the inner points of the tooth's land */
  readonly columns: number
  /** First point of the root arc */
  readonly rootStart: number
  /** x, y, z for each plane and point, in the wheel's own frame */
  readonly positions: Float64Array
  /** The same for the outward normals; those of the land are left out. */
  readonly normals: Float64Array
  /** For each cell of the space's grid, 1 where it is cut from its second point to its fourth, the shorter way */
  readonly cuts: Uint8Array
}

export function wheelSurface(gearing: GearNumbers, detail: WheelDetail): WheelSurface {
  const space = toothSpace(gearing)
  const { faceWidth } = wheelBody(gearing)
  const points = spacePoints(detail)
  const columns = points + detail.land - 1
  const sections = Array.from({ length: detail.planes + 1 }, (_, j) => {
    const y = faceWidth * (j / detail.planes - 1 / 2)
    return withLand(space.section(y, detail), points, columns, space.toothPitch)
  })
  const normals = new Float64Array(3 * sections.length * columns)
  for (let j = 0; j < sections.length; j++) {
    for (let i = 0; i < points; i++) {
      const at = 3 * (j * columns + i)
      const sigma = i < points / 2 ? -1 : 1
      if (space.writeNormal(normals, at, sections[j]!, sigma, i)) continue
      writeGridNormal(normals, at, sections, points, j, i)
    }
  }
  const rootStart = detail.flank + detail.fillet
  const positions = gridPositions(sections, columns)
  const cuts = shorterCuts(positions, sections.length, points, columns)
  return { sections, points, columns, rootStart, positions, normals, cuts }
}

/** A section whose land has as many points as are wanted, even in angle. */
function withLand(section: WheelSection, points: number, columns: number, toothPitch: number): WheelSection {
  const radius = new Float64Array(columns).fill(section.radius[0]!)
  const chi = new Float64Array(columns)
  const contact = new Float64Array(columns).fill(NaN)
  radius.set(section.radius.subarray(0, points))
  chi.set(section.chi.subarray(0, points))
  contact.set(section.contact.subarray(0, points))
  const from = chi[points - 1]!
  const width = chi[0]! + toothPitch - from
  for (let i = points; i < columns; i++) {
    chi[i] = from + (width * (i - points + 1)) / (columns - points + 1)
  }
  return { y: section.y, radius, chi, contact }
}

function gridPositions(sections: readonly WheelSection[], columns: number): Float64Array {
  const positions = new Float64Array(3 * sections.length * columns)
  let at = 0
  for (const { y, radius, chi } of sections) {
    for (let i = 0; i < columns; i++) {
      positions[at++] = -radius[i]! * Math.cos(chi[i]!)
      positions[at++] = y
      positions[at++] = radius[i]! * Math.sin(chi[i]!)
    }
  }
  return positions
}

/** Cells that slant with the teeth are cut along them, which keeps the triangles on the surface. */
function shorterCuts(positions: Float64Array, rows: number, points: number, columns: number): Uint8Array {
  const cuts = new Uint8Array((rows - 1) * (points - 1))
  const square = (a: number, b: number) => {
    const x = positions[3 * a]! - positions[3 * b]!
    const y = positions[3 * a + 1]! - positions[3 * b + 1]!
    const z = positions[3 * a + 2]! - positions[3 * b + 2]!
    return x * x + y * y + z * z
  }
  for (let j = 0; j + 1 < rows; j++) {
    for (let i = 0; i + 1 < points; i++) {
      const a = j * columns + i
      if (square(a + 1, a + columns) < square(a, a + columns + 1)) cuts[j * (points - 1) + i] = 1
    }
  }
  return cuts
}

/** Normal of fillet and root: across the grid's own directions. */
function writeGridNormal(
  out: Float64Array,
  at: number,
  sections: readonly WheelSection[],
  points: number,
  j: number,
  i: number,
): void {
  const [ax, , az] = step(sections[j]!, Math.max(0, i - 1), sections[j]!, Math.min(points - 1, i + 1))
  const below = sections[Math.max(0, j - 1)]!
  const above = sections[Math.min(sections.length - 1, j + 1)]!
  const [bx, by, bz] = step(below, i, above, i)
  const nx = -az * by
  const ny = az * bx - ax * bz
  const nz = ax * by
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1
  out[at] = nx / length
  out[at + 1] = ny / length
  out[at + 2] = nz / length
}

function step(from: WheelSection, i: number, to: WheelSection, k: number): [number, number, number] {
  const r = from.radius[i]!
  const s = to.radius[k]!
  const x = r * Math.cos(from.chi[i]!) - s * Math.cos(to.chi[k]!)
  const z = s * Math.sin(to.chi[k]!) - r * Math.sin(from.chi[i]!)
  return [x, to.y - from.y, z]
}
