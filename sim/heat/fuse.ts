/**
 * A link, or the strip of an overload switch, as one body that a current warms: dQ/dt = ((I/Imf)^2 - Q)/tau, open at
 * Q = 1; derived here. Q is its rise over that at which it opens.
 */

/** Excess x = (I/Imf)^2. */
export const fuseExcess = (I: number, Imf: number): number => (I / Imf) ** 2

/**
 * Time until it opens [s]: tau ln((x - Q0)/(x - 1)); Infinity where x <= 1, 0 where it is open already.
 *
 * I   - [A r.m.s.]
 * Imf - the smallest current that ever opens it [A r.m.s.], > 0
 * tau - [s], > 0
 * Q0  - how warm it is to begin with, 0 cold
 */
export function fuseTime(I: number, Imf: number, tau: number, Q0 = 0): number {
  if (Q0 >= 1) return 0
  const x = fuseExcess(I, Imf)
  return x > 1 ? tau * Math.log1p((1 - Q0) / (x - 1)) : Infinity
}

/** I^2 t that opens it from cold however short the time is [A2 s]: tau Imf^2. */
export const meltingIntegral = (Imf: number, tau: number): number => tau * Imf ** 2

/** How warm it is after a steady current for t [s]; 1 or more is open. */
export function fuseWarmth(Q0: number, I: number, Imf: number, t: number, tau: number): number {
  const x = fuseExcess(I, Imf)
  return x + (Q0 - x) * Math.exp(-t / tau)
}

/** Steady current that opens it from cold after just t [s] [A r.m.s.]: Imf/sqrt(1 - e^(-t/tau)). */
export const openingCurrent = (t: number, Imf: number, tau: number): number =>
  Imf / Math.sqrt(-Math.expm1(-t / tau))
