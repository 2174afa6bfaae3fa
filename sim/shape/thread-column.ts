/**
 * The vertices of the worm's thread at one angle. Rows beyond an end plane fall together: the first one onto
 * the end plane, where the profile crosses it, all others onto the shaft.
 */
import { addThreadVertex, rowOf, rowZ, type Thread } from './thread-rows.ts'
import { addVertex } from './triangle-mesh.ts'

/** Where a column stops being thread, and the vertices there. */
interface End {
  /** The first row beyond the end plane */
  readonly row: number
  /** For the surfaces before and after it towards +z */
  readonly before: number
  readonly after: number
  readonly onPlane: number
  readonly shaftOnPlane: number
}

export type EndName = 'low' | 'high'

export interface Column {
  readonly low: End
  readonly high: End
  /** Vertices of the rows between the ends, for the surfaces before and after each */
  readonly before: readonly number[]
  readonly after: readonly number[]
}

export function threadColumn(thread: Thread, j: number): Column {
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
    const one = addThreadVertex(thread, theta, radius, z, w - 1)
    const smooth = sigma === rowOf(thread, w - 1).sigma
    before.push(one)
    after.push(smooth ? one : addThreadVertex(thread, theta, radius, z, w))
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
    before: addThreadVertex(thread, theta, r, z, w - 1),
    after: addThreadVertex(thread, theta, r, z, w),
    onPlane: addVertex(thread.writer, r * c, r * s, z, 0, 0, out),
    shaftOnPlane: addVertex(thread.writer, shaft * c, shaft * s, z, 0, 0, out),
  }
}

/**
 * Vertex of row w for the strip on its +z side (`after`) or -z side; beyond an end it is one on the end
 * plane.
 */
export function vertexAt(column: Column, w: number, after: boolean): number {
  const { low, high } = column
  if (w < low.row) return low.shaftOnPlane
  if (w > high.row) return high.shaftOnPlane
  if (w === low.row) return after ? low.after : low.before
  if (w === high.row) return after ? high.after : high.before
  return (after ? column.after : column.before)[w - low.row - 1]!
}

/** The same for a triangle that lies in the end plane. */
export const planeVertex = ({ low, high }: Column, w: number, end: EndName): number => {
  if (end === 'low') return w < low.row ? low.shaftOnPlane : low.onPlane
  return w > high.row ? high.shaftOnPlane : high.onPlane
}

export const endAt = ({ low, high }: Column, w: number): EndName | null =>
  w <= low.row ? 'low' : w >= high.row ? 'high' : null
