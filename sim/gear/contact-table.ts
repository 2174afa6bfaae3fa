/**
 * Points of contact of a flank pair, plane by plane over the face and evenly in the shift of the thread: what
 * contact-field.ts reads from.
 */
import { contactPlanes } from './contact-planes.ts'
import { crossing } from './crossing.ts'
import type { GearNumbers } from './gear-numbers.ts'
import { helicalContact, helicalPoint, helicalShift } from './helical-contact.ts'
import { activeRange, playlessCutter, rangeEnds } from './undercut.ts'
import { type Flank, flankPoint, type Generation, rackHeight, rackSlope } from './wheel-flank.ts'

const PLANES = 40
const SAMPLES = 25

/** Shift [mm] at which the rack point (x, y) touches. */
const shiftAt = (g: Generation, sigma: Flank, x: number, y: number): number =>
  (g.centreDistance - g.wheelRadius - x) / rackSlope(g, sigma, x, y) - rackHeight(g, sigma, x, y)

/** x [mm] between low and high at which the shift is s; the shift may fall or rise along x. */
function placeOfShift(g: Generation, sigma: Flank, y: number, s: number, low: number, high: number): number {
  const falls = shiftAt(g, sigma, low, y) > shiftAt(g, sigma, high, y) ? 1 : -1
  return crossing((x) => falls * (shiftAt(g, sigma, x, y) - s), low, high)
}

export interface ContactTable {
  readonly planes: number
  readonly samples: number
  /** x, y, z [mm] of contact for each plane, and in it for each sample of the shift from `from` to `to` */
  readonly points: Float64Array
  /** Radius [mm] and chi [rad] of the same on the wheel without play, in tooth space 0 */
  readonly wheel: Float64Array
  /** Range of the shift [mm] in each plane */
  readonly from: Float64Array
  readonly to: Float64Array
}

const newTable = (planes: number, samples: number): ContactTable => ({
  planes,
  samples,
  points: new Float64Array(3 * planes * samples),
  wheel: new Float64Array(2 * planes * samples),
  from: new Float64Array(planes),
  to: new Float64Array(planes),
})

function throatedTable(gearing: GearNumbers, sigma: Flank): ContactTable {
  const cutter = playlessCutter(gearing)
  const g = cutter.generation
  const used = (y: number) => activeRange(cutter, sigma, y).used
  const faces = contactPlanes(cutter, gearing.wheelWidth, PLANES, used)
  const table = newTable(faces.length, SAMPLES)
  faces.forEach((y, j) => {
    const range = activeRange(cutter, sigma, y)
    const [tip, end] = rangeEnds(g, sigma, range, y)
    const from = Math.min(tip.shift, end.shift)
    const to = Math.max(tip.shift, end.shift)
    table.from[j] = from
    table.to[j] = to
    for (let i = 0; i < SAMPLES; i++) {
      const s = from + ((to - from) * i) / (SAMPLES - 1)
      const x = placeOfShift(g, sigma, y, s, range.tip, range.end)
      const { radius, chi, height } = flankPoint(g, sigma, x, y)
      const at = j * SAMPLES + i
      table.points.set([x, y, height], 3 * at)
      table.wheel.set([radius, chi], 2 * at)
    }
  })
  return table
}

/** The one point runs straight and evenly, so that its two ends tell everything. */
function helicalTable(gearing: GearNumbers, sigma: Flank): ContactTable {
  const contact = helicalContact(gearing)
  const { centreDistance: a, referenceRadiusWheel: r2 } = contact.pair
  const ends = sigma > 0 ? [contact.wheelEnd, contact.wormEnd] : [contact.wormEnd, contact.wheelEnd]
  const table = newTable(1, 2)
  ends.forEach((t, i) => {
    const s = helicalShift(contact, sigma, t)
    const [x, y, z] = helicalPoint(contact, sigma, t)
    table.points.set([x, y, z], 3 * i)
    table.wheel.set([Math.hypot(a - x, z), Math.atan2(z, a - x) - s / r2], 2 * i)
    if (i === 0) table.from[0] = s
    else table.to[0] = s
  })
  return table
}

export const contactTable = (gearing: GearNumbers, sigma: Flank): ContactTable =>
  gearing.wheelForm === 'helical' ? helicalTable(gearing, sigma) : throatedTable(gearing, sigma)
