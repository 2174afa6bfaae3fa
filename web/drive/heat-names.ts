/** Where the names of lines stand that run close to each other: in a row over them, each with a leader to its own. */
import type { PlotArea } from '../chart/Axes.tsx'
import type { Line } from '../chart/Plot.tsx'
import { toPixel, toValue, valueAlong } from '../chart/scale.ts'

export interface NamePlace {
  readonly name: string
  /** Foot of its middle, or of its start where it stands beside the end of its line [px] */
  readonly x: number
  readonly y: number
  readonly beside: boolean
  /** Where the leader ends on its own line; null where the name stands right over it [px] */
  readonly leader: number | null
}

/** Room that a name takes along the line, between a line and the name over it, and for the name between two [px] */
const ROOM = 92
const OVER = 8
const BETWEEN = 25
const HEIGHT = 17
const BESIDE = 10

/** `lines` from the hottest down, all to the same end. */
export function namePlaces(lines: readonly Line[], area: PlotArea): readonly NamePlace[] {
  const { across } = area
  const last = Math.max(...lines.map(({ x }) => x[x.length - 1] ?? 0))
  const end = Math.min(across.high, toPixel(across, last))
  const room = Math.min(ROOM, (end - across.low) / lines.length)
  return room < ROOM && across.high - end > ROOM + BESIDE
    ? besideEnds(lines, area, end)
    : lines.map((line, i) => over(line, lines, area, end - (i + 0.5) * room))
}

function over({ name }: Line, lines: readonly Line[], { across, up }: PlotArea, x: number): NamePlace {
  const heights = lines.map((line) => toPixel(up, valueAlong(line.x, line.y, toValue(across, x))))
  const own = heights[lines.findIndex((line) => line.name === name)]!
  let top = own
  for (const height of heights.filter((each) => each <= own).toSorted((a, b) => b - a))
    if (top - height < BETWEEN) top = height
  const y = Math.max(up.high + HEIGHT, top - OVER)
  return { name, x, y, beside: false, leader: top === own ? null : own }
}

/** Lines that end early leave room on their right. */
function besideEnds(lines: readonly Line[], { up }: PlotArea, end: number): readonly NamePlace[] {
  let before = -Infinity
  return lines.map(({ name, y }) => {
    const own = toPixel(up, y[y.length - 1] ?? 0)
    before = Math.max(own + 5, before + HEIGHT, up.high + HEIGHT)
    return { name, x: end + BESIDE, y: before, beside: true, leader: null }
  })
}
