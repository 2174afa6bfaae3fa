/**
 * Exact flank of a wheel that was cut by its own worm. A plane y = const is square to the wheel's axis, so in
 * it the worm is a rack z0(x) that moves along z, and the wheel turns under it. A rack point touches when its
 * normal passes through the pitch point (a - r2, 0): rack theory of any gear text, plane by plane; no
 * iteration is needed.
 *
 *        z ^                       chi: angle in the wheel's own frame, from the ray towards the worm,
 *          |   .rack                    positive towards +z;  R: distance from the wheel's axis
 *   worm ==+====o======== wheel axis at x = a
 *               pitch point
 *
 * sigma is +1 for the flank that the +z side of the thread cuts, -1 for the other. This is the flank without
 * backlash; taking that off the wheel turns it about the wheel's axis as it is (wheel-space.ts).
 */
import type { GearNumbers } from './gear-numbers.ts'
import { pairProportions } from './proportions.ts'
import type { ThreadForm } from './thread-form.ts'
import { threadForm } from './thread-profile.ts'
import { handSign } from './wheel-motion.ts'

export type Flank = 1 | -1

export interface Generation {
  readonly form: ThreadForm
  readonly centreDistance: number
  readonly wheelRadius: number
  /** p times the sign of the hand [mm/rad] */
  readonly signedParameter: number
}

export function wheelGeneration(gearing: GearNumbers): Generation {
  const proportions = pairProportions(gearing)
  return {
    form: threadForm(gearing),
    centreDistance: proportions.centreDistance,
    wheelRadius: proportions.referenceRadiusWheel,
    signedParameter: handSign(gearing.hand) * proportions.screwParameter,
  }
}

/** Rack in the plane y: z0 [mm] over x [mm]. */
export const rackHeight = (g: Generation, sigma: Flank, x: number, y: number): number =>
  g.signedParameter * Math.atan2(y, x) + sigma * g.form.halfThickness(Math.sqrt(x * x + y * y))

/** dz0/dx */
export function rackSlope(g: Generation, sigma: Flank, x: number, y: number): number {
  const r = Math.sqrt(x * x + y * y)
  return (-g.signedParameter * y) / (r * r) + (sigma * g.form.slope(r) * x) / r
}

/** dz0/dy */
export function rackTilt(g: Generation, sigma: Flank, x: number, y: number): number {
  const r = Math.sqrt(x * x + y * y)
  return (g.signedParameter * x) / (r * r) + (sigma * g.form.slope(r) * y) / r
}

export interface FlankPoint {
  /** In the wheel's own frame [mm], [rad] */
  readonly radius: number
  readonly chi: number
  /** Height z [mm] in space at which worm and wheel touch there */
  readonly height: number
  /** How far the rack has moved along z [mm] when they touch */
  readonly shift: number
}

/** Point of the wheel flank that the rack point (x, y) makes; not finite where the rack runs square to x. */
export function flankPoint(g: Generation, sigma: Flank, x: number, y: number): FlankPoint {
  const height = (g.centreDistance - g.wheelRadius - x) / rackSlope(g, sigma, x, y)
  const shift = height - rackHeight(g, sigma, x, y)
  const radius = Math.hypot(g.centreDistance - x, height)
  const chi = Math.atan2(height, g.centreDistance - x) - shift / g.wheelRadius
  return { radius, chi, height, shift }
}
