/**
 * Two places between which a function has a zero. Fields instead of arguments and answers, because a number handed
 * over in a field needs no memory of its own.
 */
export interface Bracket {
  /** One end and the value there, of one sign */
  a: number
  fa: number
  /** Another and the value there, of the other sign, or zero; in the end the zero itself */
  b: number
  fb: number
  /** How near the zero has to be met */
  near: number
  /** Where the function is asked for, and what it says */
  x: number
  value: number
}

/** Sets bracket.value from bracket.x. */
export interface Probe {
  look(): void
}

/** A function of one variable whose zero is sought. */
export interface Curve {
  at(x: number): number
}

export const newBracket = (): Bracket => ({ a: 0, fa: 0, b: 0, fb: 0, near: 0, x: 0, value: 0 })

const MOST_ROUNDS = 100

/**
 * Moves bracket.b to the zero, to about `near` and to rounding. Bisection, secant and inverse quadratic interpolation:
 * R. P. Brent, Algorithms for Minimization without Derivatives, chapter 4 (from memory).
 */
export function closeBracket(bracket: Bracket, probe: Probe): void {
  let far = bracket.a
  let farValue = bracket.fa
  let move = bracket.b - bracket.a
  let lastMove = move
  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (bracket.fb > 0 === farValue > 0) {
      far = bracket.a
      farValue = bracket.fa
      move = bracket.b - bracket.a
      lastMove = move
    }
    if (Math.abs(farValue) < Math.abs(bracket.fb)) {
      bracket.a = bracket.b
      bracket.fa = bracket.fb
      bracket.b = far
      bracket.fb = farValue
      far = bracket.a
      farValue = bracket.fa
    }
    const { a, fa, b, fb } = bracket
    const least = 2 * Number.EPSILON * Math.abs(b) + bracket.near / 2
    const half = (far - b) / 2
    if (Math.abs(half) <= least || fb === 0) return
    const wide = lastMove
    lastMove = move
    move = half
    if (Math.abs(wide) >= least && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa
      const q = fa / farValue
      const r = fb / farValue
      let p = a === far ? 2 * half * s : s * (2 * half * q * (q - r) - (b - a) * (r - 1))
      let divisor = a === far ? 1 - s : (q - 1) * (r - 1) * (s - 1)
      if (p > 0) divisor = -divisor
      else p = -p
      if (2 * p < Math.min(3 * half * divisor - Math.abs(least * divisor), Math.abs(wide * divisor)))
        move = p / divisor
      else lastMove = half
    } else lastMove = half
    bracket.a = b
    bracket.fa = fb
    bracket.x = b + (Math.abs(move) > least ? move : half > 0 ? least : -least)
    bracket.b = bracket.x
    probe.look()
    bracket.fb = bracket.value
  }
}

/** Zero of `curve` between a and b, where it has the values fa and fb of different sign. */
export function brent(curve: Curve, a: number, b: number, fa: number, fb: number, near: number): number {
  const bracket: Bracket = { a, fa, b, fb, near, x: b, value: fb }
  closeBracket(bracket, {
    look() {
      bracket.value = curve.at(bracket.x)
    },
  })
  return bracket.b
}
