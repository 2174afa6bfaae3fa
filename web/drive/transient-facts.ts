/** What is read off a run: peaks, and the moments at which something is reached. */
import type { Wave } from '../../sim/run/waveform-record.ts'
import { TURN } from '../../sim/quantity/constants.ts'

export interface Peak {
  readonly at: number
  readonly value: number
}

/** Largest size of a column, and when. */
export function peakOf(time: Float64Array, values: Float64Array): Peak {
  let best = 0
  for (let n = 1; n < values.length; n++) if (Math.abs(values[n]!) > Math.abs(values[best]!)) best = n
  return { at: time[best]!, value: Math.abs(values[best]!) }
}

/** First time at or after `from` at which a column has come to `level` from above or below; Infinity is never. */
export function timeAt(
  time: Float64Array,
  values: Float64Array,
  level: number,
  way: 'up' | 'down',
  from = 0,
): number {
  const short = (value: number) => (way === 'up' ? value < level : value > level)
  for (let n = 0; n < values.length; n++) {
    if (time[n]! < from || short(values[n]!)) continue
    const before = n === 0 ? undefined : values[n - 1]
    if (before === undefined || time[n - 1]! < from || before === values[n] || !short(before)) return time[n]!
    const part = (level - before) / (values[n]! - before)
    return time[n - 1]! + part * (time[n]! - time[n - 1]!)
  }
  return Infinity
}

/** Integral of a column from one time to another, straight between samples. */
export function integral(time: Float64Array, values: Float64Array, from: number, to: number): number {
  let sum = 0
  for (let n = 1; n < time.length; n++) {
    const t0 = Math.max(from, time[n - 1]!)
    const t1 = Math.min(to, time[n]!)
    if (t1 <= t0) continue
    const slope = (values[n]! - values[n - 1]!) / (time[n]! - time[n - 1]!)
    const y0 = values[n - 1]! + slope * (t0 - time[n - 1]!)
    const y1 = values[n - 1]! + slope * (t1 - time[n - 1]!)
    sum += ((t1 - t0) * (y0 + y1)) / 2
  }
  return sum
}

/** I^2 t of a current [A2 s]. */
export const squareIntegral = (time: Float64Array, values: Float64Array, from: number, to: number): number =>
  integral(
    time,
    values.map((value) => value * value),
    from,
    to,
  )

/** Root of the mean square from one time to another. */
export const rmsBetween = (time: Float64Array, values: Float64Array, from: number, to: number): number =>
  Math.sqrt(squareIntegral(time, values, from, to) / (to - from))

/** Turns of the motor from one time to another. */
export const turnsBetween = (
  { time, speed }: Pick<Wave, 'time' | 'speed'>,
  from: number,
  to: number,
): number => Math.abs(integral(time, speed, from, to)) / TURN
