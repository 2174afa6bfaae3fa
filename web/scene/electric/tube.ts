/** A round wire along a line of straight stretches, with its corners rounded off. All lengths in mm. */
import type { BufferGeometry } from 'three'
import type { Point } from '../../../sim/pose/electric-layout.ts'
import { solid } from '../solid.ts'

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const along = (a: Point, b: Point, t: number): Point => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
  a[2] + t * (b[2] - a[2]),
]
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
const unit = (a: Point): Point => {
  const length = Math.hypot(...a) || 1
  return [a[0] / length, a[1] / length, a[2] / length]
}
const lengthOf = (a: Point, b: Point): number => Math.hypot(...minus(a, b))

const BEND_POINTS = 5
/** Of a stretch that a bend at its end takes at most, so that two bends leave some of it */
const MOST_OF_STRETCH = 0.42

/** The same line with each corner replaced by a parabola that begins `bend` before it, or not quite half way. */
export function rounded(points: readonly Point[], bend: number): Point[] {
  const line: Point[] = [points[0]!]
  for (let n = 1; n < points.length - 1; n++) {
    const [before, corner, after] = [points[n - 1]!, points[n]!, points[n + 1]!]
    const [back, on] = [lengthOf(corner, before), lengthOf(corner, after)]
    if (back === 0 || on === 0) continue
    const from = along(corner, before, Math.min(MOST_OF_STRETCH, bend / back))
    const to = along(corner, after, Math.min(MOST_OF_STRETCH, bend / on))
    for (let i = 0; i <= BEND_POINTS; i++) {
      const t = i / BEND_POINTS
      line.push(along(along(from, corner, t), along(corner, to, t), t))
    }
  }
  line.push(points.at(-1)!)
  return line
}

/** Open at its ends, which stand in other bodies. */
export function tube(line: readonly Point[], radius: number, sides: number): BufferGeometry {
  const rings = line.length
  const positions = new Float32Array(3 * rings * sides)
  const normals = new Float32Array(positions.length)
  const indices = new Uint32Array(6 * (rings - 1) * sides)
  let across: Point = [0, 1, 0]
  for (let ring = 0; ring < rings; ring++) {
    const way = unit(minus(line[Math.min(ring + 1, rings - 1)]!, line[Math.max(0, ring - 1)]!))
    const leaning = Math.abs(way[0] * across[0] + way[1] * across[1] + way[2] * across[2])
    const side = unit(cross(way, leaning > 0.95 ? [way[1], way[2], way[0]] : across))
    // Carried on from ring to ring, so that the tube does not twist.
    across = cross(side, way)
    for (let n = 0; n < sides; n++) {
      const angle = (2 * Math.PI * n) / sides
      const [c, s] = [Math.cos(angle), Math.sin(angle)]
      const at = 3 * (ring * sides + n)
      for (let axis = 0; axis < 3; axis++) {
        const out = c * side[axis]! + s * across[axis]!
        normals[at + axis] = out
        positions[at + axis] = line[ring]![axis]! + radius * out
      }
      if (ring + 1 === rings) continue
      const [a, b] = [ring * sides + n, ring * sides + ((n + 1) % sides)]
      indices.set([a, b + sides, b, a, a + sides, b + sides], 6 * (ring * sides + n))
    }
  }
  return solid(positions, normals, indices)
}
