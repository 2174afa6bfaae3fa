import type { Flat } from '../models/flat.ts'

/** How far a point lies beside the line from a to b. */
function beside([px, py]: Flat, [ax, ay]: Flat, [bx, by]: Flat): number {
  const [ux, uy] = [bx - ax, by - ay]
  const long = Math.hypot(ux, uy)
  return long === 0 ? Math.hypot(px - ax, py - ay) : Math.abs(ux * (py - ay) - uy * (px - ax)) / long
}

/**
 * The same line with fewer points, none of the others further than `off` beside it: D. H. Douglas and T. K. Peucker,
 * Algorithms for the reduction of the number of points (1973).
 */
export function thinned(points: readonly Flat[], off: number): Flat[] {
  const kept = new Set([0, points.length - 1])
  const pieces: (readonly [number, number])[] = [[0, points.length - 1]]
  for (let piece = pieces.pop(); piece; piece = pieces.pop()) {
    const [from, to] = piece
    let [worst, at] = [off, -1]
    for (let i = from + 1; i < to; i++) {
      const distance = beside(points[i]!, points[from]!, points[to]!)
      if (distance > worst) [worst, at] = [distance, i]
    }
    if (at < 0) continue
    kept.add(at)
    pieces.push([from, at], [at, to])
  }
  return points.filter((_, i) => kept.has(i))
}
