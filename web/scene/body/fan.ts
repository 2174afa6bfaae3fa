/** The cooling fan, turning with the shaft: hub and twisted blades, one of them painted with the worm's mark. */
import { type BufferGeometry, PlaneGeometry } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import { type Detail, roundSegments } from '../detail.ts'
import { type Piece, part, piece, placed, turnedZ } from '../solid.ts'

type Fan = NonNullable<Layout['fan']>

/** A blade twisted from steep at the hub to flat at its tip, both sides, pointing along +y. */
function blade(fan: Fan, hub: number, wide: number, thick: number): BufferGeometry {
  const length = fan.radius - hub
  const sheet = new PlaneGeometry(1, 1, 4, 6)
  const position = sheet.getAttribute('position')
  for (let i = 0; i < position.count; i++) {
    const across = position.getX(i)
    const out = position.getY(i) + 0.5
    const width = wide * (0.62 + 0.75 * out - 0.28 * out * out)
    const twist = 0.75 - 0.4 * out
    const camber = 0.16 * wide * (1 - 4 * across * across)
    const x = across * width * Math.cos(twist) - camber * Math.sin(twist)
    const z = across * width * Math.sin(twist) + camber * Math.cos(twist) + thick
    position.setXYZ(i, x, hub * 0.92 + out * length, z)
  }
  sheet.computeVertexNormals()
  return sheet
}

/** The same sheet seen from behind. */
function reversed(sheet: BufferGeometry): BufferGeometry {
  const { index } = sheet
  const normal = sheet.getAttribute('normal')
  if (index !== null) index.array.reverse()
  for (let i = 0; i < normal.count; i++) normal.setXYZ(i, -normal.getX(i), -normal.getY(i), -normal.getZ(i))
  return sheet
}

export function fanBody(fan: Fan, shaftRadius: number, detail: Detail): BufferGeometry {
  const hub = Math.max(0.34 * fan.radius, 1.5 * shaftRadius)
  const half = fan.depth / 2
  const outline: [number, number][] = [
    [0.9 * shaftRadius, -half],
    [0.86 * hub, -half],
    [hub, -0.8 * half],
    [hub, half],
    [0.9 * shaftRadius, half],
  ]
  const pieces: Piece[] = [piece('plastic', turnedZ(outline, roundSegments(detail)), { z: fan.z })]
  const wide = Math.min(1.5 * fan.depth, (2.1 * (hub + fan.radius)) / fan.blades)
  for (let i = 0; i < fan.blades; i++) {
    const place = { z: fan.z, aboutZ: (i * 2 * Math.PI) / fan.blades }
    const paint = i === 0 ? 'wormPaint' : 'plastic'
    pieces.push(piece(paint, placed(blade(fan, hub, wide, 0.04 * fan.depth), place)))
    pieces.push(piece(paint, placed(reversed(blade(fan, hub, wide, -0.04 * fan.depth)), place)))
  }
  return part(pieces)
}
