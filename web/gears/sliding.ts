/** Sliding of thread on tooth over the whole contact, for a worm that turns at 1 rad/s. */
import type { ContactField } from '../../sim/gear/contact-field.ts'
import { type Sliding, slidingAt } from '../../sim/gear/contact-sliding.ts'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { degrees } from '../../sim/quantity/convert.ts'

export interface SlidingSpan {
  /** Least and largest speed [m/s] */
  readonly least: number
  readonly most: number
  /** Between sliding and line of contact in the middle of the face [deg]; null with a point */
  readonly angle: number | null
}

type Point = readonly [number, number, number]

const pointOf = ({ points }: ContactField, index: number): Point => [
  points[3 * index]!,
  points[3 * index + 1]!,
  points[3 * index + 2]!,
]

/** Point of the plane j at the shift that is half-way in the middle plane. */
function atMiddleShift(field: ContactField, j: number): Point {
  const middle = field.planes >> 1
  const shift = (field.from[middle]! + field.to[middle]!) / 2
  const part = (shift - field.from[j]!) / (field.to[j]! - field.from[j]!)
  const u = Math.min(1, Math.max(0, part)) * (field.samples - 1)
  const i = Math.min(field.samples - 2, Math.floor(u))
  const a = pointOf(field, j * field.samples + i)
  const b = pointOf(field, j * field.samples + i + 1)
  const between = (n: 0 | 1 | 2) => a[n] + (b[n] - a[n]) * (u - i)
  return [between(0), between(1), between(2)]
}

function angleBetween({ velocity, speed }: Sliding, a: Point, b: Point): number {
  const line = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const
  const along = velocity[0] * line[0] + velocity[1] * line[1] + velocity[2] * line[2]
  return degrees(Math.acos(Math.min(1, Math.abs(along) / (speed * Math.hypot(...line)))))
}

export function slidingSpan(gearing: GearNumbers, field: ContactField): SlidingSpan {
  const speeds = Array.from(
    { length: field.planes * field.samples },
    (_, index) => slidingAt(gearing, 'right', pointOf(field, index), 1).speed,
  )
  const middle = field.planes >> 1
  const span = { least: Math.min(...speeds), most: Math.max(...speeds) }
  if (field.planes < 3) return { ...span, angle: null }
  const here = slidingAt(gearing, 'right', atMiddleShift(field, middle), 1)
  const angle = angleBetween(here, atMiddleShift(field, middle - 1), atMiddleShift(field, middle + 1))
  return { ...span, angle }
}
