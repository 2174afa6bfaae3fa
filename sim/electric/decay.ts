/**
 * One stretch of an exponential current: from `start` towards `aim` for x time constants. Written in place.
 */
export interface Decay {
  /** [A] */
  start: number
  /** [A] */
  aim: number
  /** Length of the stretch in time constants, >= 0 */
  x: number
  /** Mean current over the stretch [A] */
  mean: number
  /** Mean square over the stretch [A2], never negative */
  square: number
}

export const newDecay = (): Decay => ({ start: 0, aim: 0, x: 0, mean: 0, square: 0 })

/** Below this many time constants the closed forms lose digits to cancellation, and series are summed. */
const SHORT = 0.3
/** Terms enough for rounding at SHORT: 0.6^18/19! is below 1e-20. */
const TERMS = 18

/**
 * Sets mean and mean square of start e^(-s x) + aim (1 - e^(-s x)) over s from 0 to 1. With q = 1 - e^(-s x)
 * they are start + (aim - start) mean(q) and start^2 + 2 start (aim - start) mean(q) + (aim - start)^2
 * mean(q^2), where mean(q) = 1 - (1 - e^-x)/x = sum -(-x)^n/(n+1)!, mean(q^2) = 2 mean(q; x) - mean(q; 2x) =
 * sum (2^n - 2)(-x)^n/(n+1)!, both from n = 1. Derived here, elementary.
 */
export function averageDecay(decay: Decay): void {
  const { start, aim, x } = decay
  let gone = 0
  let goneSquare = 0
  if (x < SHORT) {
    let term = 1
    let twos = 1
    for (let n = 1; n <= TERMS; n++) {
      term *= -x / (n + 1)
      twos *= 2
      gone -= term
      goneSquare += (twos - 2) * term
    }
  } else {
    gone = 1 + Math.expm1(-x) / x
    goneSquare = 2 * gone - 1 - Math.expm1(-2 * x) / (2 * x)
  }
  const way = aim - start
  decay.mean = start + way * gone
  // Written as a square and a spread, so that rounding cannot make it negative.
  const spread = goneSquare - gone * gone
  decay.square = decay.mean * decay.mean + way * way * (spread > 0 ? spread : 0)
}
