/**
 * Where the flanks of a pair can touch, tabulated once, so that a picture can ask in every frame which points
 * touch now. Everything is in the frame of the right mesh; the left one is the same after half a turn of the
 * frame about the worm's axis, (x, y, z) -> (-x, -y, z), with the worm half a turn on.
 *
 * The shift s [mm] is how far the full thread has moved along z: thread k touches where
 * s = k px - P phi', and P phi' = P phi + sigma jx/2 for a worm that was thinned by the backlash jx, whose flank
 * sigma is the full one moved by -sigma jx/2. A thinned wheel turns back by the same play instead, and the
 * points of contact stay.
 */
import { type ContactTable, contactTable } from './contact-table.ts'
import type { GearNumbers, Side } from './gear-numbers.ts'
import { axialPitch, pairProportions } from './proportions.ts'
import { thinning } from './thread-profile.ts'
import type { Flank } from './wheel-flank.ts'
import { handSign } from './wheel-motion.ts'

export interface ContactField extends ContactTable {
  readonly sigma: Flank
  /** Least and largest shift over all planes */
  readonly first: number
  readonly last: number
  readonly axialPitch: number
  /** p times the sign of the hand [mm/rad] */
  readonly signedParameter: number
  /** How much further the full thread must turn, as a way along z [mm] */
  readonly lag: number
  /** Most polylines at a time, and most points of one */
  readonly lines: number
  readonly stride: number
  /** The shift of the thread being written [mm] */
  readonly moment: Float64Array
}

export function contactField(gearing: GearNumbers, sigma: Flank): ContactField {
  const table = contactTable(gearing, sigma)
  const px = axialPitch(gearing.axialModule)
  const first = Math.min(...table.from)
  const last = Math.max(...table.to)
  return {
    ...table,
    sigma,
    first,
    last,
    axialPitch: px,
    signedParameter: handSign(gearing.hand) * pairProportions(gearing).screwParameter,
    lag: sigma * thinning('worm', gearing),
    // A face with a throat can hold a line in two pieces.
    lines: 2 * (Math.floor(Math.max(0, last - first) / px) + 1),
    stride: table.planes + 2,
    moment: new Float64Array(1),
  }
}

/** Room for the points of every polyline, x, y, z each: line n begins at 3 n stride. */
export const newContactPoints = (field: ContactField): Float32Array =>
  new Float32Array(3 * field.lines * field.stride)

/** Room for the number of points of every polyline. */
export const newContactCounts = (field: ContactField): Uint16Array => new Uint16Array(field.lines)

/** Writes the touching point of plane j for the shift in `moment`. */
function writeSample(
  out: Float32Array | Float64Array,
  at: number,
  field: ContactField,
  j: number,
  turn: 1 | -1,
): void {
  const { points, samples } = field
  const from = field.from[j]!
  const span = field.to[j]! - from
  const u = span > 0 ? ((field.moment[0]! - from) / span) * (samples - 1) : 0
  const i = Math.min(samples - 2, Math.max(0, Math.floor(u)))
  const part = u - i
  const a = 3 * (j * samples + i)
  out[at] = turn * (points[a]! + part * (points[a + 3]! - points[a]!))
  out[at + 1] = turn * (points[a + 1]! + part * (points[a + 4]! - points[a + 1]!))
  out[at + 2] = points[a + 2]! + part * (points[a + 5]! - points[a + 2]!)
}

/** Writes the end of a line between plane j, where it still is, and plane k beside it, where it is no more. */
function writeEnd(
  out: Float32Array | Float64Array,
  at: number,
  field: ContactField,
  j: number,
  k: number,
  turn: 1 | -1,
): void {
  const { points, samples } = field
  const s = field.moment[0]!
  const early = s < field.from[k]!
  const here = early ? field.from[j]! : field.to[j]!
  const there = early ? field.from[k]! : field.to[k]!
  const part = there === here ? 0 : (s - here) / (there - here)
  const i = early ? 0 : samples - 1
  const a = 3 * (j * samples + i)
  const b = 3 * (k * samples + i)
  out[at] = turn * (points[a]! + part * (points[b]! - points[a]!))
  out[at + 1] = turn * (points[a + 1]! + part * (points[b + 1]! - points[a + 1]!))
  out[at + 2] = points[a + 2]! + part * (points[b + 2]! - points[a + 2]!)
}

/** Writes the pieces of one thread's line from slot `line` on, and returns the next free slot. */
function writeThread(
  out: Float32Array | Float64Array,
  counts: Uint16Array,
  field: ContactField,
  turn: 1 | -1,
  line: number,
): number {
  const { from, to, planes, stride } = field
  const s = field.moment[0]!
  let slot = line
  let count = 0
  for (let j = 0; j < planes && slot < counts.length; j++) {
    const begin = slot * stride
    if (from[j]! <= s && s <= to[j]!) {
      if (count === 0 && j > 0) writeEnd(out, 3 * (begin + count++), field, j, j - 1, turn)
      writeSample(out, 3 * (begin + count++), field, j, turn)
    } else if (count > 0) {
      writeEnd(out, 3 * (begin + count++), field, j - 1, j, turn)
      counts[slot++] = count
      count = 0
    }
  }
  if (count > 0 && slot < counts.length) counts[slot++] = count
  return slot
}

/**
 * Writes every line of the field's flank that touches now, on the mesh of one side, as polylines over the face
 * (single points for a plain helical wheel), and the number of points of each; unused slots get 0. Allocates
 * nothing.
 *
 * angle - worm angle about +z [rad] in its first place
 */
export function writeContactLines(
  out: Float32Array | Float64Array,
  counts: Uint16Array,
  field: ContactField,
  side: Side,
  angle: Float64Array,
): void {
  const px = field.axialPitch
  const turn = side === 'left' ? -1 : 1
  const phi = side === 'left' ? angle[0]! + Math.PI : angle[0]!
  const moved = field.signedParameter * phi + field.lag
  const last = Math.floor((field.last + moved) / px)
  let slot = 0
  for (let k = Math.ceil((field.first + moved) / px); k <= last; k++) {
    field.moment[0] = k * px - moved
    slot = writeThread(out, counts, field, turn, slot)
  }
  while (slot < counts.length) counts[slot++] = 0
}
