/** The numbers that time the two outputs of a machine to each other. */
import { pairProportions, wheelPlay } from '../gear/proportions.ts'
import { type TimedPair, neededDistance } from '../gear/timing.ts'
import { farSidePhase, handSign } from '../gear/wheel-motion.ts'
import { radians } from '../quantity/convert.ts'
import type { Machine } from './machine.ts'

export function outputTiming({ gearing, outputs }: Pick<Machine, 'gearing' | 'outputs'>): TimedPair {
  const { wormStarts: starts, wheelTeeth: teeth } = gearing
  const { centreDistance, referenceRadiusWheel } = pairProportions(gearing)
  const sweepRadius = outputs.sweepDiameter / 2
  const play = wheelPlay(gearing.backlash, referenceRadiusWheel)
  const key = radians(outputs.keyAngle)
  return {
    rows: { count: outputs.tufts, centreDistance, hubRadius: outputs.hubDiameter / 2, sweepRadius },
    starts,
    teeth,
    handSign: handSign(gearing.hand),
    keyRight: key,
    keyLeft: key,
    farSide: farSidePhase(starts, teeth),
    need: neededDistance(outputs.tuftThickness, sweepRadius, play),
  }
}
