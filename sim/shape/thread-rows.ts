/**
 * The worm's thread as rows: places on its axial profile over one pitch, which repeats. A row lies at z = P
 * theta + zeta for every angle theta.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { pairProportions } from '../gear/proportions.ts'
import { thinnedThreadForm } from '../gear/thread-profile.ts'
import { toothLimits } from '../gear/tooth-limits.ts'
import { handSign } from '../gear/wheel-motion.ts'
import { type WormBody, wormBody } from './body.ts'
import type { WormDetail } from './detail.ts'
import { addVertex, type MeshWriter, meshWriter } from './triangle-mesh.ts'

/** One place on the thread's profile, with the surface that leaves it towards +z. */
export interface Row {
  readonly zeta: number
  readonly radius: number
  /** 0 on the lands, else the side of the thread */
  readonly sigma: -1 | 0 | 1
}

export interface Thread {
  readonly writer: MeshWriter
  readonly rows: readonly Row[]
  readonly pitch: number
  /** p with the sign of the hand */
  readonly parameter: number
  readonly slope: (r: number) => number
  readonly body: WormBody
  readonly columns: number
  /** Rows that one turn moves on by, signed */
  readonly rowsPerTurn: number
}

/** Half the thickness, in modules, that a thread keeps in the picture even where backlash takes all of it. */
const THINNEST = 0.015

/** One pitch of the profile, from the middle of a space to the next. */
function profileRows(gearing: GearNumbers, flank: number): Row[] {
  const { axialPitch: px } = pairProportions(gearing)
  const { wormTip: tip, wormRoot: root } = toothLimits(gearing)
  const form = thinnedThreadForm(gearing)
  const halfThickness = (r: number) => Math.max(form.halfThickness(r), THINNEST * gearing.axialModule)
  const level = (i: number) => root + ((tip - root) * i) / flank
  const rows: Row[] = [{ zeta: -px / 2, radius: root, sigma: 0 }]
  for (let i = 0; i < flank; i++) rows.push({ zeta: -halfThickness(level(i)), radius: level(i), sigma: -1 })
  rows.push({ zeta: -halfThickness(tip), radius: tip, sigma: 0 }, { zeta: 0, radius: tip, sigma: 0 })
  for (let i = flank; i > 0; i--) rows.push({ zeta: halfThickness(level(i)), radius: level(i), sigma: 1 })
  rows.push({ zeta: halfThickness(root), radius: root, sigma: 0 })
  return rows
}

/** Edges of a thread in one pitch, where a place has two vertices */
const EDGES = 4
/** Places of a column at its two ends, its stubs and their middles, at most */
const END_PLACES = 18

/** As large as the worm can be: whole pitches in every column, and what closes its ends. */
function threadWriter(rowsAPitch: number, pitches: number, columns: number): MeshWriter {
  const vertices = Math.ceil(pitches * (rowsAPitch + EDGES)) + EDGES + END_PLACES
  const triangles = 2 * Math.ceil(pitches * rowsAPitch) + 2 * END_PLACES
  return meshWriter(columns * vertices, columns * triangles)
}

export function threadOf(gearing: GearNumbers, detail: WormDetail): Thread {
  const { axialPitch, screwParameter } = pairProportions(gearing)
  const rows = profileRows(gearing, detail.flank)
  const sign = handSign(gearing.hand)
  const body = wormBody(gearing)
  return {
    writer: threadWriter(rows.length, body.threadLength / axialPitch, detail.columns),
    rows,
    pitch: axialPitch,
    parameter: sign * screwParameter,
    slope: thinnedThreadForm(gearing).slope,
    body,
    columns: detail.columns,
    rowsPerTurn: sign * gearing.wormStarts * rows.length,
  }
}

export const rowOf = ({ rows }: Thread, w: number): Row =>
  rows[((w % rows.length) + rows.length) % rows.length]!

export const rowZ = (thread: Thread, theta: number, w: number): number =>
  thread.parameter * theta + Math.floor(w / thread.rows.length) * thread.pitch + rowOf(thread, w).zeta

/** Vertex on the thread at (theta, r, z) with the normal of the surface that leaves row w towards +z. */
export function addThreadVertex(thread: Thread, theta: number, r: number, z: number, w: number): number {
  const { sigma } = rowOf(thread, w)
  const c = Math.cos(theta)
  const s = Math.sin(theta)
  if (sigma === 0) return addVertex(thread.writer, r * c, r * s, z, c, s, 0)
  const radial = -thread.slope(r)
  const round = (-sigma * thread.parameter) / r
  return addVertex(thread.writer, r * c, r * s, z, radial * c - round * s, radial * s + round * c, sigma)
}
