/**
 * The wheel as a closed surface, the same for both sides, in its own frame: axis along y, the middle of a
 * tooth space on the ray towards -x, where the worm of the right wheel is. Edges at tip, faces and body are
 * sharp.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { turnedOutline } from './body.ts'
import type { Detail } from './detail.ts'
import { addTriangle, finishedMesh, type MeshWriter, type TriangleMesh } from './triangle-mesh.ts'
import { addFace } from './wheel-face.ts'
import { addRingVertex, addSpacePoint, wheelInMaking, type WheelInMaking } from './wheel-in-making.ts'

export function wheelMesh(gearing: GearNumbers, detail: Detail): TriangleMesh {
  const wheel = wheelInMaking(gearing, detail)
  addSpaces(wheel)
  addLands(wheel)
  addFace(wheel, 0, -1)
  addFace(wheel, wheel.surface.sections.length - 1, 1)
  addBody(wheel)
  return finishedMesh(wheel.writer)
}

/**
 * Joins a grid of vertices, rows apart by `columns`, with the outside towards the reader when columns run
 * right, rows up.
 */
function addGrid(writer: MeshWriter, first: number, rows: number, columns: number, cuts?: Uint8Array): void {
  for (let j = 0; j + 1 < rows; j++) {
    for (let i = 0; i + 1 < columns; i++) {
      const a = first + j * columns + i
      const above = a + columns
      const falls = cuts?.[j * (columns - 1) + i] === 1
      addTriangle(writer, a, a + 1, falls ? above : above + 1)
      addTriangle(writer, falls ? a + 1 : a, above + 1, above)
    }
  }
}

function addSpaces(wheel: WheelInMaking): void {
  const { sections, points, columns, normals, cuts } = wheel.surface
  for (let k = 0; k < wheel.teeth; k++) {
    const first = wheel.writer.vertices
    for (let j = 0; j < sections.length; j++) {
      for (let i = 0; i < points; i++) {
        const n = 3 * (j * columns + i)
        addSpacePoint(wheel, j, i, k, normals[n]!, normals[n + 1]!, normals[n + 2]!)
      }
    }
    addGrid(wheel.writer, first, sections.length, points, cuts)
  }
}

/** Slope of the tip over y, which tilts the normals of the lands into the throat. */
function tipSlope(wheel: WheelInMaking, j: number): number {
  const { sections } = wheel.surface
  const below = sections[Math.max(0, j - 1)]!
  const above = sections[Math.min(sections.length - 1, j + 1)]!
  return (above.radius[0]! - below.radius[0]!) / (above.y - below.y)
}

function addLands(wheel: WheelInMaking): void {
  const { sections, points, columns } = wheel.surface
  const slopes = sections.map((_, j) => tipSlope(wheel, j))
  for (let k = 0; k < wheel.teeth; k++) {
    const first = wheel.writer.vertices
    for (let j = 0; j < sections.length; j++) {
      for (let i = points - 1; i <= columns; i++) addLandPoint(wheel, j, i, k, slopes[j]!)
    }
    addGrid(wheel.writer, first, sections.length, columns - points + 2)
  }
}

/** The point after a section's last one is the first of the next space. */
function addLandPoint(wheel: WheelInMaking, j: number, i: number, k: number, slope: number): void {
  const { columns, sections } = wheel.surface
  const [point, space] = i === columns ? [0, k + 1] : [i, k]
  const chi = sections[j]!.chi[point]!
  addSpacePoint(wheel, j, point, space, -Math.cos(chi), -slope, Math.sin(chi))
}

/** Rim, web, hub and bore. */
function addBody(wheel: WheelInMaking): void {
  const { writer } = wheel
  const outline = turnedOutline(wheel.body)
  const sides = wheel.teeth * wheel.pieces
  for (let s = 0; s + 1 < outline.length; s++) {
    const [R, y] = outline[s]!
    const [nextR, nextY] = outline[s + 1]!
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
