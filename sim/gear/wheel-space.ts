/**
 * One tooth space of the wheel in one plane y: everything that the worm-shaped cutter reaches there. On the
 * circle of radius R a cutter point at the angle t before the wheel's axis ends at
 *
 *     f(t) = t + (z0(a - R cos t) - R sin t)/r2
 *
 * and the edge of the space is the largest f for sigma = +1, the least for sigma = -1, both turned by half the
 * backlash where the wheel is the thinned part. Inside the range f' = 0 is the flank of wheel-flank.ts,
 * exactly; at the end of the range it is the path of the cutter's corner, the fillet. Taking the extreme
 * settles by itself which of the two is there, also where the fillet undercuts the flank.
 */
import { crossing } from './crossing.ts'
import type { GearNumbers } from './gear-numbers.ts'
import { pairProportions } from './proportions.ts'
import { thinning } from './thread-profile.ts'
import { type ToothLimits, toothLimits } from './tooth-limits.ts'
import { type Flank, type Generation, rackHeight, rackSlope, wheelGeneration } from './wheel-flank.ts'

export interface SpaceCutter {
  readonly generation: Generation
  readonly limits: ToothLimits
  readonly outsideRadius: number
  /** [rad] */
  readonly toothPitch: number
  /** Least width of the wheel's tip [mm] */
  readonly leastLand: number
  /** Angle [rad] by which each flank is turned into the tooth, for backlash that is taken off the wheel */
  readonly widening: number
}

/** Least tip of a wheel tooth, in modules, before the tooth is cut short (our choice). */
const LEAST_TIP = 0.05
const SAMPLES = 20

export function spaceCutter(gearing: GearNumbers): SpaceCutter {
  const generation = wheelGeneration(gearing)
  return {
    generation,
    limits: toothLimits(gearing, generation.form),
    outsideRadius: pairProportions(gearing).outsideRadiusWheel,
    toothPitch: (2 * Math.PI) / gearing.wheelTeeth,
    leastLand: LEAST_TIP * gearing.axialModule,
    widening: thinning('wheel', gearing) / generation.wheelRadius,
  }
}

/** Innermost reach of the cutter in the plane, from the wheel's axis [mm]. */
export const rootRadius = ({ generation, limits }: SpaceCutter, y: number): number =>
  generation.centreDistance - Math.sqrt(limits.hobTip ** 2 - y * y)

/** Tip of the throated blank in the plane [mm]. */
export const blankRadius = ({ generation, limits, outsideRadius }: SpaceCutter, y: number): number =>
  Math.abs(y) >= limits.gorge
    ? outsideRadius
    : Math.min(outsideRadius, generation.centreDistance - Math.sqrt(limits.gorge ** 2 - y * y))

export interface SpaceEdge {
  /** [rad] */
  chi: number
  /** Angle t at which the cutter touches [rad] */
  contact: number
  /** The cutter's corner made it: fillet, not flank */
  corner: boolean
}

export const noEdge = (): SpaceEdge => ({ chi: 0, contact: 0, corner: true })

/** Writes the edge of the space on side sigma at radius R of the plane y. */
export function writeSpaceEdge(
  out: SpaceEdge,
  cutter: SpaceCutter,
  sigma: Flank,
  y: number,
  R: number,
): void {
  const { generation: g, limits } = cutter
  const { centreDistance: a, wheelRadius: r2 } = g
  const toCorner = a - Math.sqrt(limits.hobTip ** 2 - y * y)
  // Rounding may put R a hair inside the root circle.
  const end = Math.acos(Math.min(1, toCorner / R))
  const reach = (t: number) => t + (rackHeight(g, sigma, a - R * Math.cos(t), y) - R * Math.sin(t)) / r2
  const slope = (t: number) =>
    sigma * (r2 - R * Math.cos(t) + rackSlope(g, sigma, a - R * Math.cos(t), y) * R * Math.sin(t))
  const step = (2 * end) / SAMPLES
  let best = 0
  let most = -Infinity
  let top = 0
  let highest = -Infinity
  let before = Infinity
  let last = Infinity
  for (let i = 0; i <= SAMPLES; i++) {
    const value = sigma * reach(i * step - end)
    if (value > most) {
      most = value
      best = i
    }
    if (last >= before && last >= value && last > highest) {
      highest = last
      top = i - 1
    }
    before = last
    last = value
  }
  const at = (i: number) => Math.min(end, Math.max(-end, i * step - end))
  const touching = (i: number) => {
    const from = slope(at(i)) > 0 ? i : i - 1
    return crossing(slope, at(from), at(from + 1))
  }
  out.corner = (best === 0 && slope(-end) <= 0) || (best === SAMPLES && slope(end) >= 0) || step === 0
  out.contact = out.corner ? at(best) : touching(best)
  if (out.corner && top > 0) {
    // Just above an undercut fillet the flank reaches farther than the corner, but between two samples.
    const onFlank = touching(top)
    if (sigma * reach(onFlank) > most) {
      out.contact = onFlank
      out.corner = false
    }
  }
  out.chi = reach(out.contact) + sigma * cutter.widening
}
