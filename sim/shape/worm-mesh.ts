/**
 * The worm as a closed surface: a true helicoid thread, cut off square at both ends, with a stub of shaft on
 * each side. Axis along z; at zero turns the middle of a thread stands at +x in the plane z = 0.
 *
 * The thread is a grid of columns (angles theta) and rows (places along the thread's profile). One turn on, a
 * row is the row one lead further, so the grid closes on itself.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { type Detail, wormDetail } from './detail.ts'
import { type Column, endAt, type EndName, planeVertex, threadColumn, vertexAt } from './thread-column.ts'
import { type Thread, threadOf } from './thread-rows.ts'
import { addTriangle, addVertex, finishedMesh, type MeshWriter, type TriangleMesh } from './triangle-mesh.ts'

export function wormMesh(gearing: GearNumbers, detail: Detail): TriangleMesh {
  const thread = threadOf(gearing, wormDetail(gearing.wheelTeeth, detail))
  const columns = Array.from({ length: thread.columns }, (_, j) => threadColumn(thread, j))
  for (let j = 0; j < columns.length; j++) {
    const wraps = j + 1 === columns.length
    joinColumns(thread.writer, columns[j]!, columns[wraps ? 0 : j + 1]!, wraps ? thread.rowsPerTurn : 0)
  }
  addStub(thread, 'low')
  addStub(thread, 'high')
  return finishedMesh(thread.writer)
}

/** Fills the strip from one column to the next, whose rows count from `shift` less. */
function joinColumns(writer: MeshWriter, left: Column, right: Column, shift: number): void {
  const first = Math.min(left.low.row, right.low.row - shift) - 1
  const last = Math.max(left.high.row, right.high.row - shift)
  const inside = Math.max(left.low.row, right.low.row - shift) + 1
  const outside = Math.min(left.high.row, right.high.row - shift) - 1
  for (let w = first; w <= last; w++) {
    if (w < inside || w >= outside) {
      addEndQuad(writer, left, right, w, shift)
      continue
    }
    const a = left.after[w - left.low.row - 1]!
    const b = right.after[w + shift - right.low.row - 1]!
    const c = right.before[w + shift - right.low.row]!
    const d = left.before[w - left.low.row]!
    addTriangle(writer, a, b, c)
    addTriangle(writer, a, c, d)
  }
}

interface Corner {
  readonly column: Column
  readonly w: number
}

/** Two triangles of which some corner is on an end plane or beyond it. */
function addEndQuad(writer: MeshWriter, left: Column, right: Column, w: number, shift: number): void {
  const corners: readonly Corner[] = [
    { column: left, w },
    { column: right, w: w + shift },
    { column: right, w: w + shift + 1 },
    { column: left, w: w + 1 },
  ]
  const ends = corners.map(({ column, w: row }) => endAt(column, row))
  // Where three corners are on the end plane the cut must run between the two that are on the thread's edge.
  const rising = ends[1] !== null && ends[3] !== null
  const split = rising ? [0, 1, 3, 1, 2, 3] : [0, 1, 2, 0, 2, 3]
  for (let t = 0; t < 6; t += 3) addCorners(writer, corners, ends, split.slice(t, t + 3))
}

function addCorners(
  writer: MeshWriter,
  corners: readonly Corner[],
  ends: readonly (EndName | null)[],
  which: readonly number[],
): void {
  const end = ends[which[0]!]!
  const flat = end !== null && which.every((i) => ends[i] === end)
  const ids = which.map((i) => {
    const { column, w } = corners[i]!
    return flat ? planeVertex(column, w, end) : vertexAt(column, w, i === 0 || i === 1)
  })
  const [a = 0, b = 0, c = 0] = ids
  if (a !== b && b !== c && c !== a) addTriangle(writer, a, b, c)
}

function addStub({ writer, body, columns: n }: Thread, end: EndName): void {
  const out = end === 'high' ? 1 : -1
  const from = (out * body.threadLength) / 2
  const to = from + out * body.stubLength
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
