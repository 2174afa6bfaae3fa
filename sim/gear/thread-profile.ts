/**
 * Half the axial thickness h(r) of the worm thread and its slope h'(r), one function for each profile:
 *
 *     flank:  z = P theta + sigma h(r),   h(r1) = px/4
 *             sigma = +1 on the +z side of the thread, -1 on the other
 *
 * r, h [mm]; P = p for a right hand thread, -p for a left hand one; h itself does not know the hand.
 * ZA is straight in the axial plane, ZN straight in the plane square to the thread at mid space, ZI an
 * involute helicoid. Names after ISO/TR 10828, from memory; helicoids after F. L. Litvin and A. Fuentes, Gear
 * Geometry and Applied Theory, 2nd ed. (Cambridge, 2004), ch. 19; the explicit form of ZN is derived here.
 */
import type { GearNumbers } from './gear-numbers.ts'
import { baseLeadAngle, baseRadius, pairProportions } from './proportions.ts'

export interface ThreadForm {
  /** Smallest radius [mm] at which the flank exists; below it the thread is as thick as there. */
  readonly leastRadius: number
  readonly halfThickness: (r: number) => number
  /** dh/dr, negative where the thread thins outwards */
  readonly slope: (r: number) => number
}

/** Keeps ZN off the point where its straight side turns back and the slope has no bound. */
const ABOVE_TURNING_POINT = 1.002
const NEWTON_STEPS = 12

function axialForm(px: number, r1: number, alphaX: number): ThreadForm {
  const tan = Math.tan(alphaX)
  return { leastRadius: 0, halfThickness: (r) => px / 4 - (r - r1) * tan, slope: () => -tan }
}

function involuteForm(px: number, r1: number, p: number, rb: number): ThreadForm {
  const involute = (r: number) => {
    const t = Math.sqrt(Math.max(0, (r * r) / (rb * rb) - 1))
    return t - Math.atan(t)
  }
  const atReference = involute(r1)
  return {
    leastRadius: rb,
    halfThickness: (r) => px / 4 - p * (involute(Math.max(r, rb)) - atReference),
    slope: (r) => (r <= rb ? 0 : (-p * Math.sqrt(r * r - rb * rb)) / (rb * r)),
  }
}

/** tau solves r1 cot g sin tau + p tau = px/4: the place of the blade's reference point beside mid space. */
function bladeAngle(px: number, r1: number, p: number, g: number): number {
  const k = r1 / Math.tan(g)
  let tau = px / 4 / (k + p)
  for (let i = 0; i < NEWTON_STEPS; i++) {
    tau -= (k * Math.sin(tau) + p * tau - px / 4) / (k * Math.cos(tau) + p)
  }
  return tau
}

function normalForm(px: number, r1: number, p: number, g: number, alphaN: number): ThreadForm {
  const tau = bladeAngle(px, r1, p, g)
  const s = Math.sin(g)
  const B = Math.tan(alphaN)
  const A = (r1 * Math.sin(tau)) / s - B * r1 * Math.cos(tau)
  const Q = 1 + s * s * B * B
  const leastRadius = (ABOVE_TURNING_POINT * s * Math.abs(A)) / Math.sqrt(Q)
  const middle = -s * s * A * B
  const constant = middle * middle - Q * s * s * A * A
  const across = (r: number) => (middle + Math.sqrt(Math.max(0, constant + Q * r * r))) / Q
  return {
    leastRadius,
    halfThickness: (r) => {
      const X = across(Math.max(r, leastRadius))
      const eta = A + B * X
      return px / 2 - (eta * Math.cos(g) + p * Math.atan2(eta * s, X))
    },
    slope: (r) => {
      if (r <= leastRadius) return 0
      const X = across(r)
      const eta = A + B * X
      const u = eta * s
      const along = B * Math.cos(g) + (p * (B * s * X - u)) / (X * X + u * u)
      return (-along * r) / (X + s * s * eta * B)
    },
  }
}

/** The full thread, half a pitch thick at the reference circle: that of the hob. */
export function threadForm(gearing: GearNumbers): ThreadForm {
  const { axialPitch: px, referenceRadiusWorm: r1, screwParameter: p, ...rest } = pairProportions(gearing)
  const { leadAngle: g, normalPressureAngle: alphaN, axialPressureAngle: alphaX } = rest
  if (gearing.profile === 'ZA') return axialForm(px, r1, alphaX)
  if (gearing.profile === 'ZI') return involuteForm(px, r1, p, baseRadius(p, baseLeadAngle(g, alphaN)))
  return normalForm(px, r1, p, g, alphaN)
}

/** What backlash takes off each flank of a part, at its reference circle [mm]: jx/2, from one of the parts. */
export const thinning = (part: GearNumbers['thinned'], { thinned, backlash }: GearNumbers): number =>
  part === thinned ? backlash / 2 : 0

/**
 * The thread as it is made: without the backlash where that is taken off the worm. Both flanks move along the
 * axis as they are, so they stay what they were.
 */
export function thinnedThreadForm(gearing: GearNumbers): ThreadForm {
  const form = threadForm(gearing)
  const less = thinning('worm', gearing)
  return { ...form, halfThickness: (r) => form.halfThickness(r) - less }
}
