/**
 * What the cutter leaves of the wheel's teeth, looked at in planes from the middle of the face to one side.
 * The other side is the same with the flanks changed over: a wheel turned half round about a tooth space is
 * itself.
 */
import type { GearNumbers } from './gear-numbers.ts'
import { axialPitch } from './proportions.ts'
import { activeRange, cutterEnd, filletAngle, lambda, playlessCutter, rangeEnds } from './undercut.ts'
import { type Flank, flankPoint, type FlankPoint } from './wheel-flank.ts'
import { soundHalfFace, soundTipRadius, toothExists, toothWidth } from './wheel-section.ts'
import { blankRadius, type SpaceCutter, spaceCutter } from './wheel-space.ts'

const PLANES = 6
/** Part of the worm's tip radius by which the flank in use may fall short unnoticed (our choice). */
const UNNOTICED = 0.003

interface FacePlane {
  readonly y: number
  /** Radius [mm] up to which the tooth has width */
  readonly tip: number
}

/** Planes y [mm] over half a face width that has teeth. */
const planesOver = (halfFace: number): readonly number[] =>
  Array.from({ length: PLANES + 1 }, (_, i) => (halfFace * i) / PLANES)

const facePlanes = (cutter: SpaceCutter, halfFace: number): readonly FacePlane[] =>
  planesOver(halfFace).map((y) => ({ y, tip: soundTipRadius(cutter, y) }))

/** The flank in use on one side of the thread, in one plane: contact at the wheel's tip, and at the worm's. */
interface UsedFlank {
  readonly sigma: Flank
  readonly ends: readonly [FlankPoint, FlankPoint]
}

function usedFlanks(cutter: SpaceCutter, planes: readonly number[]): readonly UsedFlank[] {
  const at = (y: number, sigma: Flank): readonly UsedFlank[] => {
    const range = activeRange(cutter, sigma, y)
    return range.used ? [{ sigma, ends: rangeEnds(cutter.generation, sigma, range, y) }] : []
  }
  // in the mid-plane the two flanks are each other's mirror image
  return planes.flatMap((y) => (y === 0 ? at(y, 1) : [...at(y, -1), ...at(y, 1)]))
}

/** A throated wheel looked at: as it is made, and its flanks as they act. */
export interface WheelLook {
  readonly cutter: SpaceCutter
  readonly playless: SpaceCutter
  readonly halfFace: number
  readonly planes: readonly FacePlane[]
  readonly flanks: readonly UsedFlank[]
}

/** Null where the worm leaves no tooth. */
export function wheelLook(gearing: GearNumbers): WheelLook | null {
  const cutter = spaceCutter(gearing)
  if (!toothExists(cutter)) return null
  const halfFace = soundHalfFace(cutter, gearing.wheelWidth)
  const planes = facePlanes(cutter, halfFace)
  const playless = gearing.backlash === 0 ? cutter : playlessCutter(gearing)
  return { cutter, playless, halfFace, planes, flanks: usedFlanks(playless, planesOver(halfFace)) }
}

/** Width [mm] of the narrowest tip over the face; 0 where teeth come to a point, below 0 without a tooth. */
export function tipWidth(gearing: GearNumbers): number {
  const cutter = spaceCutter(gearing)
  if (!toothExists(cutter)) return -1
  return leastTipWidth(cutter, facePlanes(cutter, soundHalfFace(cutter, gearing.wheelWidth)))
}

/** Where undercut begins: distance [mm] from the mid-plane, and on which flank there. */
export interface Undercut {
  readonly y: number
  readonly flank: Flank | 'both'
}

/** Whether the flank still stands where the rack point x makes it, and the fillet has not taken it away. */
function standsAt(cutter: SpaceCutter, sigma: Flank, y: number, x: number): boolean {
  const { generation: g } = cutter
  const end = cutterEnd(cutter, y)
  if (lambda(g, sigma, end, y) > 0) return true
  if (lambda(g, sigma, x, y) <= 0) return false
  const { radius, chi } = flankPoint(g, sigma, x, y)
  const corner = flankPoint(g, sigma, end, y).height
  return sigma * (filletAngle(cutter, sigma, y, radius, corner) - chi) <= 0
}

type Depth = (cutter: SpaceCutter, y: number) => number

/** Last row of the rack that the worm uses: its tip. Rows of the cutter beyond make only fillet. */
const inUse: Depth = ({ limits }, y) => Math.sqrt(limits.wormTip ** 2 - y * y) - UNNOTICED * limits.wormTip
const wholeCutter: Depth = (cutter, y) => cutterEnd(cutter, y) - UNNOTICED * cutter.limits.hobTip

function undercutDownTo(depth: Depth, cutter: SpaceCutter, halfFace: number): Undercut | null {
  for (const y of planesOver(halfFace)) {
    const [minus, plus] = ([-1, 1] as const).map((sigma) => standsAt(cutter, sigma, y, depth(cutter, y)))
    if (!minus || !plus) return { y, flank: minus ? 1 : plus ? -1 : 'both' }
  }
  return null
}

/** The first plane in which undercut has taken the foot of the flank in use; null where all of it is whole. */
export const activeUndercut = (cutter: SpaceCutter, halfFace: number): Undercut | null =>
  undercutDownTo(inUse, cutter, halfFace)

/** The first plane in which the cutter's corner takes away any flank, used by the worm or not. */
export const footUndercut = (cutter: SpaceCutter, halfFace: number): Undercut | null =>
  undercutDownTo(wholeCutter, cutter, halfFace)

/** Whether a wheel has teeth, and none that is undercut as `by` looks for it. */
export function isWhole(gearing: GearNumbers, by: typeof activeUndercut): boolean {
  const cutter = spaceCutter({ ...gearing, backlash: 0 })
  return toothExists(cutter) && by(cutter, soundHalfFace(cutter, gearing.wheelWidth)) === null
}

/** Contact ratio over some planes: that of the whole face, or a little less. */
export function ratioOver(flanks: readonly UsedFlank[], axialModule: number): number {
  if (flanks.length === 0) return 0
  const shifts = flanks.flatMap(({ sigma, ends }) => ends.map(({ shift }) => sigma * shift))
  return (Math.max(...shifts) - Math.min(...shifts)) / axialPitch(axialModule)
}

/** Whether the contact ratio is surely as much, as the middle and the edge of the face show. */
export function ratioReaches(gearing: GearNumbers, wanted: number): boolean {
  const cutter = spaceCutter({ ...gearing, backlash: 0 })
  if (!toothExists(cutter)) return false
  const middle = usedFlanks(cutter, [0])
  if (ratioOver(middle, gearing.axialModule) >= wanted) return true
  const edge = usedFlanks(cutter, [soundHalfFace(cutter, gearing.wheelWidth)])
  return ratioOver([...middle, ...edge], gearing.axialModule) >= wanted
}

/** Width [mm] of the narrowest tip over the face; 0 where teeth come to a point below the blank. */
export function leastTipWidth(cutter: SpaceCutter, planes: readonly FacePlane[]): number {
  const widths = planes.map(({ y, tip }) => (tip < blankRadius(cutter, y) ? 0 : toothWidth(cutter, y, tip)))
  return Math.min(...widths)
}
