/** What the pieces of the machine from above are drawn with: scale, outlines, pointers with their names. */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import type { Layout } from '../../sim/pose/layout.ts'
import type { Flat } from '../models/flat.ts'
import { type Mark, label, pathOf } from '../models/marks.ts'

/** From a wheel or the shaft to its pointer, and the pointer's own size [mm on paper] */
const POINTER_GAP = 0.8
const POINTER = 2.6
const NAME_GAP = 3.4
/** Lines closer to the true one than this are the true one on paper [mm]. */
export const FINE = 0.02

/** What is below the machine's own outline on paper: pointer and name. */
export const BELOW = POINTER_GAP + POINTER + NAME_GAP + 1

export interface Drawn {
  readonly layout: Layout
  readonly gearing: GearNumbers
  /** mm of paper for a mm of the machine */
  readonly scale: number
}

export const scaled = (scale: number, points: readonly Flat[]): Flat[] =>
  points.map(([x, z]) => [scale * x, scale * z])

export const rectangle = (left: number, back: number, right: number, front: number): Flat[] => [
  [left, back],
  [right, back],
  [right, front],
  [left, front],
]

const pointerAt = (x: number, y: number): Mark => ({
  kind: 'fill',
  d: pathOf(
    [
      [x, y],
      [x + 0.62 * POINTER, y + POINTER],
      [x - 0.62 * POINTER, y + POINTER],
    ],
    true,
  ),
})

/** A pointer with its name below, the name moved to a side where something stands in its way. */
export const named = (y: number, name: string, aside = 0): Mark[] => [
  pointerAt(0, y + POINTER_GAP),
  label(aside, y + POINTER_GAP + POINTER + NAME_GAP, name),
]

export const filled = (points: readonly Flat[]): Mark => ({ kind: 'fill', d: pathOf(points, true) })
