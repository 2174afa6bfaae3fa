/**
 * The parts of a print, each standing on the bed on its own: the worm upright on its shaft, the wheels flat on
 * their hubs, apart from each other.
 */
import type { TriangleMesh } from '../../sim/shape/triangle-mesh.ts'
import { type WeldedMesh, weldedMesh } from '../../sim/shape/welded-mesh.ts'
import { wheelMesh } from '../../sim/shape/wheel-mesh.ts'
import { wormMesh } from '../../sim/shape/worm-mesh.ts'
import type { PrintOrder } from './print-order.ts'

export type Point = readonly [x: number, y: number, z: number]

export interface PrintBody {
  readonly name: string
  /** Its least x, y and z are 0. */
  readonly mesh: WeldedMesh
  /** Along x, y, z [mm] */
  readonly size: Point
}

export interface PrintItem {
  readonly body: PrintBody
  /** Where its corner stands on the bed [mm] */
  readonly x: number
  readonly y: number
}

export interface PrintModel {
  readonly bodies: readonly PrintBody[]
  readonly items: readonly PrintItem[]
}

/** Room between parts on the bed [mm], so that no two of them stick together (common practice). */
const GAP = 5

/** Words of what is being done now. */
export type Tell = (progress: string) => void

export function printModel({ gearing, what, fineness }: PrintOrder, tell: Tell): PrintModel {
  const bodies: PrintBody[] = []
  if (what !== 'wheel') {
    tell('Cutting the worm')
    bodies.push(standing('Worm', wormMesh(gearing, fineness), (x, y, z) => [x, y, z]))
  }
  if (what !== 'worm') {
    tell('Cutting the wheel')
    bodies.push(standing('Wheel', wheelMesh(gearing, fineness), (x, y, z) => [x, -z, y]))
  }
  const laid = what === 'set' ? [...bodies, bodies[1]!] : bodies
  return { bodies, items: sideBySide(laid) }
}

/** The mesh turned as told and moved into the corner of the axes. */
function standing(name: string, mesh: TriangleMesh, turned: (...p: Point) => Point): PrintBody {
  const positions = new Float32Array(mesh.positions.length)
  for (let i = 0; i < positions.length; i += 3) {
    positions.set(turned(mesh.positions[i]!, mesh.positions[i + 1]!, mesh.positions[i + 2]!), i)
  }
  const { least, most } = extent(positions)
  const moved = movedPositions(positions, [-least[0], -least[1], -least[2]])
  return {
    name,
    mesh: weldedMesh({ ...mesh, positions: moved }),
    size: [most[0] - least[0], most[1] - least[1], most[2] - least[2]],
  }
}

function extent(positions: Float32Array): { readonly least: Point; readonly most: Point } {
  const least: [number, number, number] = [Infinity, Infinity, Infinity]
  const most: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (let i = 0; i < positions.length; i++) {
    const axis = (i % 3) as 0 | 1 | 2
    least[axis] = Math.min(least[axis], positions[i]!)
    most[axis] = Math.max(most[axis], positions[i]!)
  }
  return { least, most }
}

export const movedPositions = (positions: Float32Array, [x, y, z]: Point): Float32Array =>
  positions.map((value, i) => value + (i % 3 === 0 ? x : i % 3 === 1 ? y : z))

function sideBySide(bodies: readonly PrintBody[]): PrintItem[] {
  const deepest = Math.max(...bodies.map(({ size }) => size[1]))
  let x = 0
  return bodies.map((body) => {
    const item = { body, x, y: (deepest - body.size[1]) / 2 }
    x += body.size[0] + GAP
    return item
  })
}

export interface PrintMeasure {
  readonly triangles: number
  /** Of everything as it lies on the bed [mm] */
  readonly size: Point
  /** [mm3] */
  readonly volume: number
}

export function printMeasure({ items }: PrintModel): PrintMeasure {
  const last = items.at(-1)!
  return {
    triangles: items.reduce((sum, { body }) => sum + body.mesh.indices.length / 3, 0),
    size: [
      last.x + last.body.size[0],
      Math.max(...items.map(({ body }) => body.size[1])),
      Math.max(...items.map(({ body }) => body.size[2])),
    ],
    volume: items.reduce((sum, { body }) => sum + enclosedVolume(body.mesh), 0),
  }
}

/** Volume inside a closed surface, by the divergence theorem: sum of a . (b x c)/6. */
function enclosedVolume({ positions: p, indices }: WeldedMesh): number {
  let sum = 0
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [3 * indices[t]!, 3 * indices[t + 1]!, 3 * indices[t + 2]!]
    sum +=
      p[a]! * (p[b + 1]! * p[c + 2]! - p[b + 2]! * p[c + 1]!) +
      p[a + 1]! * (p[b + 2]! * p[c]! - p[b]! * p[c + 2]!) +
      p[a + 2]! * (p[b]! * p[c + 1]! - p[b + 1]! * p[c]!)
  }
  return sum / 6
}
