/** The points that a view must keep inside the free part of the canvas [mm]. */
import { Vector3 } from 'three'
import type { Layout } from '../../sim/pose/layout.ts'
import type { MotorLayout } from '../../sim/pose/motor-layout.ts'
import { litPoints } from './lit.ts'
import { FLANKS_AT, type Look, type ViewBookmark, sideSign } from './views.ts'

function boxPoints(x0: number, x1: number, y0: number, y1: number, z0: number, z1: number): Vector3[] {
  return [x0, x1].flatMap((x) => [y0, y1].flatMap((y) => [z0, z1].map((z) => new Vector3(x, y, z))))
}

/** Corners of the case are round, so what counts lies further in. */
const ROUND = 0.3

function casePoints(layout: Layout): Vector3[] {
  const { halfWidth: w, front, back, corner } = layout.tray
  const r = ROUND * corner
  const { top, bottom } = layout.case
  return [bottom, top].flatMap((y) => [
    ...boxPoints(-w + r, w - r, y, y, back + r, front - r),
    ...boxPoints(-w, w, y, y, back + corner, front - corner),
    ...boxPoints(-w + corner, w - corner, y, y, back, front),
  ])
}

function standPoints(layout: Layout): Vector3[] {
  const { tray, floor, output, gears } = layout
  const foot = 2.7 * tray.postRadius
  const reach = gears.centreDistance + output.brushRadius
  return [
    ...boxPoints(
      -tray.postX - foot,
      tray.postX + foot,
      floor,
      floor,
      tray.postBack - foot,
      tray.postFront + foot,
    ),
    ...boxPoints(-reach, reach, output.brush, output.brush, 0, 0),
  ]
}

function gearPoints(layout: Layout): Vector3[] {
  const { gears, output, shaft } = layout
  const reach = 1.2 * gears.centreDistance + gears.outsideRadiusWheel + 5
  const around = 1.3 * gears.outsideRadiusWheel
  return [
    ...boxPoints(-reach, reach, 0, output.shaftTop, -around * 0.7, around * 0.8),
    ...boxPoints(0, 0, -shaft.collarRadius, shaft.collarRadius, shaft.rearBearing, shaft.front),
  ]
}

/** The crank at its highest and at its sides. */
function crankPoints({ crank }: Layout): Vector3[] {
  if (crank === null) return []
  const { arm, z } = crank
  return boxPoints(-1.2 * arm, 1.2 * arm, 0, 0, z - arm, z).concat(boxPoints(0, 0, 0, 1.2 * arm, z - arm, z))
}

function motorPoints(layout: Layout): Vector3[] {
  const { motor, fan, crank, shaft, tray } = layout
  if (crank !== null) return [...crankPoints(layout), new Vector3(0, 0, shaft.rearBearing)]
  const r = Math.max(motor?.radius ?? 0, fan?.radius ?? 0)
  return boxPoints(-r, r, Math.max(-r, tray.top), r, shaft.back, shaft.rearBearing)
}

/** Commutator and carbon brushes, with their springs. */
function brushGearPoints({ radius, commutatorFront, commutatorBack }: MotorLayout): Vector3[] {
  return boxPoints(
    -1.15 * radius,
    1.15 * radius,
    -0.5 * radius,
    1.1 * radius,
    commutatorBack,
    commutatorFront,
  )
}

/** Where thread and teeth of one wheel are in each other. */
function meshPoints({ gears }: Layout, own: 1 | -1): Vector3[] {
  const { tipRadiusWorm: tip, axialPitch } = gears
  const along = 1.5 * axialPitch
  const [near, far] = [-0.1 * tip, tip + 1.3 * axialPitch]
  return boxPoints(own * near, own * far, 0, gears.wheelWidth / 2, -along, along)
}

/** Half the arc of the wheel that is looked at, in teeth */
const FLANKS_HALF = 1.9

/** Some teeth at the front of one wheel, there where their driving flanks turn to the eye. */
function flankPoints({ gears, teeth }: Layout, own: 1 | -1, flanks: 1 | -1): Vector3[] {
  const { centreDistance: a, outsideRadiusWheel: tip, rootRadiusWheel: root, wheelWidth } = gears
  const middle = (own * flanks * FLANKS_AT * Math.PI) / 180
  return [-FLANKS_HALF, 0, FLANKS_HALF].flatMap((tooth) => {
    const angle = middle + (2 * Math.PI * tooth) / teeth
    return [root, tip].flatMap((radius) =>
      [-0.5, 0.5].map(
        (up) => new Vector3(own * a + radius * Math.sin(angle), up * wheelWidth, radius * Math.cos(angle)),
      ),
    )
  })
}

/** The worm with its bearings, and room for the arrows and their numbers on all sides. */
function forcePoints({ gears, shaft }: Layout, support: Look['forces']): Vector3[] {
  const a = gears.centreDistance
  const [last, ring] =
    support === 'overhung' ? [2 * shaft.rearBearing, 2 * shaft.bearingRadius] : [shaft.rearBearing, 0]
  return [
    ...boxPoints(-1.2 * a, 1.2 * a, -0.3 * a, 0.4 * a, -0.6 * a, 0.6 * a),
    ...boxPoints(-ring, ring, 0, ring, last, last),
    new Vector3(0, 0, shaft.front + 1.45 * a),
  ]
}

function apartPoints(layout: Layout): Vector3[] {
  const { gears, motor, fan } = layout
  const out = 1.8 * gears.centreDistance + gears.outsideRadiusWheel
  const housing = motor === null ? 0 : motor.front - motor.back
  const fanBack = fan === null ? layout.shaft.back : fan.z - 1.3 * housing
  const height = layout.case.top - layout.case.bottom
  return [
    ...standPoints(layout),
    ...casePoints(layout).map((p) => p.clone().setY(p.y + 1.15 * height)),
    ...boxPoints(-out, out, -gears.wheelWidth, gears.wheelWidth, 0, 0),
    ...boxPoints(0, 0, 0, 0, fanBack, layout.shaft.front),
  ]
}

export function fitPoints(layout: Layout, subject: ViewBookmark['subject'], look: Look): Vector3[] {
  const { shaft, output, gears, tray, floor } = layout
  const brushReach = gears.centreDistance + output.brushRadius
  switch (subject) {
    case 'machine':
      return [...casePoints(layout), ...standPoints(layout), ...crankPoints(layout)]
    case 'gears':
      return gearPoints(layout)
    case 'worm': {
      const around = 2.4 * gears.tipRadiusWorm
      return boxPoints(-around, around, -gears.tipRadiusWorm, around, shaft.rearBearing, shaft.front)
    }
    case 'mesh':
      return meshPoints(layout, sideSign(look.side))
    case 'flanks':
      return flankPoints(layout, sideSign(look.side), look.flanks || 1)
    case 'forces':
      return forcePoints(layout, look.forces)
    case 'motor':
      return motorPoints(layout)
    case 'commutator':
      return layout.motor === null ? motorPoints(layout) : brushGearPoints(layout.motor)
    case 'brushes':
      return boxPoints(-brushReach, brushReach, floor, tray.top, -output.brushRadius, output.brushRadius)
    case 'apart':
      return apartPoints(layout)
    case 'lit':
      return litPoints(layout, look.lit ?? 'socket')
  }
}
