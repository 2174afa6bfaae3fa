/**
 * One body with one heat capacity: its rise above the air follows d theta/dt = (thetaF - theta)/tau. Sources: B. R. Gupta
 * & V. Singhal, Fundamentals of Electric Drives and Control, chapter 4; G. K. Dubey, Fundamentals of Electrical Drives,
 * 2nd ed., chapter 4. Rises in K; times in any one unit.
 */

/** Rise after a time t that began at the rise theta0. */
export const riseAfter = (thetaF: number, theta0: number, t: number, tau: number): number =>
  thetaF + (theta0 - thetaF) * Math.exp(-t / tau)

/** Rise from which theta was reached in the time t. */
export const riseBefore = (thetaF: number, theta: number, t: number, tau: number): number =>
  thetaF + (theta - thetaF) * Math.exp(t / tau)

/** Rise that would settle, from two rises a time t apart, t > 0. */
export const settledRise = (theta1: number, theta2: number, t: number, tau: number): number =>
  theta1 + (theta2 - theta1) / -Math.expm1(-t / tau)

/**
 * Rise that would settle, from the rises after a time t and after 2 t from cold: theta1^2/(2 theta1 - theta2). It needs
 * theta1 < theta2 < 2 theta1.
 */
export const settledFromEqualTimes = (theta1: number, theta2: number): number =>
  theta1 ** 2 / (2 * theta1 - theta2)

/** Time in which a rise goes from theta1 to theta2 on its way to thetaF; Infinity where it never gets there. */
export function timeBetween(thetaF: number, theta1: number, theta2: number, tau: number): number {
  const left = (thetaF - theta1) / (thetaF - theta2)
  return left >= 1 ? tau * Math.log(left) : Infinity
}

/** One cycle of an intermittent duty; warming and cooling differ because the fan stops. */
export interface SingleNodeDuty {
  readonly on: number
  readonly off: number
  /** Time constants while on and while off */
  readonly heating: number
  readonly cooling: number
}

/** Largest rise after many cycles: thetaF (1 - e^-a)/(1 - e^-(a + b)), a = on/heating, b = off/cooling. */
export function dutyPeakRise(thetaF: number, { on, off, heating, cooling }: SingleNodeDuty): number {
  const a = on / heating
  return (thetaF * Math.expm1(-a)) / Math.expm1(-a - off / cooling)
}

/** Smallest rise after many cycles, at the end of the pause. */
export const dutyTroughRise = (thetaF: number, duty: SingleNodeDuty): number =>
  dutyPeakRise(thetaF, duty) * Math.exp(-duty.off / duty.cooling)

/**
 * Longest time on that keeps the largest rise after many cycles at or below a limit, with the pause given; Infinity
 * where the limit is never passed, 0 where no time is short enough.
 */
export function longestOnTime(thetaF: number, limit: number, duty: Omit<SingleNodeDuty, 'on'>): number {
  if (thetaF <= limit) return Infinity
  if (limit <= 0) return 0
  const kept = limit * Math.exp(-duty.off / duty.cooling)
  return timeBetween(thetaF, kept, limit, duty.heating)
}
