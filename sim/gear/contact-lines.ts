/** The lines that touch at one moment, as plain data for panels, and the path on which contact runs. */
import { type ContactField, contactField, newContactCounts, writeContactLines } from './contact-field.ts'
import type { GearNumbers, Side } from './gear-numbers.ts'
import { helicalContact, helicalPoint, helicalShift } from './helical-contact.ts'
import { pairProportions } from './proportions.ts'
import { activeRange, playlessCutter } from './undercut.ts'
import { type Flank, flankPoint } from './wheel-flank.ts'

export interface ContactLine {
  /** Start of the worm that touches, from 0 */
  readonly thread: number
  readonly flank: Flank
  /** x, y, z [mm] in space, in rising order across the face */
  readonly points: Float64Array
}

/** Start of the worm on which the point (x, y, z) of the field's mesh lies. */
function threadOf(
  field: ContactField,
  starts: number,
  side: Side,
  wormAngle: number,
  line: Float64Array,
): number {
  const turn = side === 'left' ? -1 : 1
  const [x = 0, y = 0, z = 0] = line
  const theta = Math.atan2(turn * y, turn * x)
  const phi = side === 'left' ? wormAngle + Math.PI : wormAngle
  // The middle of the thread is a quarter of a pitch, more or less, from its flanks.
  const middle = z - (field.sigma * field.axialPitch) / 4
  const k = Math.round((middle - field.signedParameter * (theta - phi)) / field.axialPitch)
  return ((k % starts) + starts) % starts
}

/** All that touches on one side and flank at a worm angle [rad]. */
export function contactLines(
  gearing: GearNumbers,
  wormAngle: number,
  side: Side,
  sigma: Flank,
): ContactLine[] {
  const field = contactField(gearing, sigma)
  const out = new Float64Array(3 * field.lines * field.stride)
  const counts = newContactCounts(field)
  writeContactLines(out, counts, field, side, Float64Array.of(wormAngle))
  const lines: ContactLine[] = []
  counts.forEach((count, slot) => {
    if (count === 0) return
    const begin = 3 * slot * field.stride
    const points = out.slice(begin, begin + 3 * count)
    const thread = threadOf(field, gearing.wormStarts, side, wormAngle, points)
    lines.push({ thread, flank: sigma, points })
  })
  return lines
}

export interface ContactEnd {
  /** [mm] */
  readonly x: number
  readonly z: number
  /** Shift of the full thread along z when it is there [mm] */
  readonly shift: number
}

export interface ContactPath {
  /** x, z [mm] in the right mesh, from the tip of the wheel to the tip of the worm */
  readonly points: Float64Array
  /** Where contact starts when the worm drives: at the wheel's tip */
  readonly start: ContactEnd
  /** Where it ends then: at the worm's tip, or where undercut begins */
  readonly end: ContactEnd
  /** x of the pitch point, at z = 0 [mm] */
  readonly pitchPoint: number
}

const PIECES = 40

/**
 * Path of contact in the plane y; of a plain helical wheel, whose point of contact wanders across the planes,
 * the path seen along the wheel's axis.
 */
export function pathOfContact(gearing: GearNumbers, sigma: Flank, y: number): ContactPath {
  const { centreDistance, referenceRadiusWheel } = pairProportions(gearing)
  const place = placeOnPath(gearing, sigma, y)
  const points = new Float64Array(2 * (PIECES + 1))
  for (let i = 0; i <= PIECES; i++) {
    const { x, z } = place(i / PIECES)
    points[2 * i] = x
    points[2 * i + 1] = z
  }
  return { points, start: place(0), end: place(1), pitchPoint: centreDistance - referenceRadiusWheel }
}

/** Place on the path over the part of it, 0 to 1, that is done. */
function placeOnPath(gearing: GearNumbers, sigma: Flank, y: number): (part: number) => ContactEnd {
  if (gearing.wheelForm === 'helical') {
    const contact = helicalContact(gearing)
    return (part) => {
      const t = contact.wheelEnd + part * (contact.wormEnd - contact.wheelEnd)
      const [x, , z] = helicalPoint(contact, sigma, t)
      return { x, z, shift: helicalShift(contact, sigma, t) }
    }
  }
  const cutter = playlessCutter(gearing)
  const { tip, end } = activeRange(cutter, sigma, y)
  return (part) => {
    const x = tip + part * (end - tip)
    const { height, shift } = flankPoint(cutter.generation, sigma, x, y)
    return { x, z: height, shift }
  }
}
