/** One picture of a drawing: its marks about an origin of its own, and the room that they take. */
import type { Flat } from './flat.ts'
import type { Mark } from './marks.ts'

export interface PictureOf {
  readonly heading: string
  readonly marks: readonly Mark[]
  /** From the origin to each side [mm on paper] */
  readonly left: number
  readonly right: number
  readonly up: number
  readonly down: number
}

/** Millimetres of the part, up and to the right, to millimetres on paper, down and to the right. */
export const onPaper =
  (scale: number) =>
  ([u, v]: Flat): Flat => [scale * u, -scale * v]

export const mirrored = (points: readonly Flat[]): Flat[] => points.map(([u, v]) => [u, -v])
