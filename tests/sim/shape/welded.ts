import type { TriangleMesh } from '../../../sim/shape/triangle-mesh.ts'

export interface Topology {
  readonly triangles: number
  readonly finite: boolean
  /** Directed edges that are there twice, or whose reverse is missing: 0 on a closed, oriented surface. */
  readonly faultyEdges: number
  /** Vertices - edges + faces of the welded surface: 2 for a ball, 0 for a ring. */
  readonly euler: number
  /** Connected parts */
  readonly pieces: number
  /** [mm3], positive when the outside is outside */
  readonly volume: number
  /** Part of the triangles whose first normal looks into the solid */
  readonly inwardNormals: number
  /** Largest distance of a normal's length from 1 */
  readonly normalError: number
}

/** Vertices at the same place, to the last bit, become one. */
function weld({ positions }: TriangleMesh): { ids: Int32Array; count: number } {
  const vertices = positions.length / 3
  const order = Uint32Array.from({ length: vertices }, (_, i) => i)
  const difference = (a: number, b: number) =>
    positions[3 * a]! - positions[3 * b]! ||
    positions[3 * a + 1]! - positions[3 * b + 1]! ||
    positions[3 * a + 2]! - positions[3 * b + 2]!
  order.sort(difference)
  const ids = new Int32Array(vertices)
  let count = 0
  for (let n = 0; n < vertices; n++) {
    if (n > 0 && difference(order[n - 1]!, order[n]!) !== 0) count++
    ids[order[n]!] = count
  }
  return { ids, count: count + 1 }
}

function pieceCount(parent: Int32Array): number {
  return parent.reduce((pieces, above, i) => pieces + (above === i ? 1 : 0), 0)
}

function root(parent: Int32Array, i: number): number {
  let at = i
  while (parent[at] !== at) at = parent[at]!
  parent[i] = at
  return at
}

export function topology(mesh: TriangleMesh): Topology {
  const { positions, normals, indices } = mesh
  const { ids, count } = weld(mesh)
  const forward = new Float64Array(indices.length)
  const backward = new Float64Array(indices.length)
  const parent = Int32Array.from({ length: count }, (_, i) => i)
  let volume = 0
  let inward = 0
  let edges = 0
  for (let t = 0; t < indices.length; t += 3) {
    const { signedVolume, alignment } = measured(positions, normals, indices, t)
    volume += signedVolume
    if (alignment < 0) inward++
    const a = ids[indices[t]!]!
    const b = ids[indices[t + 1]!]!
    const c = ids[indices[t + 2]!]!
    if (a === b || b === c || c === a) continue
    for (let i = 0; i < 3; i++) {
      const from = i === 0 ? a : i === 1 ? b : c
      const to = i === 0 ? b : i === 1 ? c : a
      forward[edges] = from * count + to
      backward[edges++] = to * count + from
      parent[root(parent, from)] = root(parent, to)
    }
  }
  return {
    triangles: indices.length / 3,
    finite: positions.every(Number.isFinite) && normals.every(Number.isFinite),
    faultyEdges: unpairedEdges(forward.subarray(0, edges).sort(), backward.subarray(0, edges).sort()),
    euler: count - edges / 2 + edges / 3,
    pieces: pieceCount(parent),
    volume,
    inwardNormals: inward / (indices.length / 3),
    normalError: largestLengthError(normals),
  }
}

/**
 * Directed edges that are there more than once, or do not come as often one way as the other; both lists
 * sorted.
 */
export function unpairedEdges(forward: Float64Array, backward: Float64Array): number {
  let faulty = 0
  for (let i = 0; i < forward.length; i++) {
    if (forward[i] !== backward[i] || (i > 0 && forward[i] === forward[i - 1])) faulty++
  }
  return faulty
}

function measured(positions: Float32Array, normals: Float32Array, indices: Uint32Array, t: number) {
  const [a, b, c] = [3 * indices[t]!, 3 * indices[t + 1]!, 3 * indices[t + 2]!]
  const [px, py, pz] = [positions[a]!, positions[a + 1]!, positions[a + 2]!]
  const [ux, uy, uz] = [positions[b]! - px, positions[b + 1]! - py, positions[b + 2]! - pz]
  const [vx, vy, vz] = [positions[c]! - px, positions[c + 1]! - py, positions[c + 2]! - pz]
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx]
  return {
    signedVolume: (px * nx + py * ny + pz * nz) / 6,
    alignment: nx * normals[a]! + ny * normals[a + 1]! + nz * normals[a + 2]!,
  }
}

function largestLengthError(normals: Float32Array): number {
  let worst = 0
  for (let i = 0; i < normals.length; i += 3) {
    worst = Math.max(worst, Math.abs(Math.hypot(normals[i]!, normals[i + 1]!, normals[i + 2]!) - 1))
  }
  return worst
}
