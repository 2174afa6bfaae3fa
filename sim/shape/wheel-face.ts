/** A side face of the wheel, from the teeth in to the rim: a sector cut up once and turned round. */
import { polygonTriangles } from './ear-clipping.ts'
import { addTriangle } from './triangle-mesh.ts'
import { addRingVertex, addSpacePoint, type WheelInMaking } from './wheel-in-making.ts'

/** Corner of a sector: space that it belongs to, counted from the sector's own, and number there. */
type Corner = readonly [space: number, point: number]

/**
 * Number of the body's piece nearest to the start of a face's sector, so that face and body meet without a
 * twist.
 */
function bodyOffset({ surface, teeth, pieces }: WheelInMaking, j: number): number {
  const chi = surface.sections[j]!.chi[surface.rootStart]!
  return Math.round((chi * teeth * pieces) / (2 * Math.PI))
}

/** From root round a tooth to root, and back along the rim. */
function sectorOutline({ pieces, surface }: WheelInMaking): Corner[] {
  const { columns, rootStart: start } = surface
  const outline: Corner[] = []
  for (let i = start; i < columns; i++) outline.push([0, i])
  for (let i = 0; i <= start; i++) outline.push([1, i])
  for (let piece = pieces - 1; piece >= 0; piece--) outline.push([0, columns + piece])
  outline.push([-1, columns + pieces - 1])
  return outline
}

/** Twice the area that the outline goes round, positive when counter-clockwise from u to v. */
function outlineArea(u: readonly number[], v: readonly number[]): number {
  let area = 0
  for (let i = 0; i < u.length; i++) {
    const next = (i + 1) % u.length
    area += u[i]! * v[next]! - u[next]! * v[i]!
  }
  return area
}

/** Adds the points of plane j and of the rim for every sector, and gives the first vertex of each. */
function addFacePoints(wheel: WheelInMaking, j: number, side: 1 | -1): number[] {
  const { writer, teeth, pieces, body, surface } = wheel
  const offset = bodyOffset(wheel, j)
  const firsts: number[] = []
  for (let k = 0; k < teeth; k++) {
    firsts.push(writer.vertices)
    for (let i = 0; i < surface.columns; i++) addSpacePoint(wheel, j, i, k, 0, side, 0)
    for (let piece = 1; piece <= pieces; piece++) {
      addRingVertex(wheel, offset + k * pieces + piece, body.rimRadius, surface.sections[j]!.y, 0, side)
    }
  }
  return firsts
}

export function addFace(wheel: WheelInMaking, j: number, side: 1 | -1): void {
  const { writer, teeth } = wheel
  const firsts = addFacePoints(wheel, j, side)
  const outline = sectorOutline(wheel)
  const vertex = (n: number, k: number) => {
    const [space, point] = outline[n]!
    return firsts[(k + space + teeth) % teeth]! + point
  }
  const u = outline.map((_, n) => writer.positions[3 * vertex(n, 0) + 2]!)
  const v = outline.map((_, n) => writer.positions[3 * vertex(n, 0)]!)
  const orientation = outlineArea(u, v) > 0 ? 1 : -1
  const triangles = polygonTriangles(u, orientation > 0 ? v : v.map((x) => -x))
  for (let k = 0; k < teeth; k++) {
    for (let t = 0; t < triangles.length; t += 3) {
      const a = vertex(triangles[t]!, k)
      const b = vertex(triangles[t + 1]!, k)
      const c = vertex(triangles[t + 2]!, k)
      if (orientation === side) addTriangle(writer, a, b, c)
      else addTriangle(writer, a, c, b)
    }
  }
}
