/**
 * How far a flank of the wheel is whole in one plane y, and which part of it the worm uses.
 *
 *     lambda = 1 - (z_c' - z') z_c/r2,   dR/dx = -lambda r2/R
 *
 * lambda > 0: regular, 0: cusp, < 0: the flank runs back on itself and the cutter's corner takes it away.
 * Regularity of an envelope after F. L. Litvin and A. Fuentes, Gear Geometry and Applied Theory, 2nd ed.
 * (Cambridge, 2004), ch. 6; this form of it, plane by plane, is derived here.
 */
import type { GearNumbers } from './gear-numbers.ts'
import { lastPlace } from './last-place.ts'
import {
  type Flank,
  type FlankPoint,
  flankPoint,
  type Generation,
  rackHeight,
  rackSlope,
} from './wheel-flank.ts'
import { soundTipRadius } from './wheel-section.ts'
import { noEdge, type SpaceCutter, spaceCutter, writeSpaceEdge } from './wheel-space.ts'

/** Of h', in parts of the radius: small enough for 1e-7, large enough for the rounding of a double. */
const DIFFERENCE = 1e-5
/** Angle [rad] by which more may be cut away than a flank's own rounding shows */
const UNNOTICED = 1e-7
/** From the tip of the cutter to that of the wheel, in search of where a flank begins or ends */
const STEPS = 64

/** d2z0/dx2 */
function rackBend(g: Generation, sigma: Flank, x: number, y: number): number {
  const r = Math.sqrt(x * x + y * y)
  const d = DIFFERENCE * r
  const bend = (g.form.slope(r + d) - g.form.slope(r - d)) / (2 * d)
  return (
    (2 * g.signedParameter * x * y) / r ** 4 +
    sigma * ((bend * x * x) / (r * r) + (g.form.slope(r) * y * y) / r ** 3)
  )
}

/** Regularity of the flank that the rack point (x, y) makes; 0 at a cusp, below it undercut. */
export function lambda(g: Generation, sigma: Flank, x: number, y: number): number {
  const slope = rackSlope(g, sigma, x, y)
  const height = (g.centreDistance - g.wheelRadius - x) / slope
  const climb = (-1 - height * rackBend(g, sigma, x, y)) / slope
  return 1 - ((climb - slope) * height) / g.wheelRadius
}

/** The part of the rack, in x [mm], that makes the flank in use of one plane. */
export interface ActiveRange {
  /** Where the flank meets the wheel's tip */
  readonly tip: number
  /** Where the fillet begins; the end of the cutter where nothing is undercut */
  readonly junction: number
  /** Last place that the worm reaches: its tip, or the fillet; `tip` where there is none */
  readonly end: number
  /** Tip of the cutter */
  readonly cutter: number
  /** Whether there is a flank in this plane, and whether the worm comes as far as to it */
  readonly exists: boolean
  readonly used: boolean
}

/** x [mm] at the tip of the cutter in the plane y. */
export const cutterEnd = ({ limits }: SpaceCutter, y: number): number => Math.sqrt(limits.hobTip ** 2 - y * y)

/** Angle chi [rad] of the fillet, the path of the cutter's corner, at radius R; on the side that `height` has. */
export function filletAngle(cutter: SpaceCutter, sigma: Flank, y: number, R: number, height: number): number {
  const { generation: g } = cutter
  const x = cutterEnd(cutter, y)
  const across = g.centreDistance - x
  // At the root itself rounding may put R a hair inside.
  const u = Math.sign(height) * Math.sqrt(Math.max(0, R * R - across * across))
  return Math.atan2(u, across) - (u - rackHeight(g, sigma, x, y)) / g.wheelRadius
}

/** x [mm] where the flank begins, seen from the root: past the undercut if there is one; `least` where there is none. */
function junction(cutter: SpaceCutter, sigma: Flank, y: number, least: number): number {
  const { generation: g } = cutter
  const end = cutterEnd(cutter, y)
  if (lambda(g, sigma, end, y) > 0) return end
  const corner = flankPoint(g, sigma, end, y).height
  const stands = (x: number) => {
    if (lambda(g, sigma, x, y) <= 0) return false
    const { radius, chi } = flankPoint(g, sigma, x, y)
    return sigma * (filletAngle(cutter, sigma, y, radius, corner) - chi) <= 0
  }
  let cut = end
  for (let i = 1; i <= STEPS; i++) {
    const x = end + ((least - end) * i) / STEPS
    if (stands(x)) return lastPlace(x, cut, stands)
    cut = x
  }
  return least
}

/**
 * Least x [mm] that can make a flank: on the wheel's tip circle or farther in, on a flank that exists, and where the
 * thread still thins outwards in the plane. At large leads it does not on one side of the face; where it begins to, the
 * rack runs square to x and would touch infinitely far away.
 */
function leastPlace(cutter: SpaceCutter, sigma: Flank, y: number, tipRadius: number): number {
  const { generation: g } = cutter
  const inner = Math.sqrt(Math.max(0, g.form.leastRadius ** 2 - y * y))
  const thins = (x: number) => sigma * rackSlope(g, sigma, x, y) < 0
  const end = cutterEnd(cutter, y)
  const wanted = Math.max(g.centreDistance - tipRadius, inner)
  let thinning = end
  for (let i = 1; i <= STEPS; i++) {
    const x = end + ((wanted - end) * i) / STEPS
    if (!thins(x)) return lastPlace(thinning, x, thins)
    thinning = x
  }
  return wanted
}

/** Whether what the rack point x makes is still there when the whole cutter has passed. */
function isLeft(cutter: SpaceCutter, sigma: Flank, y: number, x: number): boolean {
  const { radius, chi } = flankPoint(cutter.generation, sigma, x, y)
  const edge = noEdge()
  writeSpaceEdge(edge, cutter, sigma, y, radius)
  return sigma * (edge.chi - chi) - cutter.widening < UNNOTICED
}

export function activeRange(cutter: SpaceCutter, sigma: Flank, y: number): ActiveRange {
  const { generation: g, limits } = cutter
  const tipRadius = soundTipRadius(cutter, y)
  const least = leastPlace(cutter, sigma, y, tipRadius)
  const fillet = junction(cutter, sigma, y, least)
  const inside = (x: number) => !(flankPoint(g, sigma, x, y).radius > tipRadius)
  const exists = fillet > least && inside(fillet)
  const outermost = exists ? lastPlace(fillet, least, inside) : fillet
  // between the two the flank may leave the blank and come back
  const left = (x: number) => inside(x) && isLeft(cutter, sigma, y, x)
  const tip = exists ? lastPlace(fillet, outermost, left) : fillet
  const reached = Math.min(Math.sqrt(Math.max(0, limits.wormTip ** 2 - y * y)), fillet)
  const end = Math.max(tip, reached)
  return { tip, junction: fillet, end, cutter: cutterEnd(cutter, y), exists, used: exists && reached > tip }
}

/** Contact [mm] at the two ends of the flank in use: at the wheel's tip, and at the worm's. */
export const rangeEnds = (
  g: Generation,
  sigma: Flank,
  range: ActiveRange,
  y: number,
): readonly [FlankPoint, FlankPoint] => [
  flankPoint(g, sigma, range.tip, y),
  flankPoint(g, sigma, range.end, y),
]

/**
 * The cutter of the pair without backlash. Play only turns a finished flank about its own axis, on worm or
 * wheel, so that the action of the flanks is this one whatever the play.
 */
export const playlessCutter = (gearing: GearNumbers): SpaceCutter => spaceCutter({ ...gearing, backlash: 0 })
