/** The case in its own frame: an opaque shell with vents, and the clear walls with their edge lines. */
import type { BufferGeometry } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import type { Detail } from '../detail.ts'
import { plate, roundedRectangle, walls } from '../plate.ts'
import { type Piece, box, joined, part, piece, placed, solid } from '../solid.ts'

const SETBACK = 0.015

/** Outline of the case from above, smaller by `inset` on every side; y is -z. */
function outline(layout: Layout, inset = 0) {
  const { halfWidth, front, back, corner } = layout.tray
  const d = SETBACK * halfWidth + inset
  return roundedRectangle(-halfWidth + d, -front + d, halfWidth - d, -back - d, corner - d)
}

/** A line round the case: how far inside its outline, how high, and which way it faces. */
interface Round {
  readonly inset: number
  readonly y: number
  readonly out: number
  readonly up: number
}

/** Places round the outline: the middle of the corner's arc, and the way out from there; z towards the viewer. */
function aroundCase(
  layout: Layout,
  curveSegments: number,
): readonly (readonly [number, number, number, number])[] {
  const { halfWidth, front, back, corner } = layout.tray
  const middles = [
    [halfWidth - corner, back + corner],
    [corner - halfWidth, back + corner],
    [corner - halfWidth, front - corner],
    [halfWidth - corner, front - corner],
  ] as const
  return middles.flatMap(([x, z], quarter) =>
    Array.from({ length: curveSegments + 1 }, (_, n) => {
      const angle = (quarter + n / curveSegments) * (Math.PI / 2)
      return [x, z, Math.cos(angle), -Math.sin(angle)] as const
    }),
  )
}

/** The skin from each line round the case to the next. */
function skin(layout: Layout, rounds: readonly Round[], curveSegments: number): BufferGeometry {
  const places = aroundCase(layout, curveSegments)
  const around = places.length
  const radius = layout.tray.corner - SETBACK * layout.tray.halfWidth
  const positions = new Float32Array(3 * around * rounds.length)
  const normals = new Float32Array(positions.length)
  const indices = new Uint32Array(6 * around * (rounds.length - 1))
  rounds.forEach(({ inset, y, out, up }, row) => {
    places.forEach(([x, z, outX, outZ], i) => {
      const first = row * around + i
      positions.set([x + (radius - inset) * outX, y, z + (radius - inset) * outZ], 3 * first)
      normals.set([out * outX, up, out * outZ], 3 * first)
      if (row + 1 === rounds.length) return
      const next = row * around + ((i + 1) % around)
      indices.set([first, next, next + around, first, next + around, first + around], 6 * first)
    })
  })
  return solid(positions, normals, indices)
}

/** Opaque: walls and lid in one, rounded at the top, with vents beside and above the motor. */
export function closedCase(layout: Layout, detail: Detail): BufferGeometry {
  const { top, bottom } = layout.case
  const { halfWidth, back, front } = layout.tray
  const round = 0.06 * halfWidth
  const [bends, curveSegments] = detail === 'high' ? [5, 16] : [3, 8]
  const edge = Array.from({ length: bends + 1 }, (_, n): Round => {
    const angle = (n * Math.PI) / 2 / bends
    const [out, up] = [Math.cos(angle), Math.sin(angle)]
    return { inset: round * (1 - out), y: top - round * (1 - up), out, up }
  })
  const shell = skin(layout, [{ inset: 0, y: bottom, out: 1, up: 0 }, ...edge], curveSegments)
  const lid = plate(outline(layout, round), top - round / 2, round / 2, curveSegments)
  const pieces: Piece[] = [piece('caseShell', shell), piece('caseShell', lid, { aboutX: -Math.PI / 2 })]
  const length = 0.42 * (front - back)
  const height = top - bottom
  for (let i = 0; i < 6; i++) {
    const z = back + 0.1 * (front - back) + (i * length) / 6
    for (const side of [-1, 1]) {
      const x = side * halfWidth * (1 - SETBACK)
      const slot = box(0.5, 0.36 * height, (0.45 * length) / 6)
      if (z > back + layout.tray.corner) pieces.push(piece('vent', slot, { x, y: bottom + 0.55 * height, z }))
    }
    pieces.push(
      piece('vent', box(0.8 * halfWidth, 0.5, (0.4 * length) / 6), { y: top, z: z + 0.06 * length }),
    )
  }
  return part(pieces)
}

/** Only the walls; drawn from inside, so that just the far ones show. */
export function clearWalls(layout: Layout): BufferGeometry {
  const { top, bottom } = layout.case
  return placed(walls(outline(layout), 0, top - bottom, 16), { aboutX: -Math.PI / 2, y: bottom })
}

const WIRE_SIDES = 5

/** Thin wires round the foot and the rim. */
export function caseEdges(layout: Layout): BufferGeometry {
  const { top, bottom } = layout.case
  const thick = 0.0075 * layout.tray.halfWidth + 0.05
  return joined(
    [bottom + 0.6, top].map((y) => {
      const rounds = Array.from({ length: WIRE_SIDES + 1 }, (_, n): Round => {
        const angle = (n * 2 * Math.PI) / WIRE_SIDES
        const [out, up] = [Math.cos(angle), Math.sin(angle)]
        return { inset: -thick * out, y: y + thick * up, out, up }
      })
      return skin(layout, rounds, 16)
    }),
  )
}
