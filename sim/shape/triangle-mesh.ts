/** A closed surface as triangles, counter-clockwise seen from outside; positions in mm, unit normals. */
export interface TriangleMesh {
  readonly positions: Float32Array
  readonly normals: Float32Array
  readonly indices: Uint32Array
}

/** Fills a mesh; grows where its size was taken too small beforehand. */
export interface MeshWriter {
  positions: Float32Array
  normals: Float32Array
  indices: Uint32Array
  vertices: number
  corners: number
}

export const meshWriter = (vertices: number, triangles: number): MeshWriter => ({
  positions: new Float32Array(3 * vertices),
  normals: new Float32Array(3 * vertices),
  indices: new Uint32Array(3 * triangles),
  vertices: 0,
  corners: 0,
})

function doubledFloats(from: Float32Array): Float32Array {
  const grown = new Float32Array(2 * from.length)
  grown.set(from)
  return grown
}

function doubledIndices(from: Uint32Array): Uint32Array {
  const grown = new Uint32Array(2 * from.length)
  grown.set(from)
  return grown
}

/** Adds a vertex and gives its number. The normal need not have unit length, but must not be zero. */
export function addVertex(
  w: MeshWriter,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
): number {
  const at = 3 * w.vertices
  if (at + 3 > w.positions.length) {
    w.positions = doubledFloats(w.positions)
    w.normals = doubledFloats(w.normals)
  }
  const scale = 1 / Math.sqrt(nx * nx + ny * ny + nz * nz)
  w.positions[at] = x
  w.positions[at + 1] = y
  w.positions[at + 2] = z
  w.normals[at] = nx * scale
  w.normals[at + 1] = ny * scale
  w.normals[at + 2] = nz * scale
  return w.vertices++
}

export function addTriangle(w: MeshWriter, a: number, b: number, c: number): void {
  if (w.corners + 3 > w.indices.length) w.indices = doubledIndices(w.indices)
  w.indices[w.corners++] = a
  w.indices[w.corners++] = b
  w.indices[w.corners++] = c
}

const shortened = <Values extends Float32Array | Uint32Array>(values: Values, length: number): Values =>
  values.length === length ? values : (values.slice(0, length) as Values)

export const finishedMesh = (w: MeshWriter): TriangleMesh => ({
  positions: shortened(w.positions, 3 * w.vertices),
  normals: shortened(w.normals, 3 * w.vertices),
  indices: shortened(w.indices, w.corners),
})
