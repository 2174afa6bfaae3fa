/**
 * Thread ZK: the space between threads is ground by a straight-sided disc whose mid plane goes through mid
 * space, tilted by the lead angle. The disc touches the thread along one curve; turned about the worm's axis
 * with the lead, that curve is the flank.
 *
 *   Rg, rho   mean radius of the disc, and radius of a point of it      O = r1 + Rg  from axis to axis
 *   eta       half the disc's thickness there: eta = A + B (O - rho), B = tan alpha_n
 *   f         angle on the disc at which that point touches the thread
 *
 * A surface that moves along with a screw touches where its normal N has y Nx - x Ny - p Nz = 0: F. L. Litvin
 * and A. Fuentes, Gear Geometry and Applied Theory, 2nd ed. (Cambridge, 2004), section 19.10. For the cone of
 * the disc that is S sin f + K cos f = Rg sin g, so f needs no iteration; this form of it is derived here. Name
 * of the profile after ISO/TR 10828, from memory.
 */
import { crossing } from './crossing.ts'
import type { ThreadForm } from './thread-form.ts'
import { tabledForm } from './thread-table.ts'

export interface GrindingDisc {
  /** Axial pitch, reference radius and screw parameter of the worm [mm] */
  readonly px: number
  readonly r1: number
  readonly p: number
  /** Lead angle and normal pressure angle [rad] */
  readonly g: number
  readonly alphaN: number
  /** Mean radius of the disc [mm] */
  readonly Rg: number
}

/** Where the disc touches the thread: radius, half thickness and slope of the thread there. */
export interface GroundPoint {
  readonly r: number
  readonly h: number
  readonly slope: number
  /** In the frame of the worm [mm], with the normal (not of unit length) */
  readonly point: readonly [number, number, number]
  readonly normal: readonly [number, number, number]
  /** Whether the disc touches at all at this radius of its own */
  readonly touches: boolean
}

const NEWTON_STEPS = 12
const DIFFERENCE = 1e-6
/** Steps in which the curve of contact is followed from the reference circle, halved at its end. */
const STEPS_A_DEPTH = 16
const HALVINGS = 8

/** Contact of the disc, A [mm] thick as above, at its radius rho [mm]. */
export function groundPoint(disc: GrindingDisc, A: number, rho: number): GroundPoint {
  const { px, r1, p, g, Rg } = disc
  const [s, c, B, O] = [Math.sin(g), Math.cos(g), Math.tan(disc.alphaN), r1 + Rg]
  const eta = A + B * (O - rho)
  const S = B * (c * O + p * s)
  const K = s * (rho - B * eta)
  const part = (Rg * s) / Math.hypot(S, K)
  // the nearer of the two angles
  const f = Math.atan2(S, K) - Math.acos(Math.min(1, part))
  const [sinF, cosF] = [Math.sin(f), Math.cos(f)]
  const [x, y, z] = [O - rho * cosF, rho * sinF * c - eta * s, rho * sinF * s + eta * c]
  const normal = [-B * cosF, B * sinF * c - s, B * sinF * s + c] as const
  const r = Math.hypot(x, y)
  return {
    r,
    h: px / 2 - (z - p * Math.atan2(y, x)),
    slope: (normal[0] * x + normal[1] * y) / (r * normal[2]),
    point: [x, y, z],
    normal,
    touches: part <= 1,
  }
}

/** Thickness A and radius rho [mm] with which the disc leaves half a pitch of thread at the reference circle. */
export function discSetting(disc: GrindingDisc): { readonly A: number; readonly rho: number } {
  const { px, r1 } = disc
  let A = (px / 4) * Math.cos(disc.g) - Math.tan(disc.alphaN) * r1
  let rho = disc.Rg
  const d = DIFFERENCE * r1
  for (let i = 0; i < NEWTON_STEPS; i++) {
    const here = groundPoint(disc, A, rho)
    const thicker = groundPoint(disc, A + d, rho)
    const farther = groundPoint(disc, A, rho + d)
    const [rA, hA] = [(thicker.r - here.r) / d, (thicker.h - here.h) / d]
    const [rR, hR] = [(farther.r - here.r) / d, (farther.h - here.h) / d]
    const det = rA * hR - rR * hA
    const [dr, dh] = [here.r - r1, here.h - px / 4]
    A -= (dr * hR - dh * rR) / det
    rho -= (dh * rA - dr * hA) / det
  }
  return { A, rho }
}

/** Follows the contact from rho until the thread's radius passes `wanted`, or as far as it goes. */
function followed(disc: GrindingDisc, A: number, rho: number, wanted: number, depth: number): number {
  const sense = wanted < disc.r1 ? 1 : -1
  let step = depth / STEPS_A_DEPTH
  let at = rho
  let r = groundPoint(disc, A, at).r
  for (let halvings = 0; halvings < HALVINGS && sense * (r - wanted) > 0;) {
    const next = at + sense * step
    const { r: reached, touches } = groundPoint(disc, A, next)
    // where the curve of contact turns back or ends, the disc takes away what it has just ground
    if (touches && next > 0 && sense * (r - reached) > 0) {
      at = next
      r = reached
    } else {
      step /= 2
      halvings++
    }
  }
  return at
}

/** Thread from `least` to `most` [mm], or as much of it as the disc can grind. */
export function discForm(disc: GrindingDisc, least: number, most: number): ThreadForm {
  const { A, rho } = discSetting(disc)
  const inner = followed(disc, A, rho, least, most - least)
  const outer = followed(disc, A, rho, most, most - least)
  const from = Math.max(least, groundPoint(disc, A, inner).r)
  const to = Math.min(most, groundPoint(disc, A, outer).r)
  return tabledForm(from, to, (r) => {
    const place = crossing((radius) => groundPoint(disc, A, radius).r - r, outer, inner)
    return groundPoint(disc, A, place)
  })
}
