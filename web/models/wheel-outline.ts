/** The wheel drawn flat: the true teeth in the mid-plane, and the axial section of blank and body. */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { helicalTooth } from '../../sim/gear/helical-tooth.ts'
import { wheelSectionOutline } from '../../sim/gear/mesh-section.ts'
import { blankRadius, rootRadius, spaceCutter } from '../../sim/gear/wheel-space.ts'
import { wheelBody } from '../../sim/shape/body.ts'
import type { Flat } from './flat.ts'

const FACE_POINTS = 32

/**
 * The teeth in the mid-plane, closed, about the wheel's axis: u = z, v = x, seen from +y. The worm is below.
 */
export function wheelTeeth(gearing: GearNumbers): Flat[] {
  const { wheelTeeth: teeth } = gearing
  const half = Math.ceil((teeth - 1) / 2)
  const around = wheelSectionOutline(gearing, 0, half)
  const once = (around.length / (2 * half + 1)) * teeth
  return Array.from({ length: once / 2 }, (_, i): Flat => [around[2 * i + 1]!, around[2 * i]!])
}

export interface WheelProfile {
  /** Over the face, left to right: [y, R] */
  readonly tip: readonly Flat[]
  readonly root: readonly Flat[]
  /** From the right end of the root, in to the bore, and out again to the left end */
  readonly body: readonly Flat[]
}

/** One half of the axial section, above the axis: u = y, v = R. */
export function wheelProfile(gearing: GearNumbers): WheelProfile {
  const { faceWidth, rimRadius, hubRadius, hubLength, boreRadius, webThickness } = wheelBody(gearing)
  const cutter = spaceCutter(gearing)
  const tooth = helicalTooth(gearing)
  const helical = gearing.wheelForm === 'helical'
  const over = (R: (y: number) => number): Flat[] =>
    Array.from({ length: FACE_POINTS + 1 }, (_, i) => {
      const y = faceWidth * (i / FACE_POINTS - 1 / 2)
      return [y, R(y)]
    })
  const right: Flat[] = [
    [faceWidth / 2, rimRadius],
    [webThickness / 2, rimRadius],
    [webThickness / 2, hubRadius],
    [hubLength / 2, hubRadius],
    [hubLength / 2, boreRadius],
  ]
  return {
    tip: over((y) => (helical ? tooth.tipRadius : blankRadius(cutter, y))),
    root: over((y) => (helical ? tooth.rootRadius : rootRadius(cutter, y))),
    body: [...right, ...[...right].reverse().map(([y, R]): Flat => [-y, R])],
  }
}
