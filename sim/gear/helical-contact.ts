/**
 * Contact of an involute worm (ZI) with a plain helical wheel of the same lead: one point a flank, which runs
 * on a fixed straight line, the common tangent of both base cylinders. For sigma = +1, with distance t [mm]
 * from the worm's reference cylinder and e = a - r1 - r2,
 *
 *     x = r1 + t sin alpha_n,   y = -H t cos alpha_n sin g,   z = (t - t0) cos alpha_n cos g,   t0 = e/sin alpha_n
 *
 * and y, z with the other sign for sigma = -1. Line of action of crossed helical gears: F. L. Litvin and
 * A. Fuentes, Gear Geometry and Applied Theory, 2nd ed. (Cambridge, 2004), ch. 16; in this frame derived here.
 */
import type { GearNumbers } from './gear-numbers.ts'
import { type PairProportions, pairProportions } from './proportions.ts'
import type { Flank } from './wheel-flank.ts'
import { handSign } from './wheel-motion.ts'

export interface HelicalContact {
  /** t [mm] where the worm's tip or the end of the wheel's flank ends contact (> 0), and the wheel's tip (< 0) */
  readonly wormEnd: number
  readonly wheelEnd: number
  /** t0 [mm]: where z = 0 */
  readonly middle: number
  readonly ratio: number
  /** Largest distance along the worm's axis [mm], and from the mid-plane [mm] */
  readonly reach: number
  readonly faceNeeded: number
  /** The worm's tip would cut below the wheel's base cylinder, where there is no flank. */
  readonly undercut: boolean
  /** Direction of the line for sigma = +1, right or left hand in y */
  readonly direction: readonly [number, number, number]
  readonly pair: PairProportions
}

/** The root with the sign of `side` of A t^2 + 2 B t + C = 0. */
const root = (A: number, B: number, C: number, side: 1 | -1): number =>
  (-B + side * Math.sqrt(Math.max(0, B * B - A * C))) / A

export function helicalContact(gearing: GearNumbers): HelicalContact {
  const pair = pairProportions(gearing)
  const { referenceRadiusWorm: r1, referenceRadiusWheel: r2, centreDistance: a, axialPitch: px } = pair
  const n = pair.normalPressureAngle
  const g = pair.leadAngle
  const nx = Math.sin(n)
  const ny = Math.cos(n) * Math.sin(g)
  const nz = Math.cos(n) * Math.cos(g)
  const middle = (a - r1 - r2) / nx
  const wormTip = root(nx * nx + ny * ny, r1 * nx, r1 * r1 - pair.tipRadiusWorm ** 2, 1)
  // where the line touches the wheel's base cylinder its flank ends
  const flankEnd = middle + (r2 * nx) / (nx * nx + nz * nz)
  const wormEnd = Math.min(wormTip, flankEnd)
  // In u = t - t0: (r2 - u nx)^2 + (u nz)^2 = ra2^2
  const fromMiddle = root(nx * nx + nz * nz, -r2 * nx, r2 * r2 - pair.throatRadiusWheel ** 2, -1)
  const wheelEnd = middle + fromMiddle
  const most = Math.max(Math.abs(wormEnd), Math.abs(wheelEnd))
  return {
    wormEnd,
    wheelEnd,
    middle,
    ratio: (wormEnd - wheelEnd) / (px * nz),
    reach: nz * Math.max(Math.abs(wormEnd - middle), Math.abs(fromMiddle)),
    faceNeeded: 2 * most * ny,
    undercut: wormTip > flankEnd,
    direction: [nx, -handSign(gearing.hand) * ny, nz],
    pair,
  }
}

/** Shift s [mm] of the full thread along z, from thread 0 at the pitch point, at which the point t touches. */
export const helicalShift = (contact: HelicalContact, sigma: Flank, t: number): number => {
  const nz = contact.direction[2]
  return sigma * (t / nz - contact.middle * nz - contact.pair.axialPitch / 4)
}

/** Distance t [mm] of the touching point at the shift s: the other way round. */
export const helicalPlace = (contact: HelicalContact, sigma: Flank, s: number): number => {
  const nz = contact.direction[2]
  return nz * (sigma * s + contact.middle * nz + contact.pair.axialPitch / 4)
}

/** Point of contact [mm] at t, in space, of the right-hand mesh. */
export function helicalPoint(contact: HelicalContact, sigma: Flank, t: number): [number, number, number] {
  const [nx, ny, nz] = contact.direction
  return [contact.pair.referenceRadiusWorm + t * nx, sigma * t * ny, sigma * (t - contact.middle) * nz]
}
