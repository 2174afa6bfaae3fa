/** Flat geometry of a drawing: points [right, up] in mm, areas cut to a window, and their hatching. */
export type Flat = readonly [u: number, v: number]
export interface Window {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

const between = (a: Flat, b: Flat, t: number): Flat => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]

/** The piece of a line that rises to the right and lies from u = from to u = to. */
export function stretch(points: readonly Flat[], from: number, to: number): Flat[] {
  const kept: Flat[] = []
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i]!, points[i + 1]!]
    if (b[0] < from || a[0] > to) continue
    const at = (u: number) => between(a, b, b[0] === a[0] ? 0 : (u - a[0]) / (b[0] - a[0]))
    if (kept.length === 0) kept.push(a[0] < from ? at(from) : a)
    kept.push(b[0] > to ? at(to) : b)
  }
  return kept
}

interface Border {
  /** Positive inside */
  readonly depth: (p: Flat) => number
}

const bordersOf = ({ left, right, bottom, top }: Window): readonly Border[] => [
  { depth: ([u]) => u - left },
  { depth: ([u]) => right - u },
  { depth: ([, v]) => v - bottom },
  { depth: ([, v]) => top - v },
]

/** The part of an area inside a window: I. E. Sutherland and G. W. Hodgman, Reentrant Polygon Clipping (1974). */
export function areaInside(area: readonly Flat[], window: Window): Flat[] {
  let kept = [...area]
  for (const { depth } of bordersOf(window)) {
    const from = kept
    kept = []
    from.forEach((b, i) => {
      const a = from.at(i - 1)!
      const [da, db] = [depth(a), depth(b)]
      if (da > 0 !== db > 0) kept.push(between(a, b, da / (da - db)))
      if (db > 0) kept.push(b)
    })
  }
  return kept
}

/** The pieces of a line inside a window. */
export function linesInside(line: readonly Flat[], window: Window): Flat[][] {
  const pieces: Flat[][] = []
  for (let i = 0; i + 1 < line.length; i++) {
    let [from, to] = [0, 1]
    const [a, b] = [line[i]!, line[i + 1]!]
    for (const { depth } of bordersOf(window)) {
      const [da, db] = [depth(a), depth(b)]
      const crossing = da / (da - db)
      if (da < 0 && db < 0) to = -1
      else if (da < 0) from = Math.max(from, crossing)
      else if (db < 0) to = Math.min(to, crossing)
    }
    if (from >= to) continue
    const last = pieces.at(-1)
    if (last && from === 0 && last.at(-1) === a) last.push(to === 1 ? b : between(a, b, to))
    else pieces.push([from === 0 ? a : between(a, b, from), to === 1 ? b : between(a, b, to)])
  }
  return pieces
}

/**
 * Lines at 45 degrees inside an area, which may have holes that run the other way or come as areas of their own.
 *
 * gap - from line to line, square to them [mm]
 */
export function hatching(areas: readonly (readonly Flat[])[], gap: number, rising: boolean): Flat[][] {
  const lean = rising ? 1 : -1
  const across = ([u, v]: Flat) => (v - lean * u) / Math.SQRT2
  const all = areas.flat().map(across)
  const lowest = all.reduce((a, b) => Math.min(a, b), Infinity)
  const highest = all.reduce((a, b) => Math.max(a, b), -Infinity)
  const lines: Flat[][] = []
  for (let level = (Math.floor(lowest / gap) + 0.5) * gap; level < highest; level += gap) {
    const hits: Flat[] = []
    for (const area of areas) {
      area.forEach((b, i) => {
        const a = area.at(i - 1)!
        const [da, db] = [across(a) - level, across(b) - level]
        if (da > 0 !== db > 0) hits.push(between(a, b, da / (da - db)))
      })
    }
    hits.sort((a, b) => a[0] - b[0])
    for (let i = 0; i + 1 < hits.length; i += 2) lines.push([hits[i]!, hits[i + 1]!])
  }
  return lines
}
