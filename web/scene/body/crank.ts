/** The hand crank of a machine without a motor, turning with the shaft. */
import { type BufferGeometry, Shape } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import { type Detail, roundSegments } from '../detail.ts'
import { plate } from '../plate.ts'
import { part, piece, ringZ, turnedZ } from '../solid.ts'

type Crank = NonNullable<Layout['crank']>

function armShape(length: number, hub: number, end: number): Shape {
  const shape = new Shape()
  shape.absarc(0, 0, hub, Math.PI, 2 * Math.PI, false)
  shape.lineTo(end, length)
  shape.absarc(0, length, end, 0, Math.PI, false)
  shape.closePath()
  return shape
}

export function crankBody(crank: Crank, shaftRadius: number, detail: Detail): BufferGeometry {
  const segments = roundSegments(detail)
  const hub = 1.7 * shaftRadius
  const thick = 0.9 * shaftRadius
  const grip = 0.95 * shaftRadius
  const { z, arm } = crank
  const handle: [number, number][] = [
    [0, z - 4.2 * hub],
    [0.8 * grip, z - 4.2 * hub],
    [grip, z - 3.9 * hub],
    [1.15 * grip, z - 2.4 * hub],
    [0.75 * grip, z - thick],
    [0, z - thick],
  ]
  return part([
    piece('wormPaint', plate(armShape(arm, hub, 1.2 * grip), z - thick, thick, segments / 2)),
    piece('barSteel', ringZ(0, 0.7 * hub, z - 1.3 * thick, z + 0.3 * thick, segments)),
    piece('plastic', turnedZ(handle, segments), { y: arm }),
  ])
}
