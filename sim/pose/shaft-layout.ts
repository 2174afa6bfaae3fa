/** The shafts in their bearings: the worm's, and those of the wheels with their rows [mm]. */
import { farSidePhase } from '../gear/wheel-motion.ts'
import type { PairProportions } from '../gear/proportions.ts'
import type { Gearing, Machine } from '../machine/machine.ts'
import { radians } from '../quantity/convert.ts'
import { type WheelBody, wormBody } from '../shape/body.ts'

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

export function shaftLayout(gearing: Gearing, gears: PairProportions): Omit<ShaftLayout, 'back'> {
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

export function outputLayout(
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
