/**
 * The wheel in one plane y, one tooth space of it, as points in rising order round the space:
 *
 *     tip  -1 flank  fillet  root arc  fillet  +1 flank  tip  middle of the tooth's land
 *
 * Where the exact tooth comes to a point it is cut short there, and where there is no tooth at all a stub
 * stands in, so that every description can be drawn; `gear-problems.ts` says when that happened.
 */
import { lastPlace } from './last-place.ts'
import type { Flank } from './wheel-flank.ts'
import {
  blankRadius,
  noEdge,
  rootRadius,
  type SpaceCutter,
  type SpaceEdge,
  writeSpaceEdge,
} from './wheel-space.ts'

/** How many pieces each part of the section is drawn with. */
export interface SectionDetail {
  readonly flank: number
  readonly fillet: number
  readonly root: number
}

export interface WheelSection {
  readonly y: number
  /** Distance from the wheel's axis [mm], angle in the wheel's own frame [rad] */
  readonly radius: Float64Array
  readonly chi: Float64Array
  /** Contact angle t of wheel-space.ts [rad]; NaN where the point is not on the exact flank */
  readonly contact: Float64Array
}

/** Levels at which the tooth is looked at for a point, from root to tip. */
const LEVELS = 8
/**
 * Height of the stub, and least height worth calling a tooth, as parts of the nominal height (our choice).
 */
const STUB = 0.25
const LEAST_HEIGHT = 0.5
/** A face wider than this part of the hob's tip radius, on each side, has no root (our choice). */
const WIDEST = 0.9
/** Part of the face that is always drawn (our choice). */
const LEAST_FACE = 0.1
const FACE_BISECTIONS = 8
const JUNCTION_BISECTIONS = 12

/** Points on the two flanks, fillets and root arc together, the tooth's land not counted. */
export const spacePoints = ({ flank, fillet, root }: SectionDetail): number => 2 * (flank + fillet) + root + 1

/** Width of the tooth [mm] on the circle R; negative where the two sides of the cut have met. */
export function toothWidth(cutter: SpaceCutter, y: number, R: number): number {
  const edge = noEdge()
  writeSpaceEdge(edge, cutter, 1, y, R)
  const plus = edge.chi
  writeSpaceEdge(edge, cutter, -1, y, R)
  return (cutter.toothPitch - plus + edge.chi) * R
}

/** Radius [mm] up to which the tooth has width in the plane, at most the blank's. */
export function soundTipRadius(cutter: SpaceCutter, y: number): number {
  const root = rootRadius(cutter, y)
  const height = blankRadius(cutter, y) - root
  const holds = (R: number) => toothWidth(cutter, y, R) >= cutter.leastLand
  for (let i = 1; i <= LEVELS; i++) {
    const R = root + (height * i) / LEVELS
    if (!holds(R)) return lastPlace(R - height / LEVELS, R, holds)
  }
  return root + height
}

/**
 * Whether a tooth of useful height stands in the plane y, and so in -y: one is the other turned half round.
 */
function planeIsSound(cutter: SpaceCutter, y: number): boolean {
  const root = rootRadius(cutter, y)
  const height = blankRadius(cutter, y) - root
  const nominal = blankRadius(cutter, 0) - rootRadius(cutter, 0)
  if (height <= LEAST_HEIGHT * nominal) return false
  for (let i = 1; i <= LEAST_HEIGHT * LEVELS; i++) {
    if (toothWidth(cutter, y, root + (height * i) / LEVELS) < cutter.leastLand) return false
  }
  return true
}

/** Half the face width [mm] over which the wheel has teeth, at most half of the width asked for. */
export function soundHalfFace(cutter: SpaceCutter, wheelWidth: number): number {
  const holds = (y: number) => planeIsSound(cutter, y)
  const wanted = Math.min(wheelWidth / 2, WIDEST * cutter.limits.hobTip)
  if (holds(wanted)) return wanted
  let good = 0
  let bad = wanted
  for (let i = 0; i < FACE_BISECTIONS; i++) {
    const middle = (good + bad) / 2
    if (holds(middle)) good = middle
    else bad = middle
  }
  return Math.max(good, LEAST_FACE * wanted)
}

/** Whether the middle of the wheel has a tooth of useful height. */
export const toothExists = (cutter: SpaceCutter): boolean => planeIsSound(cutter, 0)

/**
 * Radius [mm] where the fillet ends and the flank begins; the tip itself where undercut has taken the whole
 * flank.
 */
export function junctionRadius(cutter: SpaceCutter, sigma: Flank, y: number, tip: number): number {
  const edge = noEdge()
  const onCorner = (R: number) => {
    writeSpaceEdge(edge, cutter, sigma, y, R)
    return edge.corner
  }
  if (onCorner(tip)) return tip
  let corner = rootRadius(cutter, y)
  let flank = tip
  for (let i = 0; i < JUNCTION_BISECTIONS; i++) {
    const middle = (corner + flank) / 2
    if (onCorner(middle)) corner = middle
    else flank = middle
  }
  return flank
}

/**
 * Level i of a side, from the tip (0) to the root: even in height on the flank, even along the corner's path
 * below.
 */
function levelRadius(i: number, detail: SectionDetail, tip: number, junction: number, root: number): number {
  const { flank, fillet } = detail
  if (junction >= tip) {
    const u = 1 - i / (flank + fillet)
    return Math.sqrt(root * root + u * u * (tip * tip - root * root))
  }
  if (i <= flank) return tip + ((junction - tip) * i) / flank
  const u = 1 - (i - flank) / fillet
  return Math.sqrt(root * root + u * u * (junction * junction - root * root))
}

export function wheelSection(cutter: SpaceCutter, y: number, detail: SectionDetail): WheelSection {
  const points = spacePoints(detail)
  const radius = new Float64Array(points + 1)
  const chi = new Float64Array(points + 1)
  const contact = new Float64Array(points + 1).fill(NaN)
  const root = rootRadius(cutter, y)
  const tip = Math.max(soundTipRadius(cutter, y), root + STUB * (blankRadius(cutter, y) - root))
  const side = detail.flank + detail.fillet
  const edge: SpaceEdge = noEdge()
  for (const sigma of [-1, 1] as const) {
    const junction = junctionRadius(cutter, sigma, y, tip)
    for (let i = 0; i <= side; i++) {
      const at = sigma < 0 ? i : points - 1 - i
      const R = i === side ? root : levelRadius(i, detail, tip, junction, root)
      writeSpaceEdge(edge, cutter, sigma, y, R)
      radius[at] = R
      chi[at] = edge.chi
      if (!edge.corner) contact[at] = edge.contact
    }
  }
  keepToothOpen(cutter, radius, chi, points)
  for (let i = 1; i < detail.root; i++) {
    radius[side + i] = root
    chi[side + i] = chi[side]! + ((chi[side + detail.root]! - chi[side]!) * i) / detail.root
  }
  radius[points] = tip
  chi[points] = (chi[0]! + cutter.toothPitch + chi[points - 1]!) / 2
  return { y, radius, chi, contact }
}

/** Only a stub needs this: squeezes the space where its two sides would leave no tooth. */
function keepToothOpen(cutter: SpaceCutter, radius: Float64Array, chi: Float64Array, points: number): void {
  for (let i = 0; i < points >> 1; i++) {
    const plus = points - 1 - i
    const R = Math.min(radius[i]!, radius[plus]!)
    const most = cutter.toothPitch - cutter.leastLand / 2 / R
    const width = chi[plus]! - chi[i]!
    if (width <= most) continue
    chi[i] = chi[i]! + (width - most) / 2
    chi[plus] = chi[plus]! - (width - most) / 2
  }
}
