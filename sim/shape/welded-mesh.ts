/** Turns a mesh for drawing, whose sharp edges have a vertex for each side, into one for printing. */
import type { TriangleMesh } from './triangle-mesh.ts'

/**
 * A closed surface in which every place is one vertex: each edge is shared by exactly two triangles.
 * Counter-clockwise seen from outside; positions in mm.
 */
export interface WeldedMesh {
  readonly positions: Float32Array
  readonly indices: Uint32Array
}

const FREE = 0xffffffff
/** Odd multipliers that spread the bits of three coordinates over a table (any large odd numbers do). */
const SPREAD = [0x9e3779b1, 0x85ebca77, 0xc2b2ae3d] as const

const hashOf = (x: number, y: number, z: number): number => {
  const mixed = Math.imul(x, SPREAD[0]) ^ Math.imul(y, SPREAD[1]) ^ Math.imul(z, SPREAD[2])
  return Math.imul(mixed ^ (mixed >>> 15), SPREAD[0]) >>> 0
}

function tableFor(vertices: number): Uint32Array {
  let size = 16
  while (size < 2 * vertices) size *= 2
  return new Uint32Array(size).fill(FREE)
}

/**
 * Vertices at the same place to the last bit of single precision, which is what printing files hold, become
 * one; triangles that have no area left because of it go.
 */
export function weldedMesh(mesh: TriangleMesh): WeldedMesh {
  const vertices = mesh.positions.length / 3
  const positions = new Float32Array(mesh.positions.length)
  const bits = new Uint32Array(positions.buffer)
  const table = tableFor(vertices)
  const ids = new Uint32Array(vertices)
  let count = 0
  for (let v = 0; v < vertices; v++) {
    const at = 3 * count
    // Adding 0 makes the two zeros one.
    for (let d = 0; d < 3; d++) positions[at + d] = mesh.positions[3 * v + d]! + 0
    const [x, y, z] = [bits[at]!, bits[at + 1]!, bits[at + 2]!]
    let slot = hashOf(x, y, z) & (table.length - 1)
    for (;;) {
      const found = table[slot]!
      if (found === FREE) {
        table[slot] = count
        ids[v] = count++
        break
      }
      if (bits[3 * found] === x && bits[3 * found + 1] === y && bits[3 * found + 2] === z) {
        ids[v] = found
        break
      }
      slot = (slot + 1) & (table.length - 1)
    }
  }
  return { positions: positions.slice(0, 3 * count), indices: weldedIndices(mesh.indices, ids) }
}

function weldedIndices(indices: Uint32Array, ids: Uint32Array): Uint32Array {
  const welded = new Uint32Array(indices.length)
  let corners = 0
  for (let t = 0; t < indices.length; t += 3) {
    const a = ids[indices[t]!]!
    const b = ids[indices[t + 1]!]!
    const c = ids[indices[t + 2]!]!
    if (a === b || b === c || c === a) continue
    welded[corners] = a
    welded[corners + 1] = b
    welded[corners + 2] = c
    corners += 3
  }
  return welded.slice(0, corners)
}
