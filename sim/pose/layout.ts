/**
 * Where everything sits, in millimetres, from the sizes of the gearing: worm along +z towards the viewer, wheel
 * axes +y at x = -a and +a, motor behind, shafts and brushes down through a tray on four feet. What the machine's
 * data do not fix (tray, motor, case) is proportioned to the gears, so that any tooth count gives a whole machine.
 */
import { farSidePhase, wheelSense } from '../gear/wheel-motion.ts'
import type { Gearing, Machine } from '../machine/machine.ts'
import { type PairProportions, pairProportions } from '../gear/proportions.ts'
import { radians } from '../quantity/convert.ts'
import { type WheelBody, wheelBody, wormBody } from '../shape/body.ts'
import { type ElectricLayout, electricLayout, leastHalfWidth } from './electric-layout.ts'
import { type MotorLayout, motorLayout } from './motor-layout.ts'

export interface Layout {
  readonly gears: PairProportions
  readonly wheel: WheelBody
  readonly starts: number
  readonly teeth: number
  /** Sense of each wheel about +y for a worm turning about +z. */
  readonly leftSense: 1 | -1
  readonly rightSense: 1 | -1
  readonly shaft: ShaftLayout
  readonly motor: MotorLayout | null
  readonly fan: {
    readonly z: number
    readonly radius: number
    readonly depth: number
    readonly blades: number
  } | null
  readonly crank: { readonly z: number; readonly arm: number } | null
  /** Null where a hand turns the machine */
  readonly electric: ElectricLayout | null
  readonly output: OutputLayout
  readonly tray: TrayLayout
  readonly case: { readonly bottom: number; readonly top: number }
  readonly pointers: PointerLayout
  readonly floor: number
  /** From the end of the shaft to the far side of the fan or crank. */
  readonly overallLength: number
  /** The point that the camera looks at. */
  readonly target: readonly [number, number, number]
}

export interface ShaftLayout {
  readonly radius: number
  readonly front: number
  readonly back: number
  readonly frontBearing: number
  readonly rearBearing: number
  readonly bearingRadius: number
  readonly bearingWidth: number
  readonly collar: number
  readonly collarRadius: number
  readonly collarWidth: number
}

export interface OutputLayout {
  readonly shaftRadius: number
  readonly shaftTop: number
  readonly shaftBottom: number
  readonly brush: number
  readonly brushHeight: number
  readonly hubRadius: number
  /** Radius that the tips of the rows turn at */
  readonly brushRadius: number
  readonly tufts: number
  readonly tuftThickness: number
  /**
   * Angle of the first row of each output while its wheel's mark stands at its pointer [rad], from -x on towards
   * the viewer. Both wheels are the same part: the left one sits half a pitch further where the far side of the
   * worm needs it, and further by the teeth that it was put in with.
   */
  readonly leftFirstRow: number
  readonly rightFirstRow: number
}

/** Tips of the fixed pointers, and how long each wedge is. */
export interface PointerLayout {
  readonly wheelY: number
  readonly wheelZ: number
  readonly wheelSize: number
  readonly wormY: number
  readonly wormZ: number
  readonly wormSize: number
}

export interface TrayLayout {
  readonly halfWidth: number
  readonly front: number
  readonly back: number
  readonly top: number
  readonly thickness: number
  readonly corner: number
  readonly postRadius: number
  readonly postX: number
  readonly postFront: number
  readonly postBack: number
}

function shaftLayout(gearing: Gearing, gears: PairProportions): Omit<ShaftLayout, 'back'> {
  const { centreDistance: a, outsideRadiusWheel: re, tipRadiusWorm: tip } = gears
  const bearingRadius = 1.06 * tip
  const bearingWidth = 0.55 * tip
  const block = 1.32 * tip
  const beside = Math.sqrt(Math.max(0, re * re - (a - block) * (a - block)))
  const bearing =
    Math.max(gears.threadLength / 2 + wormBody(gearing).stubLength, beside) + 0.5 * bearingWidth + 0.12 * tip
  const collarRadius = Math.max(1.06 * tip, 0.17 * a)
  const clear = re * re - (a - 1.15 * collarRadius) * (a - 1.15 * collarRadius)
  const collar = Math.max(bearing + bearingWidth + 0.55 * tip, Math.sqrt(Math.max(0, clear)) + 0.4 * tip)
  return {
    radius: 0.62 * gears.rootRadiusWorm,
    front: collar + 0.75 * tip,
    frontBearing: bearing,
    rearBearing: -bearing,
    bearingRadius,
    bearingWidth,
    collar,
    collarRadius,
    collarWidth: 0.34 * tip,
  }
}

function outputLayout(
  gears: PairProportions,
  wheel: WheelBody,
  trayTop: number,
  { gearing, outputs }: Machine,
): OutputLayout {
  const { centreDistance: a } = gears
  const { wormStarts, wheelTeeth } = gearing
  const key = radians(outputs.keyAngle)
  const brushHeight = 10 + 0.42 * a
  const brush = trayTop - 0.1 * a - 7 - brushHeight / 2
  return {
    shaftRadius: wheel.boreRadius,
    shaftTop: wheel.hubLength / 2 + 0.2 * a,
    shaftBottom: brush - brushHeight / 2 - 0.08 * a,
    brush,
    brushHeight,
    hubRadius: outputs.hubDiameter / 2,
    brushRadius: outputs.sweepDiameter / 2,
    tufts: outputs.tufts,
    tuftThickness: outputs.tuftThickness,
    leftFirstRow:
      key + farSidePhase(wormStarts, wheelTeeth) + (2 * Math.PI * outputs.toothOffset) / wheelTeeth,
    rightFirstRow: key,
  }
}

/** What the tray has to carry, along z and across. */
interface TrayRoom {
  readonly top: number
  readonly front: number
  readonly back: number
  readonly halfWidth: number
}

function trayLayout(
  gears: PairProportions,
  output: OutputLayout,
  { top, front, back, halfWidth: least }: TrayRoom,
): TrayLayout {
  const gearsWide = gears.centreDistance + gears.outsideRadiusWheel + 0.12 * gears.centreDistance
  const halfWidth = Math.max(gearsWide, least)
  const postRadius = 1.5 + 0.045 * gears.centreDistance
  const inset = 2 + 0.22 * gears.centreDistance
  const trayFront = Math.max(front, output.brushRadius + inset + 2 * postRadius)
  const trayBack = Math.min(back, -output.brushRadius - inset - 2 * postRadius)
  return {
    halfWidth,
    front: trayFront,
    back: trayBack,
    top,
    thickness: 3 + 0.05 * gears.centreDistance,
    corner: 0.28 * halfWidth,
    postRadius,
    postX: halfWidth - inset,
    postFront: trayFront - inset,
    postBack: trayBack + inset,
  }
}

export function machineLayout(machine: Machine): Layout {
  const { gearing } = machine
  const gears = pairProportions(gearing)
  const tip = gears.tipRadiusWorm
  const wheel = wheelBody(gearing)
  const shaft = shaftLayout(gearing, gears)
  const behind = shaft.rearBearing - shaft.bearingWidth
  const motor = machine.motor === null ? null : motorLayout(gears, shaft.radius, behind, machine.brushes)
  const end = motor === null ? behind - tip : motor.back
  const top = -Math.max(
    1.95 * tip,
    motor === null ? 0 : motor.radius + 0.22 * tip,
    gears.wheelWidth / 2 + 0.7 * tip,
  )
  const output = outputLayout(gears, wheel, top, machine)
  const fanDepth = motor === null ? 0 : 0.5 * motor.radius
  const hasFan = motor !== null && machine.rotor.fanBlades > 0
  const fan = hasFan
    ? {
        z: end - 0.85 * fanDepth,
        radius: 1.12 * motor.radius,
        depth: fanDepth,
        blades: machine.rotor.fanBlades,
      }
    : null
  const last = fan === null ? end - 0.4 * tip : fan.z - 0.6 * fanDepth
  const tray = trayLayout(gears, output, {
    top,
    front: shaft.collar + 0.3 * tip,
    back: last - 0.35 * tip,
    halfWidth: motor === null ? 0 : leastHalfWidth(motor),
  })
  const crank = motor === null ? { z: tray.back - 0.9 * tip, arm: 2.6 * tip } : null
  const back = crank === null ? last - 0.15 * tip : crank.z - 0.3 * tip
  const above = Math.max(output.shaftTop, fan?.radius ?? 0, motor?.radius ?? 0, 1.6 * tip) + 0.25 * tip
  const floor = output.shaftBottom - 0.1 * gears.centreDistance - 2
  const { halfWidth, corner } = tray
  const reach = gears.centreDistance + output.brushRadius
  return {
    gears,
    wheel,
    starts: gearing.wormStarts,
    teeth: gearing.wheelTeeth,
    leftSense: wheelSense('left', gearing.hand),
    rightSense: wheelSense('right', gearing.hand),
    shaft: { ...shaft, back },
    motor,
    fan,
    crank,
    electric:
      motor &&
      electricLayout(machine, { gears, motor, halfWidth, back: tray.back, corner, top, floor, reach }),
    output,
    tray,
    case: { bottom: top, top: above },
    pointers: {
      wheelY: wheel.faceWidth / 2,
      wheelZ: gears.outsideRadiusWheel + 0.02 * gears.centreDistance,
      wheelSize: 0.2 * gears.centreDistance + 4,
      wormY: 1.06 * shaft.collarRadius,
      wormZ: shaft.collar + shaft.collarWidth / 2,
      wormSize: 0.76 * shaft.collarRadius,
    },
    floor,
    overallLength: shaft.front - back,
    target: [0, (above + floor) / 2, (tray.front + Math.min(tray.back, back)) / 2],
  }
}
