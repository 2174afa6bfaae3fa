/** What is left of the teeth of a plain helical wheel. */
import type { GearNumbers } from './gear-numbers.ts'
import { helicalTooth, spaceHalfAngle } from './helical-tooth.ts'
import { pairProportions } from './proportions.ts'

/** Least height worth calling a tooth, as a part of the nominal height (our choice). */
const LEAST_HEIGHT = 0.5

/** Whether a tooth of useful height is left where tip or root came to a point. */
export function helicalToothExists(gearing: GearNumbers): boolean {
  const pair = pairProportions(gearing)
  const { tipRadius, rootRadius } = helicalTooth(gearing)
  return tipRadius - rootRadius > LEAST_HEIGHT * (pair.addendumWheel + pair.dedendumWheel)
}

/** Width of the tip [mm], along the circle; 0 where the teeth come to a point below it. */
export function helicalTipWidth(gearing: GearNumbers): number {
  const tooth = helicalTooth(gearing)
  if (tooth.tipRadius < pairProportions(gearing).throatRadiusWheel) return 0
  return (tooth.toothPitch - 2 * spaceHalfAngle(tooth, tooth.tipRadius)) * tooth.tipRadius
}
