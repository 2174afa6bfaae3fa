/** A function of one variable whose zero is sought. */
export interface Curve {
  at(x: number): number
}

const MOST_ROUNDS = 100

/**
 * Zero of `curve` between a and b, where it has the values fa and fb of different sign, to about `near` and to
 * rounding. Bisection, secant and inverse quadratic interpolation: R. P. Brent, Algorithms for Minimization without
 * Derivatives, chapter 4 (from memory).
 */
export function brent(curve: Curve, a: number, b: number, fa: number, fb: number, near: number): number {
  let [before, beforeValue] = [a, fa]
  let [best, bestValue] = [b, fb]
  let [far, farValue] = [a, fa]
  let move = b - a
  let lastMove = move
  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (bestValue > 0 === farValue > 0) {
      far = before
      farValue = beforeValue
      move = best - before
      lastMove = move
    }
    if (Math.abs(farValue) < Math.abs(bestValue)) {
      before = best
      best = far
      far = before
      beforeValue = bestValue
      bestValue = farValue
      farValue = beforeValue
    }
    const least = 2 * Number.EPSILON * Math.abs(best) + near / 2
    const half = (far - best) / 2
    if (Math.abs(half) <= least || bestValue === 0) return best
    const wide = lastMove
    lastMove = move
    move = half
    if (Math.abs(wide) >= least && Math.abs(beforeValue) > Math.abs(bestValue)) {
      const s = bestValue / beforeValue
      const atEnds = before === far
      const q = beforeValue / farValue
      const r = bestValue / farValue
      let p = atEnds ? 2 * half * s : s * (2 * half * q * (q - r) - (best - before) * (r - 1))
      let divisor = atEnds ? 1 - s : (q - 1) * (r - 1) * (s - 1)
      if (p > 0) divisor = -divisor
      else p = -p
      if (2 * p < Math.min(3 * half * divisor - Math.abs(least * divisor), Math.abs(wide * divisor)))
        move = p / divisor
      else lastMove = half
    } else lastMove = half
    before = best
    beforeValue = bestValue
    best += Math.abs(move) > least ? move : half > 0 ? least : -least
    bestValue = curve.at(best)
  }
  return best
}
