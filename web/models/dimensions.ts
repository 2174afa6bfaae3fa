/** Dimension lines on paper [mm], after ISO 129, from memory: filled arrows, thin lines, the number above its line. */
import type { Flat } from './flat.ts'
import { type Mark, TEXT, label, pathOf, stroke } from './marks.ts'

const ARROW = 2.2
const ARROW_HALF = 0.36
/** Extension lines begin off the outline and end past the dimension line. */
const OFF = 0.8
const PAST = 1.4
const TEXT_ABOVE = 1.3
/** From one dimension line to the next. */
export const STEP = 6.5

/** A number as it is written on a drawing: at most three decimals, none for nothing. */
export const sizeText = (value: number): string => String(Math.round(value * 1000) / 1000)

/** Head at `tip`, pointing along (du, dv) of unit length. */
function arrow([x, y]: Flat, du: number, dv: number): Mark {
  const [bx, by] = [x - ARROW * du, y - ARROW * dv]
  const [sx, sy] = [-dv * ARROW_HALF, du * ARROW_HALF]
  return {
    kind: 'fill',
    d: pathOf(
      [
        [x, y],
        [bx + sx, by + sy],
        [bx - sx, by - sy],
      ],
      true,
    ),
  }
}

/** Room that a number takes, by the usual width of narrow letters. */
const textWidth = (text: string): number => 0.46 * TEXT * text.replace('_', '').length

/** Across from x1 to x2 at the height y; the extension lines come from y1 and y2. */
export function across(x1: number, x2: number, y: number, y1: number, y2: number, text: string): Mark[] {
  const inside = x2 - x1 > textWidth(text) + 1
  const narrow = x2 - x1 < 3 * ARROW
  const extension = (x: number, from: number): Flat[] => {
    const down = Math.sign(y - from) || 1
    return [
      [x, from + OFF * down],
      [x, y + PAST * down],
    ]
  }
  const line: Flat[] = narrow
    ? [
        [x1 - 2 * ARROW, y],
        [x2 + 2 * ARROW, y],
      ]
    : [
        [x1, y],
        [x2, y],
      ]
  const textAt = inside ? (x1 + x2) / 2 : x2 + (narrow ? 2 * ARROW : 0) + 1
  return [
    stroke('thin', extension(x1, y1), extension(x2, y2), line),
    arrow([x1, y], narrow ? 1 : -1, 0),
    arrow([x2, y], narrow ? -1 : 1, 0),
    label(textAt, inside ? y - TEXT_ABOVE : y + 0.35 * TEXT, text, { anchor: inside ? 'middle' : 'start' }),
  ]
}

/** Up from y1 down to y2 (y1 < y2 on paper) at x; the extension lines come from x1 and x2. */
export function upward(y1: number, y2: number, x: number, x1: number, x2: number, text: string): Mark[] {
  const inside = y2 - y1 > textWidth(text) + 1
  const narrow = y2 - y1 < 3 * ARROW
  const extension = (y: number, from: number): Flat[] => {
    const away = Math.sign(x - from) || 1
    return [
      [from + OFF * away, y],
      [x + PAST * away, y],
    ]
  }
  const line: Flat[] = narrow
    ? [
        [x, y1 - 2 * ARROW],
        [x, y2 + 2 * ARROW],
      ]
    : [
        [x, y1],
        [x, y2],
      ]
  const textAt = inside ? (y1 + y2) / 2 : y1 - (narrow ? 2 * ARROW : 0) - 1
  return [
    stroke('thin', extension(y1, x1), extension(y2, x2), line),
    arrow([x, y1], 0, narrow ? 1 : -1),
    arrow([x, y2], 0, narrow ? -1 : 1),
    label(x - TEXT_ABOVE, textAt, text, { upright: true, anchor: inside ? 'middle' : 'start' }),
  ]
}

/** A line from a point to a word beside it, with an arrow at the point. */
export function pointer(tip: Flat, elbow: Flat, text: string): Mark[] {
  const [du, dv] = [tip[0] - elbow[0], tip[1] - elbow[1]]
  const way = Math.hypot(du, dv) || 1
  const right = elbow[0] >= tip[0]
  const end: Flat = [elbow[0] + (right ? 2 : -2), elbow[1]]
  return [
    stroke('thin', [tip, elbow, end]),
    arrow(tip, du / way, dv / way),
    label(end[0] + (right ? 0.8 : -0.8), elbow[1] + 0.35 * TEXT, text, { anchor: right ? 'start' : 'end' }),
  ]
}
