/** The case in its own frame: an opaque shell with vents, and the clear walls with their edge lines. */
import {
  BufferAttribute,
  type BufferGeometry,
  CatmullRomCurve3,
  ExtrudeGeometry,
  TubeGeometry,
  Vector3,
} from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import type { Detail } from '../detail.ts'
import { type Piece, box, joined, part, piece, plate, roundedRectangle } from '../solid.ts'

const SETBACK = 0.015

function outline(layout: Layout) {
  const { halfWidth, front, back, corner } = layout.tray
  const inset = SETBACK * halfWidth
  return roundedRectangle(
    -halfWidth + inset,
    -front + inset,
    halfWidth - inset,
    -back - inset,
    corner - inset,
  )
}

/** Opaque: walls and lid in one, rounded at the top, with vents beside and above the motor. */
export function closedCase(layout: Layout, detail: Detail): BufferGeometry {
  const { top, bottom } = layout.case
  const { halfWidth, back, front } = layout.tray
  const round = 0.06 * halfWidth
  const shell = new ExtrudeGeometry(outline(layout), {
    depth: top - bottom - round,
    bevelEnabled: true,
    bevelSize: round,
    bevelOffset: -round,
    bevelThickness: round,
    bevelSegments: detail === 'high' ? 5 : 3,
    curveSegments: detail === 'high' ? 16 : 8,
  })
    .rotateX(-Math.PI / 2)
    .translate(0, bottom, 0)
  const length = 0.42 * (front - back)
  const pieces: Piece[] = [piece('caseShell', shell)]
  const height = top - bottom
  for (let i = 0; i < 6; i++) {
    const z = back + 0.1 * (front - back) + (i * length) / 6
    const slot = box(0.5, 0.36 * height, (0.45 * length) / 6)
    for (const side of [-1, 1]) {
      const x = side * halfWidth * (1 - SETBACK)
      if (z > back + layout.tray.corner)
        pieces.push(piece('vent', slot.clone(), { x, y: bottom + 0.55 * height, z }))
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
  const walls = plate(outline(layout), 0, top - bottom, 16)
    .rotateX(-Math.PI / 2)
    .translate(0, bottom, 0)
  const side = walls.groups[1]
  const whole = joined([walls])
  const { index } = whole
  if (side !== undefined && index !== null)
    whole.setIndex(new BufferAttribute(index.array.slice(side.start, side.start + side.count), 1))
  return whole
}

/** Thin lines round the foot and the rim. */
export function caseEdges(layout: Layout): readonly BufferGeometry[] {
  const { top, bottom } = layout.case
  const thick = 0.0075 * layout.tray.halfWidth + 0.05
  return [bottom + 0.6, top].map((y) => {
    const points = outline(layout).getPoints(12).slice(0, -1)
    const path = new CatmullRomCurve3(
      points.map((p) => new Vector3(p.x, y, -p.y)),
      true,
      'catmullrom',
      0,
    )
    return new TubeGeometry(path, 160, thick, 5, true)
  })
}
