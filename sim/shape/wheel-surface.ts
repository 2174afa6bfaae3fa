/**
 * The toothed surface of the wheel as a grid in full precision: planes across the face, points round one
 * tooth space (wheel-section.ts), with outward normals. Every other space is the same one turned by a tooth
 * pitch.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { rackHeight, rackSlope, rackTilt } from '../gear/wheel-flank.ts'
import { type WheelSection, spacePoints, wheelSection } from '../gear/wheel-section.ts'
import { type SpaceCutter, spaceCutter } from '../gear/wheel-space.ts'
import { wheelBody } from './body.ts'
import type { WheelDetail } from './detail.ts'

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
}

export function wheelSurface(gearing: GearNumbers, detail: WheelDetail): WheelSurface {
  const cutter = spaceCutter(gearing)
  const { faceWidth } = wheelBody(gearing)
  const points = spacePoints(detail)
  const columns = points + detail.land - 1
  const sections = Array.from({ length: detail.planes + 1 }, (_, j) => {
    const y = faceWidth * (j / detail.planes - 1 / 2)
    return withLand(wheelSection(cutter, y, detail), points, columns, cutter.toothPitch)
  })
  const normals = new Float64Array(3 * sections.length * columns)
  for (let j = 0; j < sections.length; j++) {
    for (let i = 0; i < points; i++) {
      const at = 3 * (j * columns + i)
      if (Number.isNaN(sections[j]!.contact[i])) writeGridNormal(normals, at, sections, points, j, i)
      else writeFlankNormal(normals, at, cutter, sections[j]!, i < points / 2 ? -1 : 1, i)
    }
  }
  const rootStart = detail.flank + detail.fillet
  return { sections, points, columns, rootStart, positions: gridPositions(sections, columns), normals }
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

/** Normal of the rack at the point of contact, turned with the wheel: exact. */
function writeFlankNormal(
  out: Float64Array,
  at: number,
  cutter: SpaceCutter,
  section: WheelSection,
  sigma: 1 | -1,
  i: number,
): void {
  const g = cutter.generation
  const t = section.contact[i]!
  const R = section.radius[i]!
  const x = g.centreDistance - R * Math.cos(t)
  const turn = (rackHeight(g, sigma, x, section.y) - R * Math.sin(t)) / g.wheelRadius
  const nx = sigma * rackSlope(g, sigma, x, section.y)
  const ny = sigma * rackTilt(g, sigma, x, section.y)
  const nz = -sigma
  const length = Math.sqrt(nx * nx + ny * ny + 1)
  out[at] = (nx * Math.cos(turn) + nz * Math.sin(turn)) / length
  out[at + 1] = ny / length
  out[at + 2] = (nz * Math.cos(turn) - nx * Math.sin(turn)) / length
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
