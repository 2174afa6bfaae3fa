/** Where the lanes of a scope stand [px]: one under the other over one axis. */
import type { Scale } from '../chart/scale.ts'

export const LEFT = 52
const RIGHT = 14
/** The heads of the cursors, above the lanes */
const CURSORS = 20
/** Name and meters of a lane: in one row, or in two where it is narrow */
export const HEAD_ROW = 22
const NARROW = 400
const DRAWING = 48
const TALL_DRAWING = 76
const GAP = 8
const AXIS = 24

export interface ScopeLayout {
  readonly across: Scale
  readonly narrow: boolean
  readonly height: number
  /** Top of the first lane and bottom of the last */
  readonly top: number
  readonly bottom: number
  readonly lanes: readonly { readonly head: number; readonly up: Scale }[]
}

export function scopeLayout(
  width: number,
  x: readonly [number, number],
  spans: readonly (readonly [number, number])[],
  { cursors, tall }: { readonly cursors: boolean; readonly tall: boolean },
): ScopeLayout {
  const narrow = width < NARROW
  const head = narrow ? 2 * HEAD_ROW : HEAD_ROW
  const top = cursors ? CURSORS : 0
  const drawing = tall ? TALL_DRAWING : DRAWING
  const pitch = head + drawing + GAP
  const lanes = spans.map(([from, to], at) => {
    const start = top + at * pitch
    return { head: start, up: { from, to, low: start + head + drawing, high: start + head } }
  })
  const bottom = top + spans.length * pitch - GAP
  return {
    across: { from: x[0], to: x[1], low: LEFT, high: width - RIGHT },
    narrow,
    height: bottom + AXIS,
    top,
    bottom,
    lanes,
  }
}

/** Numbers along a lane: its ends, and 0 where it stands clear of them. */
export function laneNumbers({ from, to, low, high }: Scale): readonly number[] {
  const zero = low + ((0 - from) / (to - from)) * (high - low)
  const clear = zero - high > 16 && low - zero > 16
  return clear ? [from, 0, to] : [from, to]
}
