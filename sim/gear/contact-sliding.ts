/**
 * How fast the flanks slide on each other: v = v1 - v2 at a point of contact, with v1 = w1 (-y, x, 0) of the
 * worm and v2 = w2 (z, 0, a - x) of the right wheel, w2 = -P w1/r2. It has no part along the common normal.
 * F. L. Litvin and A. Fuentes, Gear Geometry and Applied Theory, 2nd ed. (Cambridge, 2004), ch. 2.
 */
import type { GearNumbers, Side } from './gear-numbers.ts'
import { pairProportions } from './proportions.ts'
import { handSign } from './wheel-motion.ts'

const METRES = 1e-3

export interface Sliding {
  /** Velocity of the worm's flank over the wheel's, x, y, z [m/s] */
  readonly velocity: readonly [number, number, number]
  /** [m/s] */
  readonly speed: number
}

/**
 * point - x, y, z [mm] in space, on a line of contact of that side;  wormSpeed - about +z [rad/s]
 */
export function slidingAt(
  gearing: GearNumbers,
  side: Side,
  point: readonly [number, number, number],
  wormSpeed: number,
): Sliding {
  const { centreDistance: a, referenceRadiusWheel: r2, screwParameter } = pairProportions(gearing)
  // Half a turn about the worm's axis brings the left mesh over the right one.
  const turn = side === 'left' ? -1 : 1
  const x = turn * point[0]
  const y = turn * point[1]
  const wheelSpeed = (-handSign(gearing.hand) * screwParameter * wormSpeed) / r2
  const vx = turn * METRES * (-wormSpeed * y - wheelSpeed * point[2])
  const vy = turn * METRES * wormSpeed * x
  const vz = -METRES * wheelSpeed * (a - x)
  return { velocity: [vx, vy, vz], speed: Math.hypot(vx, vy, vz) }
}
