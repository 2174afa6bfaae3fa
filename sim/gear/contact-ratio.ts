/**
 * How many teeth touch at a time: the travel of the worm's thread while one flank pair stays in contact, in
 * axial pitches. In one plane of a throated wheel it is that of rack and wheel; over all planes the contact
 * of a tooth begins at one side of the face and ends at the other, and lasts longer.
 */
import { contactPlanes } from './contact-planes.ts'
import type { GearNumbers } from './gear-numbers.ts'
import { helicalContact } from './helical-contact.ts'
import { axialPitch } from './proportions.ts'
import { activeRange, playlessCutter, rangeEnds } from './undercut.ts'

export interface ContactRatio {
  readonly midPlane: number
  /** Over all planes of the face */
  readonly total: number
  /** How far along the worm's axis contact goes, from the middle, either way [mm] */
  readonly reach: number
}

/** Planes at which an extreme is looked for before it is drawn closer. */
const PLANES = 24
const CLOSER = 12
const GOLDEN = (Math.sqrt(5) - 1) / 2

/** Largest value of f over the planes, whose values are given, and between them. */
function largest(at: readonly number[], values: readonly number[], f: (y: number) => number): number {
  const best = values.indexOf(Math.max(...values))
  let low = at[Math.max(0, best - 1)]!
  let high = at[Math.min(at.length - 1, best + 1)]!
  for (let i = 0; i < CLOSER; i++) {
    const left = high - GOLDEN * (high - low)
    const right = low + GOLDEN * (high - low)
    if (f(left) > f(right)) high = right
    else low = left
  }
  return Math.max(values[best]!, f((low + high) / 2))
}

export function contactRatio(gearing: GearNumbers): ContactRatio {
  if (gearing.wheelForm === 'helical') {
    const { ratio, reach } = helicalContact(gearing)
    return { midPlane: ratio, total: ratio, reach }
  }
  const px = axialPitch(gearing.axialModule)
  const cutter = playlessCutter(gearing)
  // The other flank is this one turned half round, so it has the same figures.
  const range = (y: number) => activeRange(cutter, 1, y)
  const ends = (y: number) => rangeEnds(cutter.generation, 1, range(y), y)
  const at = contactPlanes(cutter, gearing.wheelWidth, PLANES, (y) => range(y).used)
  if (at.length === 0) return { midPlane: 0, total: 0, reach: 0 }
  const all = at.map(ends)
  const last = largest(
    at,
    all.map(([, end]) => end.shift),
    (y) => ends(y)[1].shift,
  )
  const first = -largest(
    at,
    all.map(([tip]) => -tip.shift),
    (y) => -ends(y)[0].shift,
  )
  const [from, to] = ends(0)
  const midPlane = range(0).used ? (to.shift - from.shift) / px : 0
  const reach = Math.max(...all.flat().map(({ height }) => Math.abs(height)))
  return { midPlane, total: (last - first) / px, reach }
}

/**
 * Contact ratio of a straight rack and a gear of radius r2, tip radius ra2, on a rack of addendum ha and pressure
 * angle alpha [rad] and pitch px [mm]: any text on involute gears, as in Machinery's Handbook, from memory.
 */
export function rackContactRatio(r2: number, ra2: number, ha: number, alpha: number, px: number): number {
  const base = r2 * Math.cos(alpha)
  const path = Math.sqrt(ra2 * ra2 - base * base) - r2 * Math.sin(alpha) + ha / Math.sin(alpha)
  return path / (px * Math.cos(alpha))
}
