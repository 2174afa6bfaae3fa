/** What the toothed surface, side faces and body of one wheel share while its mesh is filled. */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { turnedOutline, type WheelBody, wheelBody } from './body.ts'
import { type Detail, wheelDetail } from './detail.ts'
import { addVertex, type MeshWriter, meshWriter } from './triangle-mesh.ts'
import { type WheelSurface, wheelSurface } from './wheel-surface.ts'

/** Cosine and sine of whole parts of a turn, the same number for the same place. */
interface Angles {
  readonly cosine: Float64Array
  readonly sine: Float64Array
}

export interface WheelInMaking {
  readonly writer: MeshWriter
  readonly teeth: number
  readonly surface: WheelSurface
  readonly body: WheelBody
  /** Pieces of the body a tooth pitch */
  readonly pieces: number
  /** Of each tooth space, and of each corner of the body */
  readonly spaces: Angles
  readonly corners: Angles
}

/** Fewest sides of the round parts of a wheel. */
const LEAST_SIDES: Readonly<Record<Detail, number>> = { print: 72, display: 40, distant: 24 }

const parts = (count: number): Angles => ({
  cosine: Float64Array.from({ length: count }, (_, i) => Math.cos((2 * Math.PI * i) / count)),
  sine: Float64Array.from({ length: count }, (_, i) => Math.sin((2 * Math.PI * i) / count)),
})

export function wheelInMaking(gearing: GearNumbers, detail: Detail): WheelInMaking {
  const teeth = gearing.wheelTeeth
  const level = wheelDetail(teeth, detail)
  const pieces = Math.max(level.body, Math.ceil(LEAST_SIDES[detail] / teeth))
  const surface = wheelSurface(gearing, level)
  const body = wheelBody(gearing)
  return {
    writer: wheelWriter(teeth, surface, turnedOutline(body).length - 1, pieces),
    teeth,
    surface,
    body,
    pieces,
    spaces: parts(teeth),
    corners: parts(teeth * pieces),
  }
}

/** Just as large as the wheel will be, its teeth, side faces and turned steps counted. */
function wheelWriter(
  teeth: number,
  { sections, columns }: WheelSurface,
  steps: number,
  pieces: number,
): MeshWriter {
  const rows = sections.length
  const vertices = rows * (columns + 2) + 2 * (columns + pieces) + 2 * steps * pieces
  const triangles = 2 * (rows - 1) * columns + 2 * (columns + pieces) + 2 * steps * pieces
  return meshWriter(teeth * vertices, teeth * triangles)
}

const wrapped = (i: number, count: number): number => ((i % count) + count) % count

/** Adds point i of plane j in space k, with a normal given in the frame of space 0. */
export function addSpacePoint(
  { writer, teeth, surface, spaces }: WheelInMaking,
  j: number,
  i: number,
  k: number,
  nx: number,
  ny: number,
  nz: number,
): number {
  const at = 3 * (j * surface.columns + i)
  const x = surface.positions[at]!
  const z = surface.positions[at + 2]!
  const c = spaces.cosine[k % teeth]!
  const s = spaces.sine[k % teeth]!
  const y = surface.positions[at + 1]!
  return addVertex(writer, x * c + z * s, y, z * c - x * s, nx * c + nz * s, ny, nz * c - nx * s)
}

/** Adds a corner of the body at radius R and height y; its normal has a part outwards and one along y. */
export function addRingVertex(
  { writer, teeth, pieces, corners }: WheelInMaking,
  piece: number,
  R: number,
  y: number,
  nr: number,
  ny: number,
): number {
  const at = wrapped(piece, teeth * pieces)
  const c = -corners.cosine[at]!
  const s = corners.sine[at]!
  return addVertex(writer, R * c, y, R * s, nr * c, ny, nr * s)
}
