/** What the eye makes of thread, slots and bars that pass too fast to be told apart: smooth bodies in their place. */
import type { BufferGeometry } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import { type Detail, roundSegments } from '../detail.ts'
import { type Piece, part, piece, rodZ } from '../solid.ts'

/** Just outside what they hide. */
const OVER = 1.01

export function rotorVeil(layout: Layout, detail: Detail): BufferGeometry {
  const { gears, motor } = layout
  const segments = roundSegments(detail)
  const half = gears.threadLength / 2
  const pieces: Piece[] = [piece('wormSteel', rodZ(OVER * gears.tipRadiusWorm, -half, half, segments))]
  if (motor !== null) {
    const { armatureRadius, armatureBack: back, armatureFront: front } = motor
    const overhang = 0.24 * armatureRadius
    const risers = 1.25 * motor.commutatorRadius
    const riserLength = 0.16 * (motor.commutatorFront - motor.commutatorBack)
    pieces.push(
      piece('laminations', rodZ(OVER * armatureRadius, back + overhang, front - overhang, segments)),
      piece('enamelledWire', rodZ(0.89 * armatureRadius, back, front, segments)),
      piece(
        'copper',
        rodZ(OVER * motor.commutatorRadius, motor.commutatorBack, motor.commutatorFront, segments),
      ),
      piece('copper', rodZ(risers, motor.commutatorBack, motor.commutatorBack + riserLength, segments)),
    )
  }
  return part(pieces)
}
