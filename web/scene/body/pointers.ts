/** Fixed pointers: an ink wedge on a white one, its tip at the mark. */
import type { BufferGeometry } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import { plate, polygon } from '../plate.ts'
import { type Piece, box, part, piece } from '../solid.ts'

/** A wedge in x-y with its tip at the origin, pointing along -y, facing +z. */
function wedge(size: number): Piece[] {
  const line = 0.13 * size
  const ink = polygon([
    [0, 1.7 * line],
    [0.44 * size, size],
    [-0.44 * size, size],
  ])
  const white = polygon([
    [0, 0],
    [0.62 * size, size + line],
    [-0.62 * size, size + line],
  ])
  return [
    piece('ink', plate(ink, 0, 0.1 * size, 1)),
    piece('white', plate(white, -0.1 * size, 0.12 * size, 1)),
  ]
}

/** From upright and facing away to lying down and facing up, a little towards the viewer [rad] */
const LEAN = 2

/** A wheel's pointer with its tip at the origin, pointing away from the viewer. */
export const wheelPointer = (layout: Layout): BufferGeometry =>
  part(
    wedge(layout.pointers.wheelSize).map(({ substance, geometry }) =>
      piece(substance, geometry.rotateY(Math.PI).rotateX(LEAN)),
    ),
  )

/** The worm's pointer leans back by this, to be seen from above as well [rad]. */
const LEAN_BACK = 0.5

/** Above the front collar, in the machine's frame, with the arm that carries it. */
export function wormPointer(layout: Layout): BufferGeometry {
  const { pointers, shaft } = layout
  const thick = 0.18 * pointers.wormSize
  const arm = pointers.wormZ - 0.5 * pointers.wormSize - shaft.frontBearing
  const armY = pointers.wormY + 0.62 * pointers.wormSize
  const post = armY - shaft.bearingRadius
  return part([
    ...wedge(pointers.wormSize).map(({ substance, geometry }) =>
      piece(substance, geometry.rotateX(-LEAN_BACK), { y: pointers.wormY, z: pointers.wormZ }),
    ),
    piece('barSteel', box(thick, thick, arm + thick), { y: armY, z: shaft.frontBearing + arm / 2 }),
    piece('barSteel', box(thick, post, thick), { y: armY - post / 2, z: shaft.frontBearing }),
  ])
}
