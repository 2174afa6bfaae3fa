/** Data to pixels, and the round numbers that stand along an axis. */
import { nice, ticks } from 'd3-array'

/** A span of data laid along a span of pixels. */
export interface Scale {
  readonly from: number
  readonly to: number
  readonly low: number
  readonly high: number
}

export const toPixel = ({ from, to, low, high }: Scale, value: number): number =>
  low + ((value - from) / (to - from)) * (high - low)

export const toValue = ({ from, to, low, high }: Scale, pixel: number): number =>
  from + ((pixel - low) / (high - low)) * (to - from)

/** Pixels that a number and its distance to the next one need. */
const ROOM_ACROSS = 56
const ROOM_UP = 34

/** Round numbers inside the span, as many as there is room for. */
export function roundNumbers({ from, to, low, high }: Scale): readonly number[] {
  const across = high > low
  const room = Math.abs(high - low) / (across ? ROOM_ACROSS : ROOM_UP)
  return ticks(from, to, Math.max(1, Math.floor(room)))
}

/** A round number as an axis tells it. */
export const axisNumber = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '−')

/** The span of some values, widened to round numbers; never empty. */
export function roundSpan(least: number, most: number): readonly [number, number] {
  if (!(most > least)) {
    const half = Math.max(Math.abs(least), 1) / 2
    return nice(least - half, least + half, 4)
  }
  return nice(least, most, 4)
}

/** Least and most of some columns; [0, 0] where there is nothing. */
export function spanOf(columns: readonly ArrayLike<number>[]): readonly [number, number] {
  let least = Infinity
  let most = -Infinity
  for (const column of columns)
    for (let i = 0; i < column.length; i++) {
      const value = column[i]!
      if (value < least) least = value
      if (value > most) most = value
    }
  return least <= most ? [least, most] : [0, 0]
}

/** Value of a column between its samples; `x` ascends. Straight between neighbours, held beyond the ends. */
export function valueAlong(x: ArrayLike<number>, y: ArrayLike<number>, at: number): number {
  const last = x.length - 1
  if (last < 0) return Number.NaN
  if (at <= x[0]!) return y[0]!
  if (at >= x[last]!) return y[last]!
  let low = 0
  let high = last
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (x[middle]! <= at) low = middle
    else high = middle
  }
  const length = x[high]! - x[low]!
  const part = length > 0 ? (at - x[low]!) / length : 0
  return y[low]! + part * (y[high]! - y[low]!)
}
