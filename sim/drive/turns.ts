/**
 * Counting without drift. The worm's place is the only one kept; every wheel follows from it by whole-number
 * arithmetic. A turn is cut into TICKS_PER_TURN whole ticks, a number that 1 to 12 starts and 360 degrees
 * divide exactly, so a hand turn of a degree, a tooth, a quarter or a wheel turn is a whole number of ticks
 * and a sum of such steps is exact for ever. What is left below a tick while the machine runs is `rest`.
 */

/** 360 x lcm(1..12) */
export const TICKS_PER_TURN = 9_979_200

export interface WormTurns {
  /** Whole turns, negative after turning back. */
  turns: number
  /** Whole ticks since the last whole turn, in [0, TICKS_PER_TURN). */
  ticks: number
  /** Part of a tick, in [0, 1). */
  rest: number
}

export const noTurns = (): WormTurns => ({ turns: 0, ticks: 0, rest: 0 })

export function copyTurns(out: WormTurns, from: WormTurns): WormTurns {
  out.turns = from.turns
  out.ticks = from.ticks
  out.rest = from.rest
  return out
}

function carry(t: WormTurns, ticks: number): void {
  const whole = Math.floor(ticks / TICKS_PER_TURN)
  t.turns += whole
  t.ticks = ticks - whole * TICKS_PER_TURN
}

/**
 * Moves on by a signed part of a turn, which need not be a whole number of ticks; exact to 1e-15 of its size.
 */
export function advanceTurns(t: WormTurns, delta: number): void {
  const sum = t.rest + delta * TICKS_PER_TURN
  const whole = Math.floor(sum)
  t.rest = sum - whole
  // A step back that is too small for rounding to show leaves the place as it was.
  if (t.rest >= 1) t.rest = 0
  else carry(t, t.ticks + whole)
}

/** Moves on by whole ticks, exactly, and lets go of what was left below a tick. */
export function advanceTicks(t: WormTurns, ticks: number): void {
  t.rest = 0
  carry(t, t.ticks + ticks)
}

/** Ticks from one place to another, with the parts of ticks. */
export const ticksBetween = (from: WormTurns, to: WormTurns): number =>
  (to.turns - from.turns) * TICKS_PER_TURN + (to.ticks - from.ticks) + (to.rest - from.rest)

/** Part of the current worm turn, in [0, 1]. */
export const wormFraction = (t: WormTurns): number => (t.ticks + t.rest) / TICKS_PER_TURN

/** Turns as one number, for drawing and for sentences; the count itself stays in whole numbers. */
export const wormTurnsValue = (t: WormTurns): number => t.turns + wormFraction(t)

/**
 * Whole turns of a wheel with z2 teeth on a worm with z1 starts, rounded down; exact while turns x z1 < 2^53.
 * The sense of the wheel is not in it: see `wheelSense` in gear/wheel-motion.ts.
 */
export const wholeWheelTurns = (t: WormTurns, z1: number, z2: number): number => {
  const teeth = t.turns * z1
  const whole = Math.floor(teeth / z2)
  const left = teeth - whole * z2
  return whole + Math.floor((left + Math.floor((t.ticks * z1) / TICKS_PER_TURN)) / z2)
}

/**
 * Writes the part of the current worm turn, in [0, 1], and of the current wheel turn, in [0, 1). Into an
 * array, since a number that is handed back may cost the frame a box.
 */
export function writeFractions(out: Float64Array, t: WormTurns, z1: number, z2: number): void {
  const teeth = t.turns * z1
  const left = teeth - Math.floor(teeth / z2) * z2
  const ticks = left * TICKS_PER_TURN + t.ticks * z1
  const turn = z2 * TICKS_PER_TURN
  out[0] = (t.ticks + t.rest) / TICKS_PER_TURN
  out[1] = ((ticks % turn) + t.rest * z1) / turn
  // Rounding of a rest just below a whole tick.
  if (out[1] >= 1) out[1] = 1 - 2 ** -53
}

/** Part of the current wheel turn, in [0, 1). */
export function wheelFraction(t: WormTurns, z1: number, z2: number): number {
  const fractions = new Float64Array(2)
  writeFractions(fractions, t, z1, z2)
  return fractions[1]!
}

export const wheelTurnsValue = (t: WormTurns, z1: number, z2: number): number =>
  wholeWheelTurns(t, z1, z2) + wheelFraction(t, z1, z2)
