/**
 * Plain moulded wheel: an involute helical gear of the worm's lead angle and hand, which meets a ZI worm in a
 * point. One tooth space in the plane y, in the frame of wheel-flank.ts:
 *
 *     chi = sigma psi(R) + P y/(r1 r2),   rb = r2 cos alpha_x
 *     psi(R) = pi/(2 z2) - 2 e tan alpha_x/(m z2) + inv(acos(rb/R)) - inv(alpha_x),   e = a - r1 - r2
 *
 * and a radial line below the base cylinder. Any text on involute gears, as G. M. Maitra, Handbook of Gear
 * Design, 2nd ed. (Tata McGraw-Hill, 1994), from memory; that e leaves the pair free of play is derived here.
 */
import type { GearNumbers } from './gear-numbers.ts'
import { pairProportions } from './proportions.ts'
import { lastPlace } from './last-place.ts'
import type { Flank } from './wheel-flank.ts'
import { handSign } from './wheel-motion.ts'
import { type SectionDetail, spacePoints, type WheelSection } from './wheel-section.ts'

export interface HelicalTooth {
  /** [mm] */
  readonly baseRadius: number
  readonly tipRadius: number
  readonly rootRadius: number
  /** [rad] */
  readonly toothPitch: number
  /** psi at the base cylinder and below [rad] */
  readonly spaceAtBase: number
  /** dchi/dy [rad/mm] */
  readonly twist: number
}

/** Least width of the tooth's tip and of the space's root, in modules (our choice). */
const LEAST_LAND = 0.05
/** Part of the tooth's height that a radial foot must have to be drawn as a piece of its own. */
const LEAST_FOOT = 0.05

const involute = (alpha: number): number => Math.tan(alpha) - alpha

/** Half the angle of the space [rad] at radius R; the same everywhere below the base cylinder. */
export const spaceHalfAngle = ({ baseRadius, spaceAtBase }: HelicalTooth, R: number): number =>
  spaceAtBase + involute(Math.acos(Math.min(1, baseRadius / R)))

export function helicalTooth(gearing: GearNumbers): HelicalTooth {
  const pair = pairProportions(gearing)
  const { referenceRadiusWorm: r1, referenceRadiusWheel: r2, axialPressureAngle: alphaX } = pair
  const { axialModule: m, wheelTeeth: z2, backlash, thinned } = gearing
  const apart = pair.centreDistance - r1 - r2
  const thinner = thinned === 'wheel' ? backlash / (2 * r2) : 0
  const tooth = {
    baseRadius: r2 * Math.cos(alphaX),
    tipRadius: pair.throatRadiusWheel,
    rootRadius: pair.rootRadiusWheel,
    toothPitch: (2 * Math.PI) / z2,
    spaceAtBase: Math.PI / (2 * z2) - (2 * apart * Math.tan(alphaX)) / (m * z2) - involute(alphaX) + thinner,
    twist: (handSign(gearing.hand) * pair.screwParameter) / (r1 * r2),
  }
  const land = LEAST_LAND * m
  const open = (R: number) => 2 * spaceHalfAngle(tooth, R) * R >= land
  const thick = (R: number) => (tooth.toothPitch - 2 * spaceHalfAngle(tooth, R)) * R >= land
  return {
    ...tooth,
    tipRadius: lastPlace(r2, tooth.tipRadius, thick),
    rootRadius: lastPlace(r2, tooth.rootRadius, open),
  }
}

/** chi [rad] of the flank sigma at radius R in the plane y. */
export const helicalFlankAngle = (tooth: HelicalTooth, sigma: Flank, R: number, y: number): number =>
  sigma * spaceHalfAngle(tooth, R) + tooth.twist * y

/** Writes the unit normal, outward from the tooth, of the flank sigma or of its radial foot. */
export function writeHelicalNormal(
  out: Float64Array | Float32Array,
  at: number,
  tooth: HelicalTooth,
  sigma: Flank,
  R: number,
  y: number,
): void {
  const chi = helicalFlankAngle(tooth, sigma, R, y)
  const rb = tooth.baseRadius
  const along = R > rb ? Math.sqrt(R * R - rb * rb) / (rb * R) : 0
  const c = Math.cos(chi)
  const s = Math.sin(chi)
  const nx = -sigma * (s / R) - along * c
  const ny = sigma * tooth.twist
  const nz = -sigma * (c / R) + along * s
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz)
  out[at] = nx / length
  out[at + 1] = ny / length
  out[at + 2] = nz / length
}

/** Level i of a side, from the tip (0) to the root. */
function levelRadius(i: number, { flank, fillet }: SectionDetail, tooth: HelicalTooth): number {
  const { tipRadius: tip, rootRadius: root, baseRadius: base } = tooth
  if (base - root < LEAST_FOOT * (tip - root)) return tip + ((root - tip) * i) / (flank + fillet)
  const foot = Math.min(base, tip)
  return i <= flank ? tip + ((foot - tip) * i) / flank : foot + ((root - foot) * (i - flank)) / fillet
}

/**
 * The tooth space in the plane y, in the order of wheel-section.ts. `contact` holds the transverse pressure
 * angle [rad] at the point, and NaN where the point is not on the involute.
 */
export function helicalSection(tooth: HelicalTooth, y: number, detail: SectionDetail): WheelSection {
  const points = spacePoints(detail)
  const radius = new Float64Array(points + 1)
  const chi = new Float64Array(points + 1)
  const contact = new Float64Array(points + 1).fill(NaN)
  const side = detail.flank + detail.fillet
  for (const sigma of [-1, 1] as const) {
    for (let i = 0; i <= side; i++) {
      const at = sigma < 0 ? i : points - 1 - i
      const R = i === side ? tooth.rootRadius : levelRadius(i, detail, tooth)
      radius[at] = R
      chi[at] = helicalFlankAngle(tooth, sigma, R, y)
      if (R >= tooth.baseRadius) contact[at] = Math.acos(tooth.baseRadius / R)
    }
  }
  for (let i = 1; i < detail.root; i++) {
    radius[side + i] = tooth.rootRadius
    chi[side + i] = chi[side]! + ((chi[side + detail.root]! - chi[side]!) * i) / detail.root
  }
  radius[points] = tooth.tipRadius
  chi[points] = tooth.twist * y + tooth.toothPitch / 2
  return { y, radius, chi, contact }
}
