/**
 * The worm drawn flat: axis to the right (u = z), x up (v), seen from +y. Its axial section, and its side view
 * with the true silhouette of the helicoid, at zero turns.
 */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { thinnedThreadForm } from '../../sim/gear/thread-profile.ts'
import { toothLimits } from '../../sim/gear/tooth-limits.ts'
import { handSign } from '../../sim/gear/wheel-motion.ts'
import { wormBody } from '../../sim/shape/body.ts'
import { type Flat, stretch } from './flat.ts'

/** Points on a flank, in a turn, and along a pitch: fine enough for lines of 0.35 mm at five times the size. */
const FLANK_POINTS = 24
const TURN_POINTS = 180
const PITCH_POINTS = 96

export interface WormShape {
  readonly tip: number
  readonly root: number
  readonly axialPitch: number
  /** p with the sign of the hand [mm/rad] */
  readonly parameter: number
  readonly threadLength: number
  readonly shaftRadius: number
  readonly stubLength: number
  /** Half the thread's axial thickness, without what backlash takes off */
  readonly halfThickness: (r: number) => number
}

export function wormShape(gearing: GearNumbers): WormShape {
  const { wormTip, wormRoot } = toothLimits(gearing)
  const { axialPitch, screwParameter } = pairProportions(gearing)
  return {
    tip: wormTip,
    root: wormRoot,
    axialPitch,
    parameter: handSign(gearing.hand) * screwParameter,
    ...wormBody(gearing),
    halfThickness: thinnedThreadForm(gearing).halfThickness,
  }
}

/** Edge of the section along the ray at the angle theta, from z = from to z = to: [z, r]. */
export function axialEdge(worm: WormShape, theta: number, from: number, to: number): Flat[] {
  const { tip, root, axialPitch: px, parameter, halfThickness } = worm
  const profile: Flat[] = []
  for (let i = 0; i <= FLANK_POINTS; i++) {
    const r = root + ((tip - root) * i) / FLANK_POINTS
    profile.push([-halfThickness(r), r])
  }
  for (let i = FLANK_POINTS; i >= 0; i--) profile.push([-profile[i]![0], profile[i]![1]])
  const first = Math.floor((from - parameter * theta) / px) - 1
  const last = Math.ceil((to - parameter * theta) / px) + 1
  const edge: Flat[] = []
  for (let k = first; k <= last; k++) {
    for (const [zeta, r] of profile) edge.push([parameter * theta + k * px + zeta, r])
  }
  return stretch(edge, from, to)
}

/** Radius of the worm's surface at an axial distance zeta from the middle of a thread. */
function surfaceRadius({ tip, root, axialPitch: px, halfThickness }: WormShape): (zeta: number) => number {
  const levels = Array.from({ length: FLANK_POINTS + 1 }, (_, i) => root + ((tip - root) * i) / FLANK_POINTS)
  const widths = levels.map(halfThickness)
  return (zeta) => {
    const off = Math.abs(zeta - Math.round(zeta / px) * px)
    if (off >= widths[0]!) return root
    if (off <= widths.at(-1)!) return tip
    const i = widths.findIndex((width) => width <= off)
    const part = (widths[i - 1]! - off) / (widths[i - 1]! - widths[i]!)
    return levels[i - 1]! + (levels[i]! - levels[i - 1]!) * part
  }
}

export interface WormSide {
  /** Upper and lower edge of the silhouette over the thread's length, left to right */
  readonly upper: readonly Flat[]
  readonly lower: readonly Flat[]
  /** Edges of the thread's land and, where they are not hidden, of the groove */
  readonly edges: readonly (readonly Flat[])[]
}

export function wormSide(worm: WormShape): WormSide {
  const { tip, root, threadLength, axialPitch: px, parameter, halfThickness } = worm
  const radiusAt = surfaceRadius(worm)
  const half = threadLength / 2
  const steps = Math.ceil((threadLength / px) * PITCH_POINTS)
  const widest = Math.acos(root / tip)
  const silhouette = (side: 1 | -1): Flat[] =>
    Array.from({ length: steps + 1 }, (_, i) => {
      const z = -half + (threadLength * i) / steps
      let out = root
      for (let j = -TURN_POINTS / 4; j <= TURN_POINTS / 4; j++) {
        const theta = (j * widest) / (TURN_POINTS / 4)
        const about = side > 0 ? theta : Math.PI + theta
        out = Math.max(out, radiusAt(z - parameter * about) * Math.cos(theta))
      }
      return [z, side * out]
    })
  const shown = (theta: number, r: number, z: number): boolean => {
    if (Math.abs(z) > half) return false
    const v = r * Math.cos(theta)
    for (let i = 1; i < FLANK_POINTS; i++) {
      const before = r + ((tip - r) * i) / FLANK_POINTS
      if (radiusAt(z - parameter * Math.acos(v / before)) > before) return false
    }
    return true
  }
  const edges: Flat[][] = []
  const reach = Math.ceil((half + Math.abs(parameter) * Math.PI) / px) + 1
  for (let k = -reach; k <= reach; k++) {
    for (const [r, sigma] of [
      [tip, 1] as const,
      [tip, -1] as const,
      [root, 1] as const,
      [root, -1] as const,
    ]) {
      const along = k * px + sigma * halfThickness(r)
      edges.push(...shownPieces(along, r, parameter, shown))
    }
  }
  return { upper: silhouette(1), lower: silhouette(-1), edges }
}

/** The seen pieces of a helix on the near half of the worm. */
function shownPieces(
  along: number,
  r: number,
  parameter: number,
  shown: (theta: number, r: number, z: number) => boolean,
): Flat[][] {
  const pieces: Flat[][] = []
  let piece: Flat[] = []
  for (let i = 0; i <= TURN_POINTS / 2; i++) {
    const theta = (2 * Math.PI * i) / TURN_POINTS
    const z = along + parameter * theta
    if (shown(theta, r, z)) piece.push([z, r * Math.cos(theta)])
    else {
      if (piece.length > 1) pieces.push(piece)
      piece = []
    }
  }
  if (piece.length > 1) pieces.push(piece)
  return pieces
}
