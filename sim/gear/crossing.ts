const REFINEMENTS = 60

/**
 * Where a falling function passes zero between low and high; the end that is nearer to that where it does not.
 * False position with the Illinois halving: standard numerical method.
 */
export function crossing(f: (t: number) => number, low: number, high: number): number {
  let from = low
  let to = high
  let above = f(from)
  let below = f(to)
  if (above <= 0) return from
  if (below >= 0) return to
  let kept = 0
  for (let i = 0; i < REFINEMENTS; i++) {
    const t = (from * below - to * above) / (below - above)
    const value = f(t)
    if (value === 0 || t <= from || t >= to) return t
    if (value > 0) {
      from = t
      above = value
      if (kept === 1) below /= 2
      kept = 1
    } else {
      to = t
      below = value
      if (kept === -1) above /= 2
      kept = -1
    }
  }
  return (from + to) / 2
}
