/**
 * Dimensions of a worm and its wheel on shafts at 90 degrees. Lengths in one unit throughout (mm
 * here), angles in rad. Names after ISO 1122-2, from memory; the equations are those of any gear handbook,
 * and of F. L. Litvin and A. Fuentes, Gear Geometry and Applied Theory, 2nd ed. (Cambridge, 2004), section
 * 19.3.
 *
 *   m   axial module            z1  starts               d1, r1  reference diameter, radius of the worm
 *   q   diameter quotient d1/m  z2  teeth                r2      reference radius of the wheel
 *   g   lead angle              a   centre distance
 *   alpha   pressure angle: n normal, x axial, t1 transverse
 */
import { radians } from '../quantity/convert.ts'
import type { GearNumbers } from './gear-numbers.ts'

/** What the outside of a throated wheel stands above its throat, in modules of the depth (common practice). */
const OUTSIDE_ABOVE_THROAT = 0.5

/** px = pi m */
export const axialPitch = (m: number): number => Math.PI * m

/** Advance of the thread in one turn: z1 px */
export const lead = (m: number, z1: number): number => z1 * axialPitch(m)

/** Lead over 2 pi: p = m z1/2, the same at every radius. Litvin and Fuentes, Eq. 19.3.5. */
export const screwParameter = (m: number, z1: number): number => (m * z1) / 2

/** tan g = z1/q */
export const leadAngle = (z1: number, q: number): number => Math.atan(z1 / q)

/** sin g = mn z1/d1: the lead angle where the normal module is the given one. */
export const leadAngleOfNormalModule = (mn: number, z1: number, d1: number): number =>
  Math.asin((mn * z1) / d1)

/** mn = m cos g */
export const normalModule = (m: number, g: number): number => m * Math.cos(g)

/** r2 = m z2/2 */
export const wheelReferenceRadius = (m: number, z2: number): number => (m * z2) / 2

/** a = r1 + r2 + x2 m, with profile shift x2 of the wheel in modules */
export const centreDistance = (r1: number, r2: number, x2: number, m: number): number => r1 + r2 + x2 * m

/** x2 = (a - r1 - r2)/m: the profile shift that fits a given centre distance */
export const profileShift = (a: number, r1: number, r2: number, m: number): number => (a - r1 - r2) / m

/** tan alpha_x = tan alpha_n / cos g */
export const axialPressureAngle = (alphaN: number, g: number): number =>
  Math.atan(Math.tan(alphaN) / Math.cos(g))

/** tan alpha_n = tan alpha_x cos g */
export const normalPressureAngle = (alphaX: number, g: number): number =>
  Math.atan(Math.tan(alphaX) * Math.cos(g))

/** tan alpha_t1 = tan alpha_n / sin g */
export const transversePressureAngle = (alphaN: number, g: number): number =>
  Math.atan(Math.tan(alphaN) / Math.sin(g))

/** Lead angle at the base cylinder of an involute helicoid: cos gb = cos g cos alpha_n. */
export const baseLeadAngle = (g: number, alphaN: number): number => Math.acos(Math.cos(g) * Math.cos(alphaN))

/** Base radius of an involute helicoid: rb = p / tan gb. */
export const baseRadius = (p: number, gb: number): number => p / Math.tan(gb)

/**
 * Width of a wheel that reaches the chord of the worm's tip circle:
 * b2 = sqrt(da1^2 - d1^2) = 2 m sqrt(q + 1).
 */
export const fullWheelWidth = (m: number, q: number): number => 2 * m * Math.sqrt(q + 1)

/**
 * Thread length at which the wheel's outside circle leaves the worm's tip: b1 = 2 sqrt(re2^2 - (a - ra1)^2).
 */
export const threadLength = (re2: number, a: number, ra1: number): number =>
  2 * Math.sqrt(Math.max(0, re2 * re2 - (a - ra1) * (a - ra1)))

/** Play of the wheel [rad] in a mesh with circumferential backlash jt at the reference radius r2. */
export const wheelPlay = (jt: number, r2: number): number => jt / r2

/** Play of the worm [rad] with axial backlash jx: jx/p */
const wormPlay = (jx: number, p: number): number => jx / p

/** Backlash along the common normal: jn = jx cos alpha_n cos g */
const normalBacklash = (jx: number, alphaN: number, g: number): number => jx * Math.cos(alphaN) * Math.cos(g)

/** Circumferential backlash gained by moving the axes apart by da: 2 da tan alpha_x. */
export const backlashOfCentreDistance = (da: number, alphaX: number): number => 2 * da * Math.tan(alphaX)

export interface PairProportions {
  readonly referenceRadiusWorm: number
  readonly referenceRadiusWheel: number
  readonly centreDistance: number
  readonly axialPitch: number
  readonly lead: number
  readonly screwParameter: number
  /** [rad] */
  readonly leadAngle: number
  readonly normalModule: number
  /** [rad] */
  readonly normalPressureAngle: number
  /** [rad] */
  readonly axialPressureAngle: number
  /** [rad] */
  readonly transversePressureAngle: number
  /** Of the wheel, in the module that the depth rule counts in */
  readonly profileShift: number
  readonly addendumWorm: number
  readonly dedendumWorm: number
  /** With the profile shift */
  readonly addendumWheel: number
  readonly dedendumWheel: number
  readonly tipRadiusWorm: number
  readonly rootRadiusWorm: number
  /** Tip of the wheel in the mid-plane */
  readonly throatRadiusWheel: number
  /** Root of the wheel in the mid-plane */
  readonly rootRadiusWheel: number
  readonly outsideRadiusWheel: number
  /** Radius of the groove round the wheel, about the worm's axis */
  readonly gorgeRadius: number
  /** Radius of the cutter that leaves the wheel's root */
  readonly hobTipRadius: number
  /** From the tip of the worm to the root of the wheel, and from the tip of the wheel to that of the worm */
  readonly clearanceWormTip: number
  readonly clearanceWheelTip: number
  /** What backlash comes to along the normal of the flanks [mm], at the wheel and at the worm [rad] */
  readonly normalBacklash: number
  readonly wheelPlay: number
  readonly wormPlay: number
  readonly wheelWidth: number
  readonly fullWheelWidth: number
  readonly threadLength: number
}

interface Depths {
  readonly addendumWorm: number
  readonly dedendumWorm: number
  readonly addendumWheel: number
  readonly dedendumWheel: number
}

/**
 * Heights of thread and tooth without profile shift [mm]. 'mixed' keeps the module outside and the normal
 * module inside: V. B. Bhandari, Design of Machine Elements, worm gears, from memory.
 */
function toothDepths({ depthRule, addendum, clearance }: GearNumbers, m: number, g: number): Depths {
  if (depthRule === 'mixed') {
    const c = Math.cos(g)
    return {
      addendumWorm: m,
      dedendumWorm: (2.2 * c - 1) * m,
      addendumWheel: (2 * c - 1) * m,
      dedendumWheel: (1 + 0.2 * c) * m,
    }
  }
  const unit = depthRule === 'normal' ? normalModule(m, g) : m
  const height = addendum * unit
  const depth = height + clearance * unit
  return { addendumWorm: height, dedendumWorm: depth, addendumWheel: height, dedendumWheel: depth }
}

/** Every dimension [mm, rad] of a pair. */
export function pairProportions(gearing: GearNumbers): PairProportions {
  const { axialModule: m, diameterQuotient: q, wormStarts: z1, wheelTeeth: z2, wheelWidth, centres } = gearing
  const r1 = (q * m) / 2
  const r2 = wheelReferenceRadius(m, z2)
  const g = leadAngle(z1, q)
  const alphaN = radians(gearing.pressureAngle)
  const unit = gearing.depthRule === 'normal' ? normalModule(m, g) : m
  const x2 =
    centres.kind === 'shift' ? centres.profileShift : profileShift(centres.centreDistance, r1, r2, unit)
  const a = centres.kind === 'shift' ? centreDistance(r1, r2, x2, unit) : centres.centreDistance
  const depths = toothDepths(gearing, m, g)
  const addendumWheel = depths.addendumWheel + x2 * unit
  const dedendumWheel = depths.dedendumWheel - x2 * unit
  const tipRadiusWorm = r1 + depths.addendumWorm
  const throat = r2 + addendumWheel
  const outsideRadiusWheel = throat + OUTSIDE_ABOVE_THROAT * unit
  return {
    referenceRadiusWorm: r1,
    referenceRadiusWheel: r2,
    centreDistance: a,
    axialPitch: axialPitch(m),
    lead: lead(m, z1),
    screwParameter: screwParameter(m, z1),
    leadAngle: g,
    normalModule: normalModule(m, g),
    normalPressureAngle: alphaN,
    axialPressureAngle: axialPressureAngle(alphaN, g),
    transversePressureAngle: transversePressureAngle(alphaN, g),
    profileShift: x2,
    addendumWorm: depths.addendumWorm,
    dedendumWorm: depths.dedendumWorm,
    addendumWheel,
    dedendumWheel,
    tipRadiusWorm,
    rootRadiusWorm: r1 - depths.dedendumWorm,
    throatRadiusWheel: throat,
    rootRadiusWheel: r2 - dedendumWheel,
    outsideRadiusWheel,
    gorgeRadius: a - throat,
    hobTipRadius: a - (r2 - dedendumWheel),
    clearanceWormTip: a - (r2 - dedendumWheel) - tipRadiusWorm,
    clearanceWheelTip: a - throat - (r1 - depths.dedendumWorm),
    normalBacklash: normalBacklash(gearing.backlash, alphaN, g),
    wheelPlay: wheelPlay(gearing.backlash, r2),
    wormPlay: wormPlay(gearing.backlash, screwParameter(m, z1)),
    wheelWidth,
    fullWheelWidth: fullWheelWidth(m, q),
    threadLength: threadLength(outsideRadiusWheel, a, tipRadiusWorm),
  }
}
