/** A ball bearing in its block, with its middle at z = 0; the front one carries the worm's pointer. */
import { type BufferGeometry, Shape, SphereGeometry } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import { type Detail, roundSegments } from '../detail.ts'
import { circularHole, plate } from '../plate.ts'
import { type Piece, box, part, piece, ringZ } from '../solid.ts'

const BALLS = 9

function blockShape(halfWidth: number, foot: number, hole: number): Shape {
  const shape = new Shape()
  shape.moveTo(-halfWidth, foot)
  shape.lineTo(halfWidth, foot)
  shape.lineTo(halfWidth, 0)
  shape.absarc(0, 0, halfWidth, 0, Math.PI, false)
  shape.closePath()
  return circularHole(shape, 0, 0, hole)
}

export function bearingBody(layout: Layout, detail: Detail): BufferGeometry {
  const { shaft, tray } = layout
  const segments = roundSegments(detail)
  const outer = shaft.bearingRadius
  const inner = shaft.radius
  const width = shaft.bearingWidth
  const track = (outer - inner) / 2
  const halfWidth = 1.22 * outer
  const pieces: Piece[] = [
    piece('brightSteel', ringZ(inner, inner + 0.55 * track, -width / 2, width / 2, segments)),
    piece('brightSteel', ringZ(outer - 0.55 * track, outer, -width / 2, width / 2, segments)),
    piece('tray', plate(blockShape(halfWidth, tray.top, outer), -0.46 * width, 0.92 * width, segments / 2)),
    piece('tray', box(2.7 * halfWidth, 0.16 * outer, 1.5 * width), { y: tray.top + 0.08 * outer }),
  ]
  for (let ball = 0; ball < BALLS; ball++) {
    const angle = (ball * 2 * Math.PI) / BALLS
    const middle = (inner + outer) / 2
    const sphere = new SphereGeometry(0.52 * track, detail === 'high' ? 16 : 8, detail === 'high' ? 12 : 6)
    pieces.push(piece('brightSteel', sphere, { x: middle * Math.cos(angle), y: middle * Math.sin(angle) }))
  }
  return part(pieces)
}
