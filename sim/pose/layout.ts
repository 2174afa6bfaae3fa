/**
 * Where everything sits, in millimetres, from the sizes of the gearing: worm along +z towards the viewer, wheel
 * axes +y at x = -a and +a, motor behind, shafts and brushes down through a tray on four feet. What the machine's
 * data do not fix (tray, motor, case) is proportioned to the gears, so that any tooth count gives a whole machine.
 */
import { wheelSense } from '../gear/wheel-motion.ts'
import type { Machine } from '../machine/machine.ts'
import { type PairProportions, pairProportions } from '../gear/proportions.ts'
import { type WheelBody, wheelBody } from '../shape/body.ts'
import { type ElectricLayout, electricLayout, leastHalfWidth } from './electric-layout.ts'
import { type MotorLayout, motorLayout } from './motor-layout.ts'
import { type OutputLayout, type ShaftLayout, outputLayout, shaftLayout } from './shaft-layout.ts'

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
  readonly fan: FanLayout | null
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

export interface FanLayout {
  readonly z: number
  readonly radius: number
  readonly depth: number
  readonly blades: number
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

/** Worm, motor and wheels stand clear of it. */
function trayTop({ tipRadiusWorm: tip, wheelWidth }: PairProportions, motor: MotorLayout | null): number {
  const under = motor === null ? 0 : motor.radius + 0.22 * tip
  return -Math.max(1.95 * tip, under, wheelWidth / 2 + 0.7 * tip)
}

/** Behind the motor; null without blades. */
function fanLayout({ back, radius }: MotorLayout, blades: number): FanLayout | null {
  if (blades === 0) return null
  const depth = 0.5 * radius
  return { z: back - 0.85 * depth, radius: 1.12 * radius, depth, blades }
}

function pointerLayout(
  gears: PairProportions,
  wheel: WheelBody,
  shaft: Omit<ShaftLayout, 'back'>,
): PointerLayout {
  return {
    wheelY: wheel.faceWidth / 2,
    wheelZ: gears.outsideRadiusWheel + 0.02 * gears.centreDistance,
    wheelSize: 0.2 * gears.centreDistance + 4,
    wormY: 1.06 * shaft.collarRadius,
    wormZ: shaft.collar + shaft.collarWidth / 2,
    wormSize: 0.76 * shaft.collarRadius,
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
  const top = trayTop(gears, motor)
  const output = outputLayout(gears, wheel, top, machine)
  const fan = motor && fanLayout(motor, machine.rotor.fanBlades)
  const last = fan === null ? end - 0.4 * tip : fan.z - 0.6 * fan.depth
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
    pointers: pointerLayout(gears, wheel, shaft),
    floor,
    overallLength: shaft.front - back,
    target: [0, (above + floor) / 2, (tray.front + Math.min(tray.back, back)) / 2],
  }
}
