/** Shaft, worm, front collar, armature and commutator: everything that turns as one, in its own frame about z. */
import type { BufferGeometry } from 'three'
import { CylinderGeometry, TorusGeometry } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import type { MotorLayout } from '../../../sim/pose/motor-layout.ts'
import { type Detail, roundSegments } from '../detail.ts'
import { plate, polygon } from '../plate.ts'
import { type Piece, box, part, piece, placed, ringZ, rodZ, turnedZ } from '../solid.ts'

/** `worm` - the thread, already in the rotor's frame. */
export function rotorBody(layout: Layout, worm: BufferGeometry, detail: Detail): BufferGeometry {
  const { shaft, motor } = layout
  const segments = roundSegments(detail)
  const r = shaft.radius
  const collarBack = shaft.collar - shaft.collarWidth / 2
  return part([
    piece('wormSteel', worm),
    piece(
      'barSteel',
      turnedZ(
        [
          [0, shaft.back],
          [r, shaft.back],
          [r, shaft.front - 0.2 * r],
          [0.8 * r, shaft.front],
          [0, shaft.front],
        ],
        segments,
      ),
    ),
    piece('collar', ringZ(0.9 * r, shaft.collarRadius, collarBack, collarBack + shaft.collarWidth, segments)),
    ...(motor === null ? [] : armature(motor, detail)),
    ...(motor === null ? [] : commutator(motor, r, detail)),
  ])
}

/** Laminations with open slots. */
function laminationShape(radius: number, slots: number) {
  const points: [number, number][] = []
  const pitch = (2 * Math.PI) / slots
  for (let slot = 0; slot < slots; slot++) {
    const middle = slot * pitch
    for (let k = 0; k <= 6; k++) points.push(polar(radius, middle + pitch * (-0.4 + (0.8 * k) / 6)))
    points.push(polar(0.9 * radius, middle + 0.4 * pitch))
    points.push(polar(0.6 * radius, middle + 0.36 * pitch))
    points.push(polar(0.6 * radius, middle + 0.64 * pitch))
    points.push(polar(0.9 * radius, middle + 0.6 * pitch))
  }
  return polygon(points)
}

const polar = (radius: number, angle: number): [number, number] => [
  radius * Math.cos(angle),
  radius * Math.sin(angle),
]

function armature(motor: MotorLayout, detail: Detail): Piece[] {
  const { armatureRadius: radius, armatureFront: front, armatureBack: back, slots } = motor
  const overhang = 0.24 * radius
  const pieces = [
    piece(
      'laminations',
      plate(laminationShape(radius, slots), back + overhang, front - back - 2 * overhang, 4),
    ),
    piece(
      'enamelledWire',
      rodZ(0.5 * radius, back + 0.3 * overhang, front - 0.3 * overhang, roundSegments(detail)),
    ),
  ]
  const [around, tube] = detail === 'high' ? [20, 9] : [9, 5]
  for (let slot = 0; slot < slots; slot++) {
    const angle = ((slot + 0.5) * 2 * Math.PI) / slots
    const [x, y] = polar(0.8 * radius, angle)
    pieces.push(
      piece('enamelledWire', rodZ(0.115 * radius, back + overhang, front - overhang, tube + 1), { x, y }),
    )
    for (const z of [back + overhang, front - overhang]) {
      const loop = new TorusGeometry(0.29 * radius, 0.14 * radius, tube, around).scale(1, 1, 1.25)
      const [lx, ly] = polar(0.58 * radius, angle + 0.3)
      pieces.push(piece('enamelledWire', loop, { x: lx, y: ly, z }))
    }
  }
  return pieces
}

function commutator(motor: MotorLayout, shaftRadius: number, detail: Detail): Piece[] {
  const { commutatorRadius: radius, commutatorFront: front, commutatorBack: back, bars } = motor
  const length = front - back
  const pitch = (2 * Math.PI) / bars
  const gap = Math.min(0.03, pitch / 6)
  const pieces = [
    piece('carbon', rodZ(0.95 * radius, back, front - 0.02 * length, roundSegments(detail))),
    piece(
      'plastic',
      ringZ(0.9 * shaftRadius, 0.62 * radius, front - 0.1 * length, front + 0.08 * length, 24),
    ),
  ]
  const arc = Math.max(1, Math.round((detail === 'high' ? 63 : 36) / bars))
  for (let bar = 0; bar < bars; bar++) {
    // Gaps stand at whole pitches from the right, where a brush is; bodies turned about z begin below.
    const from = bar * pitch + Math.PI / 2 + gap
    const skin = new CylinderGeometry(radius, radius, length, arc, 1, true, from, pitch - 2 * gap).rotateX(
      Math.PI / 2,
    )
    pieces.push(piece('copper', skin, { z: (front + back) / 2 }))
    const end = turnedZ(
      [
        [radius, front],
        [0.66 * radius, front],
      ],
      arc,
      from,
      pitch - 2 * gap,
    )
    pieces.push(piece('copper', end))
    const riser = placed(box(0.34 * radius, Math.min(0.24, 0.5 * pitch) * radius, 0.16 * length), {
      x: 1.08 * radius,
    })
    pieces.push(piece('copper', riser, { aboutZ: (bar + 0.5) * pitch, z: back + 0.08 * length }))
  }
  return pieces
}
