/**
 * Flashes on something that turns. A rate of turning and a rate of flashes may be in any one unit (1/s or 1/min).
 * Sources: an instrument maker's manual of stroboscopes (whole-number cases, two and three rates); the rule for any
 * p/q is derived here.
 */
import { TURN } from '../quantity/constants.ts'

/** A flash rate at which the marks stand still. */
export interface FrozenRate {
  readonly flashes: number
  /** Places around the turn at which marks are seen */
  readonly images: number
}

/** Part of a rate within which it counts as equal. */
const EQUAL = 1e-9
const MOST_IMAGES = 24

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b)
}

/** Marks that stand B-fold around a turn, at p places of it: seen at the least common multiple of both. */
const seenPlaces = (p: number, B: number): number => (p * B) / greatestCommonDivisor(p, B)

/**
 * Places at which marks seem to stand still; null where they creep, or are seen at more places than a picture holds.
 * With f/n = p/q in lowest terms the shaft is lit at p places of a turn: one mark is seen p times.
 *
 * f - flashes, > 0
 * n - turns, > 0
 * B - equal marks around a turn, >= 1
 */
export function frozenImages(f: number, n: number, B = 1): number | null {
  for (let p = 1; p <= MOST_IMAGES; p++) {
    const q = (p * n) / f
    if (Math.round(q) >= 1 && Math.abs(q - Math.round(q)) <= EQUAL * q) return seenPlaces(p, B)
  }
  return null
}

/**
 * Flash rates from `least` to `most` at which a shaft with B equal marks stands still with at most `images` places,
 * fastest first.
 */
export function strobeRates(
  n: number,
  B: number,
  { least, most, images }: { readonly least: number; readonly most: number; readonly images: number },
): FrozenRate[] {
  const rates: FrozenRate[] = []
  for (let p = 1; p <= images; p++)
    for (let q = Math.max(1, Math.ceil((p * n) / most)); (p * n) / q >= least; q++)
      if (greatestCommonDivisor(p, q) === 1 && seenPlaces(p, B) <= images)
        rates.push({ flashes: (p * n) / q, images: seenPlaces(p, B) })
  return rates.sort((a, b) => b.flashes - a.flashes)
}

/**
 * True rate of one mark from two neighbouring flash rates f1 > f2 that show one image each: n = f1 f2/(f1 - f2), since
 * f1 = n/k and f2 = n/(k + 1).
 */
export const rateFromTwo = (f1: number, f2: number): number => (f1 * f2) / (f1 - f2)

/** The same from three neighbours A > B > C: n = 2 X Y (X + Y)/(X - Y)^2, X = A - B, Y = B - C. */
export function rateFromThree(A: number, B: number, C: number): number {
  const X = A - B
  const Y = B - C
  return (2 * X * Y * (X + Y)) / (X - Y) ** 2
}

/**
 * Angle by which a mark turns while it is lit [rad].
 *
 * n - [turn/s]
 * t - length of a flash [s]
 */
export const blurAngle = (n: number, t: number): number => TURN * n * t

/** A lamp on alternating current goes dark at each zero of it: flashes a second at a mains frequency f [Hz]. */
export const lampFlashes = (f: number): number => 2 * f

/** Rates of turning, up to `most`, at which B equal marks seem to stand under f flashes: k f/B. */
export function deceptiveRates(f: number, B: number, most: number): number[] {
  const count = Math.floor((most * B * (1 + EQUAL)) / f)
  return Array.from({ length: Math.max(0, count) }, (_, k) => ((k + 1) * f) / B)
}

/** Slower flashes than 300 a minute flicker too much to look at: 5 [1/s]. The same manual. */
export const LEAST_COMFORTABLE_FLASHES = 5
