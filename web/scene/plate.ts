/** Flat shapes in x-y, and what is made of them by giving them a thickness along z. All lengths in mm. */
import { type BufferGeometry, Path, Shape, ShapeUtils, type Vector2 } from 'three'
import { joined, solid } from './solid.ts'

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

/** Contours of a shape: the outer one counter-clockwise, holes the other way. */
function contoursOf(shape: Shape, curveSegments: number): Vector2[][] {
  const { shape: outer, holes } = shape.extractPoints(curveSegments)
  const turned = (points: Vector2[], clockwise: boolean) =>
    ShapeUtils.isClockWise(points) === clockwise ? points : points.reverse()
  return [turned(outer, false), ...holes.map((hole) => turned(hole, true))].map(open)
}

/** Without the last point where it is the first one again. */
const open = (points: Vector2[]): Vector2[] =>
  points.length > 1 && points[0]!.equals(points.at(-1)!) ? points.slice(0, -1) : points

/** The walls of a flat shape in x-y that is made `depth` thick along z from `back`. */
export const walls = (shape: Shape, back: number, depth: number, curveSegments: number): BufferGeometry =>
  wallsOf(contoursOf(shape, curveSegments), back, depth)

function wallsOf(contours: readonly Vector2[][], back: number, depth: number): BufferGeometry {
  const sides = contours.reduce((sum, { length }) => sum + length, 0)
  const positions = new Float32Array(12 * sides)
  const normals = new Float32Array(12 * sides)
  const indices = new Uint32Array(6 * sides)
  let side = 0
  for (const contour of contours) {
    for (let i = 0; i < contour.length; i++, side++) {
      const [a, b] = [contour[i]!, contour[(i + 1) % contour.length]!]
      const length = Math.hypot(b.x - a.x, b.y - a.y) || 1
      const at = 12 * side
      positions.set([a.x, a.y, back, b.x, b.y, back, b.x, b.y, back + depth, a.x, a.y, back + depth], at)
      for (let n = 0; n < 4; n++) {
        normals[at + 3 * n] = (b.y - a.y) / length
        normals[at + 3 * n + 1] = (a.x - b.x) / length
      }
      const first = 4 * side
      indices.set([first, first + 1, first + 2, first, first + 2, first + 3], 6 * side)
    }
  }
  return solid(positions, normals, indices)
}

/** Both faces of the same. */
function lidsOf(contours: readonly Vector2[][], back: number, depth: number): BufferGeometry {
  const [outer = [], ...holes] = contours
  const triangles = ShapeUtils.triangulateShape(outer, holes)
  const points = contours.flat()
  const positions = new Float32Array(6 * points.length)
  const normals = new Float32Array(6 * points.length)
  const indices = new Uint32Array(6 * triangles.length)
  points.forEach(({ x, y }, n) => {
    positions.set([x, y, back], 3 * n)
    positions.set([x, y, back + depth], 3 * (n + points.length))
    normals[3 * n + 2] = -1
    normals[3 * (n + points.length) + 2] = 1
  })
  triangles.forEach(([a = 0, b = 0, c = 0], n) => {
    indices.set([c, b, a, a + points.length, b + points.length, c + points.length], 6 * n)
  })
  return solid(positions, normals, indices)
}

/** A flat shape in x-y, made `depth` thick along z from `back`. */
export function plate(shape: Shape, back: number, depth: number, curveSegments: number): BufferGeometry {
  const contours = contoursOf(shape, curveSegments)
  return joined([wallsOf(contours, back, depth), lidsOf(contours, back, depth)])
}
