/** The motor that stands still: can with magnets, and the carbon brushes in their holders. */
import type { BufferGeometry } from 'three'
import { TorusGeometry } from 'three'
import type { MotorLayout } from '../../../sim/pose/motor-layout.ts'
import type { Layout } from '../../../sim/pose/layout.ts'
import { type Detail, roundSegments } from '../detail.ts'
import { type Piece, box, part, piece, placed, ringZ, turnedZ } from '../solid.ts'

/** The window in the can: 110 degrees, turned from straight up towards the viewer of the first view. */
const WINDOW = (110 * Math.PI) / 180
const WINDOW_TURN = -0.3

/** Where the wall of a can with a window begins, for bodies turned about z (angle 0 is -y, then towards +x). */
const wallFrom = (cut: boolean): number => (cut ? Math.PI + WINDOW_TURN + WINDOW / 2 : 0)
const wallAngle = (cut: boolean): number => (cut ? 2 * Math.PI - WINDOW : 2 * Math.PI)

export function motorBody(layout: Layout, motor: MotorLayout, cut: boolean, detail: Detail): BufferGeometry {
  return part([
    ...can(motor, layout.shaft.radius, cut, detail),
    ...magnets(motor, detail),
    ...saddle(layout, motor),
  ])
}

function can(motor: MotorLayout, shaftRadius: number, cut: boolean, detail: Detail): Piece[] {
  const { radius, wall, back } = motor
  const segments = roundSegments(detail)
  const from = wallFrom(cut)
  const angle = wallAngle(cut)
  const front = cut ? motor.armatureFront + 0.1 * radius : motor.front
  const inner = radius - wall
  const round = 0.1 * radius
  const outline: [number, number][] = [
    [inner, front],
    [inner, back + wall],
  ]
  const outside: [number, number][] = [
    [radius - round, back],
    [radius - 0.3 * round, back + 0.3 * round],
    [radius, back + round],
    [radius, front],
    [inner, front],
  ]
  const pieces = [
    piece('motorCan', turnedZ(outline, segments, from, angle)),
    piece('motorCan', turnedZ(outside, segments, from, angle)),
    piece('motorCan', ringZ(1.1 * shaftRadius, radius - round, back, back + wall, segments)),
    piece('collar', ringZ(1.1 * shaftRadius, 0.34 * radius, back - 0.1 * radius, back + wall, segments)),
  ]
  if (!cut) {
    pieces.push(piece('motorCan', ringZ(1.12 * shaftRadius, inner, front - wall, front, segments)))
    pieces.push(
      piece('collar', ringZ(1.12 * shaftRadius, 0.4 * radius, front, front + 0.08 * radius, segments)),
    )
    return pieces
  }
  for (const edge of [from, from + angle]) {
    const strip = placed(box(wall, 0.02 * wall, front - back - round), { x: radius - wall / 2 })
    pieces.push(piece('collar', strip, { aboutZ: edge - Math.PI / 2, z: (front + back + round) / 2 }))
  }
  return pieces
}

/** Two ferrite shells, left and right. */
function magnets(motor: MotorLayout, detail: Detail): Piece[] {
  const width = 1.5
  const outer = motor.radius - motor.wall
  const inner = motor.magnetRadius
  const front = motor.armatureFront - 0.12 * motor.radius
  const back = motor.armatureBack + 0.1 * motor.radius
  const segments = detail === 'high' ? 20 : 8
  return [Math.PI / 2, -Math.PI / 2].flatMap((middle) => {
    const from = middle - width / 2
    const ends = [from, from + width].map((edge) =>
      piece('ferrite', placed(box(outer - inner, 0.1, front - back), { x: (outer + inner) / 2 }), {
        aboutZ: edge - Math.PI / 2,
        z: (front + back) / 2,
      }),
    )
    const shell: [number, number][] = [
      [inner, back],
      [outer, back],
      [outer, front],
      [inner, front],
      [inner, back],
    ]
    return [piece('ferrite', turnedZ(shell, segments, from, width)), ...ends]
  })
}

/** What the can lies on. */
function saddle(layout: Layout, motor: MotorLayout): Piece[] {
  const { top } = layout.tray
  const height = -top - 0.86 * motor.radius
  const length = 0.28 * motor.radius
  return [motor.armatureFront - 0.2 * motor.radius, motor.back + 0.45 * motor.radius].map((z) =>
    piece('tray', box(1.25 * motor.radius, height, length), { y: top + height / 2, z }),
  )
}

/** Two carbon brushes in brass holders on a yoke that lifts off upwards. */
export function brushGearBody(motor: MotorLayout, detail: Detail): BufferGeometry {
  const { commutatorRadius: radius, commutatorFront: front, commutatorBack: back, brushHalf } = motor
  const length = front - back
  const z = (front + back) / 2
  const reach = motor.radius - motor.wall
  const holder = reach - 1.45 * radius
  const [around, tube] = detail === 'high' ? [22, 6] : [10, 4]
  const pieces: Piece[] = [Math.PI, 0].flatMap((aboutZ) => {
    const along = (x: number, geometry: BufferGeometry) => placed(placed(geometry, { x }), { aboutZ, z })
    const coil = 0.2 * radius
    const coils = [0, 1, 2, 3].map((turn) => {
      const ring = new TorusGeometry(coil, 0.18 * coil, tube, around).rotateY(Math.PI / 2)
      return piece('brightSteel', along(reach + (0.35 + 0.55 * turn) * coil, ring))
    })
    return [
      piece(
        'carbon',
        along(radius + 0.3 * radius, box(0.6 * radius, 2 * Math.sin(brushHalf) * radius, 0.52 * length)),
      ),
      piece('brass', along(reach - holder / 2, box(holder, 0.72 * radius, 0.74 * length))),
      piece('copper', along(reach - holder * 0.5, box(0.12 * holder, 0.8 * radius, 0.8 * length))),
      ...coils,
      piece('brass', along(reach + 2.5 * coil, box(0.3 * coil, 2.6 * coil, 2.6 * coil))),
    ]
  })
  const yokeBack = back - 0.02 * length
  const yoke = turnedZ(
    [
      [0.9 * reach, yokeBack],
      [reach, yokeBack],
      [reach, yokeBack + 0.3 * length],
      [0.9 * reach, yokeBack + 0.3 * length],
      [0.9 * reach, yokeBack],
    ],
    roundSegments(detail) / 2,
    Math.PI / 2 - 0.1,
    Math.PI + 0.2,
  )
  pieces.push(piece('plastic', yoke))
  return part(pieces)
}
