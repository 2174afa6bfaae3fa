/**
 * The worm as a closed surface: a true helicoid thread, cut off square at both ends, with a stub of shaft on
 * each side. Axis along z; at zero turns the middle of a thread stands at +x in the plane z = 0.
 *
 * The thread is a grid of columns (angles theta) and rows (places along the thread's profile), z = P theta +
 * zeta. One turn on, a row is the row one lead further, so the grid closes on itself. Rows beyond an end
 * plane fall together: the first one onto the end plane, where the profile crosses it, all others onto the
 * shaft.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { pairProportions } from '../gear/proportions.ts'
import { threadForm } from '../gear/thread-profile.ts'
import { toothLimits } from '../gear/tooth-limits.ts'
import { handSign } from '../gear/wheel-motion.ts'
import { type WormBody, wormBody } from './body.ts'
import { type Detail, type WormDetail, wormDetail } from './detail.ts'
import {
  addTriangle,
  addVertex,
  finishedMesh,
  type MeshWriter,
  meshWriter,
  type TriangleMesh,
} from './triangle-mesh.ts'

/** One place on the thread's profile, with the surface that leaves it towards +z. */
interface Row {
  readonly zeta: number
  readonly radius: number
  /** 0 on the lands, else the side of the thread */
  readonly sigma: -1 | 0 | 1
}

interface Thread {
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

/** Where a column stops being thread, and the vertices there. */
interface End {
  readonly row: number
  /** For the surfaces before and after it towards +z */
  readonly before: number
  readonly after: number
  readonly onPlane: number
  readonly shaftOnPlane: number
}

interface Column {
  readonly low: End
  readonly high: End
  /** Vertices of the rows between the ends, for the surfaces before and after each */
  readonly before: readonly number[]
  readonly after: readonly number[]
}

export function wormMesh(gearing: GearNumbers, detail: Detail): TriangleMesh {
  const thread = threadOf(gearing, wormDetail(gearing.wheelTeeth, detail))
  const columns = Array.from({ length: thread.columns }, (_, j) => threadColumn(thread, j))
  for (let j = 0; j < columns.length; j++) {
    const wraps = j + 1 === columns.length
    joinColumns(thread, columns[j]!, columns[wraps ? 0 : j + 1]!, wraps ? thread.rowsPerTurn : 0)
  }
  addStub(thread, columns, 'low')
  addStub(thread, columns, 'high')
  return finishedMesh(thread.writer)
}

/** One pitch of the profile, from the middle of a space to the next. */
function profileRows(gearing: GearNumbers, flank: number): Row[] {
  const { axialPitch: px } = pairProportions(gearing)
  const { wormTip: tip, wormRoot: root } = toothLimits(gearing)
  const { halfThickness } = threadForm(gearing)
  const level = (i: number) => root + ((tip - root) * i) / flank
  const rows: Row[] = [{ zeta: -px / 2, radius: root, sigma: 0 }]
  for (let i = 0; i < flank; i++) rows.push({ zeta: -halfThickness(level(i)), radius: level(i), sigma: -1 })
  rows.push({ zeta: -halfThickness(tip), radius: tip, sigma: 0 }, { zeta: 0, radius: tip, sigma: 0 })
  for (let i = flank; i > 0; i--) rows.push({ zeta: halfThickness(level(i)), radius: level(i), sigma: 1 })
  rows.push({ zeta: halfThickness(root), radius: root, sigma: 0 })
  return rows
}

function threadOf(gearing: GearNumbers, detail: WormDetail): Thread {
  const { axialPitch, screwParameter } = pairProportions(gearing)
  const rows = profileRows(gearing, detail.flank)
  const sign = handSign(gearing.hand)
  return {
    writer: meshWriter(),
    rows,
    pitch: axialPitch,
    parameter: sign * screwParameter,
    slope: threadForm(gearing).slope,
    body: wormBody(gearing),
    columns: detail.columns,
    rowsPerTurn: sign * gearing.wormStarts * rows.length,
  }
}

const rowOf = ({ rows }: Thread, w: number): Row => rows[((w % rows.length) + rows.length) % rows.length]!

const rowZ = (thread: Thread, theta: number, w: number): number =>
  thread.parameter * theta + Math.floor(w / thread.rows.length) * thread.pitch + rowOf(thread, w).zeta

/** Vertex on the thread at (theta, r, z) with the normal of the surface that leaves row w towards +z. */
function addSurfaceVertex(thread: Thread, theta: number, r: number, z: number, w: number): number {
  const { sigma } = rowOf(thread, w)
  const c = Math.cos(theta)
  const s = Math.sin(theta)
  if (sigma === 0) return addVertex(thread.writer, r * c, r * s, z, c, s, 0)
  const radial = -thread.slope(r)
  const round = (-sigma * thread.parameter) / r
  return addVertex(thread.writer, r * c, r * s, z, radial * c - round * s, radial * s + round * c, sigma)
}

function threadColumn(thread: Thread, j: number): Column {
  const theta = (2 * Math.PI * j) / thread.columns
  const half = thread.body.threadLength / 2
  const perPitch = thread.rows.length
  let first = Math.floor((-half - thread.parameter * theta) / thread.pitch) * perPitch
  while (rowZ(thread, theta, first) <= -half) first++
  let last = first
  while (rowZ(thread, theta, last + 1) < half) last++
  const low = columnEnd(thread, theta, first - 1, -half)
  const before: number[] = []
  const after: number[] = []
  for (let w = first; w <= last; w++) {
    const { radius, sigma } = rowOf(thread, w)
    const z = rowZ(thread, theta, w)
    const one = addSurfaceVertex(thread, theta, radius, z, w - 1)
    const smooth = sigma === rowOf(thread, w - 1).sigma
    before.push(one)
    after.push(smooth ? one : addSurfaceVertex(thread, theta, radius, z, w))
  }
  return { low, high: columnEnd(thread, theta, last + 1, half), before, after }
}

/** Row w is the first one beyond the end plane; the profile crosses it between that row and its neighbour. */
function columnEnd(thread: Thread, theta: number, w: number, z: number): End {
  const inside = z > 0 ? w - 1 : w + 1
  const from = rowZ(thread, theta, inside)
  const part = (z - from) / (rowZ(thread, theta, w) - from)
  const radius = rowOf(thread, inside).radius
  const r = radius + part * (rowOf(thread, w).radius - radius)
  const shaft = thread.body.shaftRadius
  const c = Math.cos(theta)
  const s = Math.sin(theta)
  const out = Math.sign(z)
  return {
    row: w,
    before: addSurfaceVertex(thread, theta, r, z, w - 1),
    after: addSurfaceVertex(thread, theta, r, z, w),
    onPlane: addVertex(thread.writer, r * c, r * s, z, 0, 0, out),
    shaftOnPlane: addVertex(thread.writer, shaft * c, shaft * s, z, 0, 0, out),
  }
}

/**
 * Vertex of row w for the strip on its +z side (`after`) or -z side; beyond an end it is one on the end
 * plane.
 */
function vertexAt(column: Column, w: number, after: boolean): number {
  const { low, high } = column
  if (w < low.row) return low.shaftOnPlane
  if (w > high.row) return high.shaftOnPlane
  if (w === low.row) return after ? low.after : low.before
  if (w === high.row) return after ? high.after : high.before
  return (after ? column.after : column.before)[w - low.row - 1]!
}

/** The same for a triangle that lies in the end plane. */
const planeVertex = ({ low, high }: Column, w: number, end: 'low' | 'high'): number => {
  if (end === 'low') return w < low.row ? low.shaftOnPlane : low.onPlane
  return w > high.row ? high.shaftOnPlane : high.onPlane
}

const endAt = ({ low, high }: Column, w: number): 'low' | 'high' | null =>
  w <= low.row ? 'low' : w >= high.row ? 'high' : null

/** Fills the strip from one column to the next, whose rows count from `shift` less. */
function joinColumns(thread: Thread, left: Column, right: Column, shift: number): void {
  const first = Math.min(left.low.row, right.low.row - shift) - 1
  const last = Math.max(left.high.row, right.high.row - shift)
  for (let w = first; w <= last; w++) {
    const corners = [
      { column: left, w },
      { column: right, w: w + shift },
      { column: right, w: w + shift + 1 },
      { column: left, w: w + 1 },
    ] as const
    const ends = corners.map(({ column: of, w: row }) => endAt(of, row))
    // Where three corners are on the end plane the cut must run between the two that are on the thread's
    // edge.
    const rising = ends[1] !== null && ends[3] !== null
    const split = rising ? [0, 1, 3, 1, 2, 3] : [0, 1, 2, 0, 2, 3]
    for (let t = 0; t < 6; t += 3) addCorners(thread.writer, corners, ends, split.slice(t, t + 3))
  }
}

function addCorners(
  writer: MeshWriter,
  corners: readonly { readonly column: Column; readonly w: number }[],
  ends: readonly ('low' | 'high' | null)[],
  which: readonly number[],
): void {
  const end = ends[which[0]!]!
  const flat = end !== null && which.every((i) => ends[i] === end)
  const ids = which.map((i) => {
    const { column: of, w: row } = corners[i]!
    return flat ? planeVertex(of, row, end) : vertexAt(of, row, i === 0 || i === 1)
  })
  const [a = 0, b = 0, c = 0] = ids
  if (a !== b && b !== c && c !== a) addTriangle(writer, a, b, c)
}

function addStub(thread: Thread, columns: readonly Column[], end: 'low' | 'high'): void {
  const { writer, body } = thread
  const out = end === 'high' ? 1 : -1
  const from = (out * body.threadLength) / 2
  const to = from + out * body.stubLength
  const n = columns.length
  const first = writer.vertices
  for (let j = 0; j < n; j++) {
    const c = Math.cos((2 * Math.PI * j) / n)
    const s = Math.sin((2 * Math.PI * j) / n)
    const r = body.shaftRadius
    addVertex(writer, r * c, r * s, from, c, s, 0)
    addVertex(writer, r * c, r * s, to, c, s, 0)
    addVertex(writer, r * c, r * s, to, 0, 0, out)
  }
  const centre = addVertex(writer, 0, 0, to, 0, 0, out)
  const facing = (a: number, b: number, c: number) =>
    out > 0 ? addTriangle(writer, a, b, c) : addTriangle(writer, a, c, b)
  for (let j = 0; j < n; j++) {
    const a = first + 3 * j
    const b = first + 3 * ((j + 1) % n)
    facing(a, b, b + 1)
    facing(a, b + 1, a + 1)
    facing(a + 2, b + 2, centre)
  }
}
