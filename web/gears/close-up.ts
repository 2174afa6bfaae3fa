/**
 * The close-up of one mesh: what the plane y of it is drawn from, worked out once, and where it has moved to. In that
 * plane the thread is a rack that moves along z and the wheel turns under it; both are told by `shift`, how far the
 * rack, free of play, has moved [mm]. The left mesh is the right one turned half round the worm's axis, so it is told
 * in the same way with the plane -y and the worm half a turn further.
 */
import type { ContactField } from '../../sim/gear/contact-field.ts'
import type { GearNumbers, Side } from '../../sim/gear/gear-numbers.ts'
import { helicalContact, helicalPoint, helicalShift } from '../../sim/gear/helical-contact.ts'
import { wheelSectionOutline, wormSectionOutline } from '../../sim/gear/mesh-section.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { activeRange, playlessCutter } from '../../sim/gear/undercut.ts'
import { type Flank, flankPoint } from '../../sim/gear/wheel-flank.ts'
import { soundHalfFace } from '../../sim/gear/wheel-section.ts'

const PATH_POINTS = 32
/** A gap below this part of the backlash is rounding. */
const CLOSED = 1e-6

/** Places [mm] at which one flank touches, by rising shift of the rack. */
export interface ContactPath {
  readonly flank: Flank
  readonly shift: Float64Array
  readonly x: Float64Array
  readonly y: Float64Array
  readonly z: Float64Array
}

export interface CloseUp {
  readonly plane: number
  readonly axialPitch: number
  readonly centreDistance: number
  readonly wheelRadius: number
  /** [rad] */
  readonly toothPitch: number
  /** Thread 0 with no shift: x and z [mm] from its root out on the flank -1, then back on the flank +1 */
  readonly thread: Float64Array
  /** One tooth space of the wheel with no turn: x and z [mm] from its axis, by rising z */
  readonly space: Float64Array
  /** Of the flanks -1 and +1 */
  readonly paths: readonly [ContactPath, ContactPath]
  /** Axial backlash [mm] */
  readonly backlash: number
}

function pathThrough(
  flank: Flank,
  points: readonly (readonly [number, number, number, number])[],
): ContactPath {
  const rising = [...points].sort((a, b) => a[0] - b[0])
  const column = (i: 0 | 1 | 2 | 3) => Float64Array.from(rising, (point) => point[i])
  return { flank, shift: column(0), x: column(1), y: column(2), z: column(3) }
}

function throatedPath(gearing: GearNumbers, flank: Flank, y: number): ContactPath {
  const cutter = playlessCutter(gearing)
  const { tip, end } = activeRange(cutter, flank, y)
  return pathThrough(
    flank,
    Array.from({ length: PATH_POINTS + 1 }, (_, i) => {
      const x = tip + ((end - tip) * i) / PATH_POINTS
      const { shift, height } = flankPoint(cutter.generation, flank, x, y)
      return [shift, x, y, height]
    }),
  )
}

function helicalPath(gearing: GearNumbers, flank: Flank): ContactPath {
  const contact = helicalContact(gearing)
  return pathThrough(
    flank,
    Array.from({ length: PATH_POINTS + 1 }, (_, i) => {
      const t = contact.wheelEnd + ((contact.wormEnd - contact.wheelEnd) * i) / PATH_POINTS
      return [helicalShift(contact, flank, t), ...helicalPoint(contact, flank, t)]
    }),
  )
}

const contactPath = (gearing: GearNumbers, flank: Flank, y: number): ContactPath =>
  gearing.wheelForm === 'helical' ? helicalPath(gearing, flank) : throatedPath(gearing, flank, y)

/** Furthest plane that is drawn, from the middle [mm]: where the teeth end. */
export const widestPlane = (gearing: GearNumbers): number =>
  gearing.wheelForm === 'helical'
    ? gearing.wheelWidth / 2
    : soundHalfFace(playlessCutter(gearing), gearing.wheelWidth)

/** The right-hand mesh in the plane y [mm]; play is not drawn into it, since it moves. */
export function closeUp(given: GearNumbers, y: number): CloseUp {
  const gearing: GearNumbers = { ...given, backlash: 0 }
  const pair = pairProportions(gearing)
  return {
    plane: y,
    axialPitch: pair.axialPitch,
    centreDistance: pair.centreDistance,
    wheelRadius: pair.referenceRadiusWheel,
    toothPitch: (2 * Math.PI) / gearing.wheelTeeth,
    thread: wormSectionOutline(gearing, y, 0),
    space: wheelSectionOutline(gearing, y, 0),
    paths: [contactPath(gearing, -1, y), contactPath(gearing, 1, y)],
    backlash: given.backlash,
  }
}

/** Where the mesh stands: both in [mm] along the worm. */
export interface MeshPlace {
  /** Shift of the rack that fits the wheel as it stands */
  wheel: number
  /** Worm from the middle of its play, -jx/2 to jx/2 */
  play: number
}

/**
 * Writes where the mesh of one side stands.
 *
 * parameter - P, the screw parameter with the sign of the hand [mm/rad]   fraction - part of the worm's turn
 * ahead     - how far the wheel is ahead of the worm's exact place [turn of the worm]
 */
export function placeMesh(
  out: MeshPlace,
  side: Side,
  parameter: number,
  fraction: number,
  ahead: number,
): void {
  const half = side === 'left' ? 0.5 : 0
  const turn = 2 * Math.PI * parameter
  out.play = turn * ahead
  out.wheel = -turn * (fraction + half + ahead)
}

/** Gap [mm] along the worm between thread and tooth on one flank. */
export const gapOn = (flank: Flank, play: number, backlash: number): number => backlash / 2 - flank * play

/** The flank that carries: the one with no gap, or by the sense of turning where there is no play at all; 0: none. */
export function carryingFlank(play: number, backlash: number, hand: 1 | -1, sense: 1 | -1): Flank | 0 {
  if (backlash <= 0) return hand * sense > 0 ? -1 : 1
  if (gapOn(1, play, backlash) < CLOSED * backlash) return 1
  return gapOn(-1, play, backlash) < CLOSED * backlash ? -1 : 0
}

/** How many threads touch at the shift [mm] of the rack. */
export const linesTouching = ({ first, last, axialPitch: px }: ContactField, shift: number): number =>
  Math.max(0, Math.floor((last - shift) / px) - Math.ceil((first - shift) / px) + 1)

/** Found by `findContact`: where on a path the shift is. */
export interface ContactPlace {
  x: number
  y: number
  z: number
}

/** Writes where the thread touches whose shift is given; false where it does not. */
export function findContact(out: ContactPlace, { shift, x, y, z }: ContactPath, at: number): boolean {
  const last = shift.length - 1
  if (at < shift[0]! || at > shift[last]!) return false
  let low = 0
  let high = last
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (shift[middle]! <= at) low = middle
    else high = middle
  }
  const span = shift[high]! - shift[low]!
  const part = span === 0 ? 0 : (at - shift[low]!) / span
  out.x = x[low]! + (x[high]! - x[low]!) * part
  out.y = y[low]! + (y[high]! - y[low]!) * part
  out.z = z[low]! + (z[high]! - z[low]!) * part
  return true
}

/** Numbers of life size that the close-up may be drawn at, and the gap. */
const TIMES = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200] as const
/** Widest gap that is drawn, in pitches, so that the thread keeps a tip (our choice). */
const LARGEST_GAP = 0.16
/** Pixels to a millimetre at life size, as the page counts them: 96 to an inch. */
export const PIXELS_A_MM = 96 / 25.4

const largestUpTo = (most: number): number => TIMES.findLast((times) => times <= most) ?? TIMES[0]

/** How many times life size it is drawn so that `pitches` of them fit into the height [px]. */
export const drawnTimes = (axialPitch: number, height: number, pitches: number): number =>
  largestUpTo(height / (pitches * axialPitch * PIXELS_A_MM))

/** How many times its width the gap can be drawn so that the thinned thread stays a thread. */
export const gapTimes = (axialPitch: number, backlash: number): number =>
  backlash > 0 ? Math.min(20, largestUpTo((LARGEST_GAP * axialPitch) / backlash)) : 1
