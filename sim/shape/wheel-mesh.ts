/**
 * The throated wheel as a closed surface, the same for both sides, in its own frame: axis along y, the middle
 * of a tooth space on the ray towards -x, where the worm of the right wheel is. Edges at tip, faces and body
 * are sharp.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { type WheelBody, wheelBody } from './body.ts'
import { type Detail, type WheelDetail, wheelDetail } from './detail.ts'
import { polygonTriangles } from './ear-clipping.ts'
import {
  addTriangle,
  addVertex,
  finishedMesh,
  type MeshWriter,
  meshWriter,
  type TriangleMesh,
} from './triangle-mesh.ts'
import { type WheelSurface, wheelSurface } from './wheel-surface.ts'

/** Fewest sides of the round parts of a wheel. */
const LEAST_SIDES: Readonly<Record<Detail, number>> = { display: 40, distant: 24 }

interface Wheel {
  readonly writer: MeshWriter
  readonly teeth: number
  readonly level: WheelDetail
  readonly surface: WheelSurface
  readonly body: WheelBody
  /** Pieces of the body a tooth pitch */
  readonly pieces: number
}

export function wheelMesh(gearing: GearNumbers, detail: Detail): TriangleMesh {
  const teeth = gearing.wheelTeeth
  const level = wheelDetail(teeth, detail)
  const wheel: Wheel = {
    writer: meshWriter(),
    teeth,
    level,
    surface: wheelSurface(gearing, level),
    body: wheelBody(gearing),
    pieces: Math.max(level.body, Math.ceil(LEAST_SIDES[detail] / teeth)),
  }
  addSpaces(wheel)
  addLands(wheel)
  addFace(wheel, 0, -1)
  addFace(wheel, wheel.surface.sections.length - 1, 1)
  addBody(wheel)
  return finishedMesh(wheel.writer)
}

/** Adds point i of plane j in space k with a normal given in the frame of space 0. */
function addPoint(wheel: Wheel, j: number, i: number, k: number, nx: number, ny: number, nz: number): number {
  const { surface, teeth, writer } = wheel
  const section = surface.sections[j]!
  const chi = section.chi[i]! + (2 * Math.PI * (k % teeth)) / teeth
  const R = section.radius[i]!
  const turn = (2 * Math.PI * k) / teeth
  const c = Math.cos(turn)
  const s = Math.sin(turn)
  return addVertex(
    writer,
    -R * Math.cos(chi),
    section.y,
    R * Math.sin(chi),
    nx * c + nz * s,
    ny,
    nz * c - nx * s,
  )
}

/**
 * Joins a grid of vertices, rows apart by `stride`, with the outside towards the reader when columns run
 * right, rows up.
 */
function addGrid(writer: MeshWriter, first: number, rows: number, columns: number): void {
  for (let j = 0; j + 1 < rows; j++) {
    for (let i = 0; i + 1 < columns; i++) {
      const a = first + j * columns + i
      addTriangle(writer, a, a + 1, a + columns + 1)
      addTriangle(writer, a, a + columns + 1, a + columns)
    }
  }
}

function addSpaces(wheel: Wheel): void {
  const { sections, points, normals } = wheel.surface
  for (let k = 0; k < wheel.teeth; k++) {
    const first = wheel.writer.vertices
    for (let j = 0; j < sections.length; j++) {
      for (let i = 0; i < points; i++) {
        const n = 3 * (j * (points + 1) + i)
        addPoint(wheel, j, i, k, normals[n]!, normals[n + 1]!, normals[n + 2]!)
      }
    }
    addGrid(wheel.writer, first, sections.length, points)
  }
}

/** Slope of the tip over y, which tilts the normals of the lands into the throat. */
function tipSlope(wheel: Wheel, j: number): number {
  const { sections, points } = wheel.surface
  const below = sections[Math.max(0, j - 1)]!
  const above = sections[Math.min(sections.length - 1, j + 1)]!
  return (above.radius[points]! - below.radius[points]!) / (above.y - below.y)
}

function addLands(wheel: Wheel): void {
  const { sections, points } = wheel.surface
  for (let k = 0; k < wheel.teeth; k++) {
    const first = wheel.writer.vertices
    for (let j = 0; j < sections.length; j++) {
      const { chi } = sections[j]!
      const slope = tipSlope(wheel, j)
      for (const [i, space] of [[points - 1, k] as const, [points, k] as const, [0, k + 1] as const]) {
        addPoint(wheel, j, i, space, -Math.cos(chi[i]!), -slope, Math.sin(chi[i]!))
      }
    }
    addGrid(wheel.writer, first, sections.length, 3)
  }
}

/** First point of the root arc in a section, where the sectors of the side faces are cut apart. */
const rootStart = ({ surface, level }: Wheel): number => (surface.points - 1 - level.root) / 2

/**
 * Number of the body's piece nearest to the start of a face's sector, so that face and body meet without a
 * twist.
 */
const bodyOffset = (wheel: Wheel, j: number): number => {
  const chi = wheel.surface.sections[j]!.chi[rootStart(wheel)]!
  return Math.round((chi * wheel.teeth * wheel.pieces) / (2 * Math.PI))
}

const ringAngle = (wheel: Wheel, piece: number): number => {
  const sides = wheel.teeth * wheel.pieces
  return (2 * Math.PI * (((piece % sides) + sides) % sides)) / sides
}

function addRingVertex(wheel: Wheel, piece: number, R: number, y: number, nr: number, ny: number): number {
  const chi = ringAngle(wheel, piece)
  const c = -Math.cos(chi)
  const s = Math.sin(chi)
  return addVertex(wheel.writer, R * c, y, R * s, nr * c, ny, nr * s)
}

/**
 * Corners of a sector of a side face, from root round a tooth to root and back along the rim: space, then
 * point.
 */
function sectorOutline(wheel: Wheel): [space: number, point: number][] {
  const { pieces, surface } = wheel
  const start = rootStart(wheel)
  const outline: [number, number][] = []
  for (let i = start; i <= surface.points; i++) outline.push([0, i])
  for (let i = 0; i <= start; i++) outline.push([1, i])
  for (let piece = pieces; piece > 0; piece--) outline.push([0, surface.points + piece])
  outline.push([-1, surface.points + pieces])
  return outline
}

/** One side face from the teeth in to the rim: a sector cut up once and turned round. */
function addFace(wheel: Wheel, j: number, side: 1 | -1): void {
  const { writer, teeth, pieces, body, surface } = wheel
  const offset = bodyOffset(wheel, j)
  const firsts: number[] = []
  for (let k = 0; k < teeth; k++) {
    firsts.push(writer.vertices)
    for (let i = 0; i <= surface.points; i++) addPoint(wheel, j, i, k, 0, side, 0)
    for (let piece = 1; piece <= pieces; piece++) {
      addRingVertex(wheel, offset + k * pieces + piece, body.rimRadius, surface.sections[j]!.y, 0, side)
    }
  }
  const outline = sectorOutline(wheel)
  const corner = (n: number, k: number) => {
    const [space, point] = outline[n]!
    return firsts[(k + space + teeth) % teeth]! + point
  }
  const u = outline.map((_, n) => writer.positions[3 * corner(n, 0) + 2]!)
  const v = outline.map((_, n) => writer.positions[3 * corner(n, 0)]!)
  const orientation = outlineArea(u, v) > 0 ? 1 : -1
  const triangles = polygonTriangles(u, orientation > 0 ? v : v.map((x) => -x))
  for (let k = 0; k < teeth; k++) {
    for (let t = 0; t < triangles.length; t += 3) {
      const a = corner(triangles[t]!, k)
      const b = corner(triangles[t + 1]!, k)
      const c = corner(triangles[t + 2]!, k)
      if (orientation === side) addTriangle(writer, a, b, c)
      else addTriangle(writer, a, c, b)
    }
  }
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

/**
 * Rim, web, hub and bore: turned from the upper face inwards, down the bore and back out to the lower face.
 */
function addBody(wheel: Wheel): void {
  const { writer, body } = wheel
  const { rimRadius: rim, hubRadius: hub, boreRadius: bore } = body
  const half = [body.faceWidth, body.webThickness, body.hubLength].map((width) => width / 2)
  const [face = 0, web = 0, end = 0] = half
  const top: [number, number][] = [
    [rim, face],
    [rim, web],
    [hub, web],
    [hub, end],
    [bore, end],
  ]
  const outline = [...top, ...[...top].reverse().map(([R, y]): [number, number] => [R, -y])]
  const sides = wheel.teeth * wheel.pieces
  for (let s = 0; s + 1 < outline.length; s++) {
    const [R, y] = outline[s]!
    const [nextR, nextY] = outline[s + 1]!
    if (R === nextR && y === nextY) continue
    const first = writer.vertices
    for (let piece = 0; piece < sides; piece++) {
      addRingVertex(wheel, piece, R, y, nextY - y, R - nextR)
      addRingVertex(wheel, piece, nextR, nextY, nextY - y, R - nextR)
    }
    for (let piece = 0; piece < sides; piece++) {
      const a = first + 2 * piece
      const b = first + 2 * ((piece + 1) % sides)
      addTriangle(writer, a, b, b + 1)
      addTriangle(writer, a, b + 1, a + 1)
    }
  }
}
