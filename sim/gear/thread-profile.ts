/**
 * Half the axial thickness h(r) of the worm thread and its slope h'(r), one function for each profile:
 *
 *     flank:  z = P theta + sigma h(r),   h(r1) = px/4
 *             sigma = +1 on the +z side of the thread, -1 on the other
 *
 * r, h [mm]; P = p for a right hand thread, -p for a left hand one; h itself does not know the hand.
 * ZA is straight in the axial plane, ZN straight in the plane square to the thread at mid space
 * (thread-blade.ts), ZI an involute helicoid, ZK ground by a straight-sided disc (thread-disc.ts). Names after
 * ISO/TR 10828, from memory; helicoids after F. L. Litvin and A. Fuentes, Gear Geometry and Applied Theory, 2nd
 * ed. (Cambridge, 2004), ch. 19.
 */
import type { GearNumbers } from './gear-numbers.ts'
import { baseLeadAngle, baseRadius, type PairProportions, pairProportions } from './proportions.ts'
import { normalForm } from './thread-blade.ts'
import { discForm } from './thread-disc.ts'
import type { ThreadForm } from './thread-form.ts'

/** How far beyond root and tip the table of a ground thread goes, in modules. */
const TABLE_MARGIN = 0.05
/** Least part of the reference radius that a root is looked for at, on a worm without one. */
const INNERMOST = 0.1

function axialForm(px: number, r1: number, alphaX: number): ThreadForm {
  const tan = Math.tan(alphaX)
  return {
    leastRadius: 0,
    greatestRadius: Infinity,
    halfThickness: (r) => px / 4 - (r - r1) * tan,
    slope: () => -tan,
  }
}

function involuteForm(px: number, r1: number, p: number, rb: number): ThreadForm {
  const involute = (r: number) => {
    const t = Math.sqrt(Math.max(0, (r * r) / (rb * rb) - 1))
    return t - Math.atan(t)
  }
  const atReference = involute(r1)
  return {
    leastRadius: rb,
    greatestRadius: Infinity,
    halfThickness: (r) => px / 4 - p * (involute(Math.max(r, rb)) - atReference),
    slope: (r) => (r <= rb ? 0 : (-p * Math.sqrt(r * r - rb * rb)) / (rb * r)),
  }
}

/** Mean radius [mm] of the smallest disc that has a body behind its cutting sides: 1.5 thread depths (our choice). */
export const leastDiscRadius = ({ addendumWorm, dedendumWorm }: PairProportions): number =>
  1.5 * (addendumWorm + dedendumWorm)

/** The full thread, half a pitch thick at the reference circle: that of the hob. */
export function threadForm(gearing: GearNumbers): ThreadForm {
  const pair = pairProportions(gearing)
  const { axialPitch: px, referenceRadiusWorm: r1, screwParameter: p } = pair
  const { leadAngle: g, normalPressureAngle: alphaN, axialPressureAngle: alphaX } = pair
  if (gearing.profile === 'ZA') return axialForm(px, r1, alphaX)
  if (gearing.profile === 'ZI') return involuteForm(px, r1, p, baseRadius(p, baseLeadAngle(g, alphaN)))
  if (gearing.profile === 'ZN') return normalForm(px, r1, p, g, alphaN)
  return groundForm(gearing, pair)
}

function groundForm({ axialModule: m, discDiameter }: GearNumbers, pair: PairProportions): ThreadForm {
  const { axialPitch: px, referenceRadiusWorm: r1, screwParameter: p } = pair
  const Rg = Math.max(discDiameter / 2, leastDiscRadius(pair))
  const least = Math.max(pair.rootRadiusWorm - TABLE_MARGIN * m, INNERMOST * r1)
  const most = Math.max(pair.hobTipRadius, pair.tipRadiusWorm) + TABLE_MARGIN * m
  return discForm({ px, r1, p, g: pair.leadAngle, alphaN: pair.normalPressureAngle, Rg }, least, most)
}

/** What backlash takes off each flank of a part, at its reference circle [mm]: jx/2, from one of the parts. */
export const thinning = (part: GearNumbers['thinned'], { thinned, backlash }: GearNumbers): number =>
  part === thinned ? backlash / 2 : 0

/**
 * The thread as it is made: without the backlash where that is taken off the worm. Both flanks move along the
 * axis as they are, so they stay what they were.
 */
export function thinnedThreadForm(gearing: GearNumbers, full: ThreadForm = threadForm(gearing)): ThreadForm {
  const less = thinning('worm', gearing)
  return { ...full, halfThickness: (r) => full.halfThickness(r) - less }
}
