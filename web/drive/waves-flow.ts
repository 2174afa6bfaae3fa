/** When current flows in a wave, and how: what the words about it rest on. */

export interface Flow {
  /** Part of the time in which the motor's current flows, 0 to 1 */
  readonly motor: number
  /** Likewise the source's */
  readonly source: number
  /** Part of the time in which the motor's current does not all come from the source */
  readonly around: number
}

/** Currents below this part of the largest count as none. Our choice. */
const NONE = 1e-3
/** Part of its current by which a motor's differs from the source's when it comes from elsewhere too. Our choice. */
const APART = 0.01

/** From samples over whole periods: motor and source current [A], the latter on the motor's side of a transformer. */
export function flowOf(time: Float64Array, motor: Float64Array, source: Float64Array): Flow {
  const length = time.at(-1)! - time[0]!
  const none = NONE * motor.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const flow = { motor: 0, source: 0, around: 0 }
  if (none === 0) return flow
  for (let n = 1; n < time.length; n++) {
    const h = (time[n]! - time[n - 1]!) / length
    const i = Math.abs(motor[n]! + motor[n - 1]!) / 2
    const s = Math.abs(source[n]! + source[n - 1]!) / 2
    if (i > none) flow.motor += h
    if (s > none) flow.source += h
    if (i > none && s < (1 - APART) * i - none) flow.around += h
  }
  return flow
}
