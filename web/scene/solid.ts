/** Small solids with a substance, placed and joined into one geometry a part. All lengths in mm. */
import {
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  CylinderGeometry,
  ExtrudeGeometry,
  LatheGeometry,
  Matrix4,
  Path,
  Quaternion,
  Euler,
  Shape,
  Vector2,
  Vector3,
} from 'three'
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

export const piece = (substance: SubstanceName, geometry: BufferGeometry, place?: Place): Piece => ({
  substance,
  geometry: place === undefined ? geometry : placed(geometry, place),
})

/** Turns about x, then y, then z, then moves. */
export function placed(geometry: BufferGeometry, place: Place): BufferGeometry {
  const { x = 0, y = 0, z = 0, aboutX = 0, aboutY = 0, aboutZ = 0 } = place
  const turned = new Quaternion().setFromEuler(new Euler(aboutX, aboutY, aboutZ, 'ZYX'))
  return geometry.applyMatrix4(new Matrix4().compose(new Vector3(x, y, z), turned, new Vector3(1, 1, 1)))
}

/** A full cylinder along z, from back to front. */
export const rodZ = (radius: number, back: number, front: number, segments: number): BufferGeometry =>
  turnedZ(
    [
      [0, back],
      [radius, back],
      [radius, front],
      [0, front],
    ],
    segments,
  )

/** A full cylinder along y, from bottom to top. */
export const rodY = (radius: number, bottom: number, top: number, segments: number): BufferGeometry =>
  new CylinderGeometry(radius, radius, top - bottom, segments).translate(0, (top + bottom) / 2, 0)

/** A body turned about y, with sharp edges between the straight stretches of its outline [radius, height]. */
export function turnedY(
  outline: readonly (readonly [number, number])[],
  segments: number,
  from = 0,
  angle = 2 * Math.PI,
) {
  const lathes: BufferGeometry[] = []
  for (let i = 0; i + 1 < outline.length; i++) {
    const [start, end] = [outline[i], outline[i + 1]]
    if (start === undefined || end === undefined) continue
    lathes.push(new LatheGeometry([new Vector2(...start), new Vector2(...end)], segments, from, angle))
  }
  return joined(lathes)
}

/** A body turned about z; the outline is [radius, z], from the back of the axis round to the front. */
export const turnedZ = (
  outline: readonly (readonly [number, number])[],
  segments: number,
  from = 0,
  angle = 2 * Math.PI,
): BufferGeometry => turnedY(outline, segments, from, angle).rotateX(Math.PI / 2)

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

export const box = (width: number, height: number, depth: number): BufferGeometry =>
  new BoxGeometry(width, height, depth)

/** A flat shape in x-y, made `depth` thick along z from `back`. */
export const plate = (shape: Shape, back: number, depth: number, curveSegments: number): BufferGeometry =>
  new ExtrudeGeometry(shape, { depth, bevelEnabled: false, curveSegments }).translate(0, 0, back)

export function polygon(points: readonly (readonly [number, number])[]): Shape {
  const shape = new Shape()
  points.forEach(([x, y], i) => (i === 0 ? shape.moveTo(x, y) : shape.lineTo(x, y)))
  shape.closePath()
  return shape
}

export function circularHole(shape: Shape, x: number, y: number, radius: number): Shape {
  const hole = new Path()
  hole.absarc(x, y, radius, 0, 2 * Math.PI, true)
  shape.holes.push(hole)
  return shape
}

/** A rectangle with round corners, seen from above: x to the right, y away from the viewer (-z). */
export function roundedRectangle(x0: number, y0: number, x1: number, y1: number, r: number): Shape {
  const shape = new Shape()
  shape.moveTo(x0 + r, y0)
  shape.lineTo(x1 - r, y0)
  shape.absarc(x1 - r, y0 + r, r, -Math.PI / 2, 0, false)
  shape.lineTo(x1, y1 - r)
  shape.absarc(x1 - r, y1 - r, r, 0, Math.PI / 2, false)
  shape.lineTo(x0 + r, y1)
  shape.absarc(x0 + r, y1 - r, r, Math.PI / 2, Math.PI, false)
  shape.lineTo(x0, y0 + r)
  shape.absarc(x0 + r, y0 + r, r, Math.PI, 1.5 * Math.PI, false)
  return shape
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
    for (let i = 0; i < count; i++) indices[corner + i] = vertex + (geometry.index?.array[i] ?? i)
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
