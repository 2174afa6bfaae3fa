/** How long a time of warming is looked at. */
import type { Thermal } from '../../sim/machine/machine.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import { caseToAir, windingToCase } from '../../sim/run/two-bodies.ts'
import { HOUR, MINUTE } from '../../sim/quantity/constants.ts'

export type Span = 'minutes' | 'hour' | 'hours' | 'settled'

export const SPANS: readonly { readonly value: Span; readonly label: string }[] = [
  { value: 'minutes', label: '10 min' },
  { value: 'hour', label: '1 h' },
  { value: 'hours', label: '4 h' },
  { value: 'settled', label: 'Settled' },
]

const FIXED: Readonly<Record<Exclude<Span, 'settled'>, number>> = {
  minutes: 10 * MINUTE,
  hour: HOUR,
  hours: 4 * HOUR,
}

/**
 * The longer time constant of winding and case together [s], at a speed w of the fan [rad/s]: the smaller root of
 * s2 - (a + b + c) s + a c with a = Gwc/Cw, b = Gwc/Cc, c = Gca/Cc, for losses that do not change. Derived here.
 */
export function slowTimeConstant(thermal: Thermal, w: number): number {
  const { windingCapacity: Cw, caseCapacity: Cc } = thermal
  const inner = windingToCase(thermal, rpm(w))
  const [a, c] = [inner / Cw, caseToAir(thermal, rpm(w)) / Cc]
  const sum = a + inner / Cc + c
  return (sum + Math.sqrt(sum * sum - 4 * a * c)) / (2 * a * c)
}

/**
 * So many time constants; ten because copper that resists more as it warms, and magnets that weaken, draw the end out.
 * Our choice.
 */
const CONSTANTS = 10

/** Ends that an axis may have [s] */
const ENDS = [1, 2, 5, 10, 20, 30, 60, 120, 180, 240, 360, 480, 720, 1440, 2880].map((each) => each * MINUTE)

/** [s]; `speed` is that of the fan in steady running [rad/s] */
export function spanSeconds(span: Span, thermal: Thermal, speed: number): number {
  if (span !== 'settled') return FIXED[span]
  const wanted = CONSTANTS * slowTimeConstant(thermal, Math.abs(speed))
  return ENDS.find((end) => end >= wanted) ?? ENDS.at(-1)!
}

export interface TimeUnit {
  readonly name: 'min' | 'h'
  readonly seconds: number
}

const LONGEST_IN_MINUTES = 2 * HOUR

/** In which an axis of this length is told. */
export const timeUnit = (duration: number): TimeUnit =>
  duration > LONGEST_IN_MINUTES ? { name: 'h', seconds: HOUR } : { name: 'min', seconds: MINUTE }

/** '1 h 12 min', '12 min', '1 min 27 s', '41 s' */
export function timeText(seconds: number): string {
  const whole = Math.round(seconds)
  if (whole < MINUTE) return `${whole} s`
  if (whole < 10 * MINUTE) return joined(Math.floor(whole / MINUTE), 'min', whole % MINUTE, 's')
  const minutes = Math.round(seconds / MINUTE)
  if (minutes < 60) return `${minutes} min`
  return joined(Math.floor(minutes / 60), 'h', minutes % 60, 'min')
}

const joined = (large: number, unit: string, small: number, smaller: string): string =>
  small === 0 ? `${large} ${unit}` : `${large} ${unit} ${small} ${smaller}`
