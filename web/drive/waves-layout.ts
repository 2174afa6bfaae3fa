/** Where the lanes of a scope stand [px]: one under the other over one axis. */
import type { Scale } from '../chart/scale.ts'

export const LEFT = 52
const RIGHT = 14
/** The heads of the cursors, above the lanes */
const CURSORS = 20
/** Name and meters of a lane: in one row, or in two where they have no room beside each other */
export const HEAD_ROW = 22
const DRAWING = 48
const TALL_DRAWING = 76
const GAP = 8
const AXIS = 24

/** What a lane needs room for. */
export interface LaneSize {
  /** Values at its bottom and top */
  readonly span: readonly [number, number]
  readonly words: string
  readonly meters: string
}

export interface LanePlace {
  /** Top of its head */
  readonly head: number
  readonly up: Scale
  /** Whether the meters stand under the name */
  readonly under: boolean
}

export interface ScopeLayout {
  readonly across: Scale
  readonly height: number
  /** Top of the first lane and bottom of the last */
  readonly top: number
  readonly bottom: number
  readonly lanes: readonly LanePlace[]
}

/** Ordinary width of a character of words, and of one in a number [px]; and what keeps both apart. */
const WORD = 6.6
const DIGIT = 5.7
const APART = 8

const fits = ({ words, meters }: LaneSize, width: number): boolean =>
  WORD * words.length + APART + DIGIT * meters.length <= width

export function scopeLayout(
  width: number,
  x: readonly [number, number],
  sizes: readonly LaneSize[],
  { cursors, tall }: { readonly cursors: boolean; readonly tall: boolean },
): ScopeLayout {
  const top = cursors ? CURSORS : 0
  const drawing = tall ? TALL_DRAWING : DRAWING
  const lanes: LanePlace[] = []
  let bottom = top - GAP
  for (const size of sizes) {
    const under = !fits(size, width - RIGHT)
    const head = bottom + GAP
    const high = head + (under ? 2 : 1) * HEAD_ROW
    bottom = high + drawing
    lanes.push({ head, under, up: { from: size.span[0], to: size.span[1], low: bottom, high } })
  }
  const across = { from: x[0], to: x[1], low: LEFT, high: width - RIGHT }
  return { across, height: bottom + AXIS, top, bottom, lanes }
}

/** Numbers along a lane: its ends, and 0 where it stands clear of them. */
export function laneNumbers({ from, to, low, high }: Scale): readonly number[] {
  const zero = low + ((0 - from) / (to - from)) * (high - low)
  const clear = zero - high > 16 && low - zero > 16
  return clear ? [from, 0, to] : [from, to]
}
