/**
 * Forces of one mesh from nothing but the shape of the thread: the normal of the flank that pushes the right wheel
 * towards +z, at the pitch point, and friction along the thread. The worm is at the origin and turns backwards.
 */
import type { Vector } from '../../sim/gear/mesh-forces.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { rackSlope, rackTilt, wheelGeneration } from '../../sim/gear/wheel-flank.ts'
import type { Gearing } from '../../sim/machine/machine.ts'
import { classroomModel } from './machines.ts'

export interface FlankForces {
  /** On the right wheel, per newton of normal force; moment of the worm's share about its axis [mm] */
  readonly onWheel: Vector
  readonly wormMoment: number
  /** Reference radius of the wheel, advance of the thread in one turn [mm] */
  readonly wheelRadius: number
  readonly lead: number
}

/** `mu` below zero is friction of a wheel that drives: it slides the other way on the same flank. */
export function flankForces(gearing: Partial<Gearing>, mu: number): FlankForces {
  const whole: Gearing = { ...classroomModel.gearing, profile: 'ZA', hand: 'right', ...gearing }
  const generation = wheelGeneration(whole)
  const { referenceRadiusWorm: r1, lead } = pairProportions(whole)
  const slope = rackSlope(generation, 1, r1, 0)
  const tilt = rackTilt(generation, 1, r1, 0)
  const size = Math.hypot(slope, tilt, 1)
  const along = Math.hypot(1, tilt)
  // The normal leaves the thread; the thread runs along (0, 1, tilt), and the worm's surface slides backwards on it.
  const onWheel: Vector = [-slope / size, -tilt / size - mu / along, 1 / size - (mu * tilt) / along]
  return { onWheel, wormMoment: -onWheel[1] * r1, wheelRadius: generation.wheelRadius, lead }
}

/** The same mesh on the other side: half a turn about the worm's axis, and the worm moves teeth the same way. */
export const onOtherSide = ([x, y, z]: Vector): Vector => [-x, -y, z]
