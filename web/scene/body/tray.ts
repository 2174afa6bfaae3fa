/** Tray with slots for the output shafts, four feet, and the posts of the two wheel pointers. */
import { type BufferGeometry, Shape } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import { type Detail, roundSegments } from '../detail.ts'
import { plate } from '../plate.ts'
import { part, piece, rodY, turnedY } from '../solid.ts'

/** Seen from above with y = -z; the slots let a wheel slide out sideways with its shaft. */
function trayShape(layout: Layout): Shape {
  const { halfWidth: w, front, back, corner: r } = layout.tray
  const slot = 1.2 * layout.output.shaftRadius
  const end = layout.gears.centreDistance
  const shape = new Shape()
  shape.moveTo(-w + r, -front)
  shape.lineTo(w - r, -front)
  shape.absarc(w - r, -front + r, r, -Math.PI / 2, 0, false)
  shape.lineTo(w, -slot)
  shape.lineTo(end, -slot)
  shape.absarc(end, 0, slot, -Math.PI / 2, Math.PI / 2, true)
  shape.lineTo(w, slot)
  shape.lineTo(w, -back - r)
  shape.absarc(w - r, -back - r, r, 0, Math.PI / 2, false)
  shape.lineTo(-w + r, -back)
  shape.absarc(-w + r, -back - r, r, Math.PI / 2, Math.PI, false)
  shape.lineTo(-w, slot)
  shape.lineTo(-end, slot)
  shape.absarc(-end, 0, slot, Math.PI / 2, -Math.PI / 2, true)
  shape.lineTo(-w, -slot)
  shape.lineTo(-w, -front + r)
  shape.absarc(-w + r, -front + r, r, Math.PI, 1.5 * Math.PI, false)
  return shape
}

export function trayBody(layout: Layout, detail: Detail): BufferGeometry {
  const { tray, floor, pointers, gears } = layout
  const segments = roundSegments(detail)
  const under = tray.top - tray.thickness
  const p = tray.postRadius
  const foot: [number, number][] = [
    [0, floor],
    [2.5 * p, floor],
    [2.7 * p, floor + 0.5 * p],
    [1.9 * p, floor + 1.7 * p],
    [0, floor + 1.7 * p],
  ]
  const slab = plate(trayShape(layout), 0, tray.thickness, detail === 'high' ? 14 : 7)
  const posts = [-1, 1].flatMap((side) =>
    [tray.postFront, tray.postBack].flatMap((z) => [
      piece('barSteel', rodY(p, floor + p, under, segments / 2), { x: side * tray.postX, z }),
      piece('rubber', turnedY(foot, segments / 2), { x: side * tray.postX, z }),
    ]),
  )
  const pointerPosts = [-1, 1].map((side) =>
    piece('barSteel', rodY(0.45 * p, tray.top, pointers.wheelY - 0.28 * pointers.wheelSize, 12), {
      x: side * gears.centreDistance,
      z: pointers.wheelZ + 0.55 * pointers.wheelSize,
    }),
  )
  return part([piece('tray', slab.rotateX(-Math.PI / 2), { y: under }), ...posts, ...pointerPosts])
}
