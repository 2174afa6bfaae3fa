/** Small solids with a substance, placed and joined into one geometry a part. All lengths in mm. */
import { BufferAttribute, BufferGeometry, Euler, Matrix4 } from 'three'
import { SUBSTANCE_NAMES, type SubstanceName } from '../material/substances.ts'

export interface Piece {
  readonly substance: SubstanceName
  readonly geometry: BufferGeometry
}

export interface Place {
  readonly x?: number
  readonly y?: number
  readonly z?: number
  readonly aboutX?: number
  readonly aboutY?: number
  readonly aboutZ?: number
}

/** Without texture places, which no substance uses. */
export function solid(positions: Float32Array, normals: Float32Array, indices: Uint32Array): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setAttribute('normal', new BufferAttribute(normals, 3))
  return geometry.setIndex(new BufferAttribute(indices, 1))
}

export const piece = (substance: SubstanceName, geometry: BufferGeometry, place?: Place): Piece => ({
  substance,
  geometry: place === undefined ? geometry : placed(geometry, place),
})

/** Turns each triple by the rotation in `m`, column by column, and moves it. */
function move(
  values: ArrayLike<number> & { [n: number]: number },
  m: readonly number[],
  by: Required<Offset>,
): void {
  for (let at = 0; at < values.length; at += 3) {
    const [x, y, z] = [values[at]!, values[at + 1]!, values[at + 2]!]
    values[at] = m[0]! * x + m[4]! * y + m[8]! * z + by.x
    values[at + 1] = m[1]! * x + m[5]! * y + m[9]! * z + by.y
    values[at + 2] = m[2]! * x + m[6]! * y + m[10]! * z + by.z
  }
}

type Offset = Pick<Place, 'x' | 'y' | 'z'>
const NOWHERE: Required<Offset> = { x: 0, y: 0, z: 0 }

/** Turns about x, then y, then z, then moves. */
export function placed(geometry: BufferGeometry, place: Place): BufferGeometry {
  const { x = 0, y = 0, z = 0, aboutX = 0, aboutY = 0, aboutZ = 0 } = place
  const m = new Matrix4().makeRotationFromEuler(new Euler(aboutX, aboutY, aboutZ, 'ZYX')).elements
  move(geometry.getAttribute('position').array, m, { x, y, z })
  if (aboutX !== 0 || aboutY !== 0 || aboutZ !== 0) move(geometry.getAttribute('normal').array, m, NOWHERE)
  return geometry
}

type Outline = readonly (readonly [number, number])[]

/** A full cylinder along z, from back to front. */
export const rodZ = (radius: number, back: number, front: number, segments: number): BufferGeometry =>
  turnedZ(rodOutline(radius, back, front), segments)

/** A full cylinder along y, from bottom to top. */
export const rodY = (radius: number, bottom: number, top: number, segments: number): BufferGeometry =>
  turnedY(rodOutline(radius, bottom, top), segments)

const rodOutline = (radius: number, from: number, to: number): Outline => [
  [0, from],
  [radius, from],
  [radius, to],
  [0, to],
]

/** A body turned about y, with sharp edges between the straight stretches of its outline [radius, height]. */
export function turnedY(outline: Outline, segments: number, from = 0, angle = 2 * Math.PI): BufferGeometry {
  const around = Math.max(1, Math.floor(segments))
  const bands = outline.length - 1
  const positions = new Float32Array(6 * bands * (around + 1))
  const normals = new Float32Array(positions.length)
  const indices = new Uint32Array(6 * bands * around)
  let vertex = 0
  let corner = 0
  for (let band = 0; band < bands; band++) {
    const [r, y] = outline[band]!
    const [nextR, nextY] = outline[band + 1]!
    const length = Math.hypot(nextR - r, nextY - y) || 1
    const out = (nextY - y) / length
    const up = (r - nextR) / length
    for (let i = 0; i <= around; i++) {
      const turn = from + (angle * i) / around
      const [s, c] = [Math.sin(turn), Math.cos(turn)]
      for (let end = 0; end < 2; end++) {
        const at = 3 * (vertex + 2 * i + end)
        const radius = end === 0 ? r : nextR
        positions[at] = radius * s
        positions[at + 1] = end === 0 ? y : nextY
        positions[at + 2] = radius * c
        normals[at] = out * s
        normals[at + 1] = up
        normals[at + 2] = out * c
      }
      if (i === around) continue
      const a = vertex + 2 * i
      indices.set([a, a + 2, a + 1, a + 3, a + 1, a + 2], corner)
      corner += 6
    }
    vertex += 2 * (around + 1)
  }
  return solid(positions, normals, indices)
}

/** A body turned about z; the outline is [radius, z], from the back of the axis round to the front. */
export const turnedZ = (outline: Outline, segments: number, from = 0, angle = 2 * Math.PI): BufferGeometry =>
  placed(turnedY(outline, segments, from, angle), { aboutX: Math.PI / 2 })

/** A ring along z with a small chamfer on its edges. */
export function ringZ(
  inner: number,
  outer: number,
  back: number,
  front: number,
  segments: number,
): BufferGeometry {
  const c = Math.min(0.12 * (outer - inner), 0.12 * (front - back))
  return turnedZ(
    [
      [inner, front],
      [inner, back],
      [outer - c, back],
      [outer, back + c],
      [outer, front - c],
      [outer - c, front],
      [inner, front],
    ],
    segments,
  )
}

export function box(width: number, height: number, depth: number): BufferGeometry {
  const half = [width / 2, height / 2, depth / 2] as const
  const positions = new Float32Array(72)
  const normals = new Float32Array(72)
  const indices = new Uint32Array(36)
  for (let face = 0; face < 6; face++) {
    const axis = face >> 1
    const side = face % 2 === 0 ? 1 : -1
    const [u, v] = side > 0 ? [(axis + 1) % 3, (axis + 2) % 3] : [(axis + 2) % 3, (axis + 1) % 3]
    for (let n = 0; n < 4; n++) {
      const at = 3 * (4 * face + n)
      positions[at + axis] = side * half[axis]!
      positions[at + u] = (n === 1 || n === 2 ? 1 : -1) * half[u]!
      positions[at + v] = (n > 1 ? 1 : -1) * half[v]!
      normals[at + axis] = side
    }
    const a = 4 * face
    indices.set([a, a + 1, a + 2, a, a + 2, a + 3], 6 * face)
  }
  return solid(positions, normals, indices)
}

const indexCount = (geometry: BufferGeometry): number =>
  geometry.index?.count ?? geometry.getAttribute('position').count

/** One geometry of many, with positions and normals; the parts are let go. */
export function joined(
  geometries: readonly BufferGeometry[],
  substances?: readonly SubstanceName[],
): BufferGeometry {
  const vertices = geometries.reduce((sum, g) => sum + g.getAttribute('position').count, 0)
  const positions = new Float32Array(3 * vertices)
  const normals = new Float32Array(3 * vertices)
  const numbers = new Float32Array(vertices)
  const indices = new Uint32Array(geometries.reduce((sum, g) => sum + indexCount(g), 0))
  let vertex = 0
  let corner = 0
  geometries.forEach((geometry, at) => {
    const position = geometry.getAttribute('position')
    const name = substances?.[at]
    positions.set(position.array, 3 * vertex)
    normals.set(geometry.getAttribute('normal').array, 3 * vertex)
    if (name !== undefined) numbers.fill(SUBSTANCE_NAMES.indexOf(name), vertex, vertex + position.count)
    const count = indexCount(geometry)
    const own = geometry.index?.array
    for (let i = 0; i < count; i++) indices[corner + i] = vertex + (own === undefined ? i : own[i]!)
    vertex += position.count
    corner += count
    geometry.dispose()
  })
  const whole = new BufferGeometry()
  whole.setAttribute('position', new BufferAttribute(positions, 3))
  whole.setAttribute('normal', new BufferAttribute(normals, 3))
  if (substances !== undefined) whole.setAttribute('substance', new BufferAttribute(numbers, 1))
  whole.setIndex(new BufferAttribute(indices, 1))
  return whole
}

/** The geometry of one part: one draw call, however many substances. */
export const part = (pieces: readonly Piece[]): BufferGeometry =>
  joined(
    pieces.map(({ geometry }) => geometry),
    pieces.map(({ substance }) => substance),
  )
