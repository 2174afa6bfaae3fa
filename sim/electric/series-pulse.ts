import type { Circuit, SeriesWinding } from './circuit.ts'

/**
 * One pulse of current through a series motor on a sinusoidal source, from where it starts at zero to where it is zero
 * again: X(i) di/dx = V sin x - V0 - R i - k0 w m, m = i/(1 + i/is), X = omega (Lc + Lf/(1 + i/is)^2), x the mains
 * angle. Solved by Taylor series, whose coefficients follow from each other (J. C. Butcher, Numerical Methods for
 * Ordinary Differential Equations, section 25, from memory), to rounding. Written in place.
 */
export interface SeriesPulse {
  readonly winding: SeriesWinding
  /** Peak of the source [V], and all resistance in its way [ohm] */
  readonly emf: number
  readonly resistance: number
  /** All constant voltages against the current [V] */
  readonly drops: number
  /** [rad/s] */
  readonly angularFrequency: number
  /** Unsaturating and saturating reactance [ohm] */
  readonly reactance: number
  readonly fieldReactance: number
  /** The unsaturating one in use, raised where the current would follow faster than any step of the mains [ohm] */
  heldReactance: number
  /** Ordinary size of current [A] */
  readonly size: number
  /** Worm speed [rad/s] */
  speed: number
  /** Where the pulse starts and ends [rad] */
  from: number
  to: number
  /** Largest current [A] */
  peak: number
  /** Angle at which the present piece begins, and how long it is [rad] */
  x: number
  span: number
  /** Root looked for, in the present piece [rad] */
  root: number
  /** Coefficients of i, 1/(1 + i/is), its square, m, sin and cos over the angle in the present piece */
  readonly current: Float64Array
  readonly inverse: Float64Array
  readonly inverseSquare: Float64Array
  readonly saturated: Float64Array
  readonly sine: Float64Array
  readonly cosine: Float64Array
  /** Integrals over the pulse: see the names below */
  readonly sums: Float64Array
}

/** Integrals over the angle of i, i^2, m i, i sin x, i cos x, and of voltage v at the motor and its square. */
export const OF_CURRENT = 0
export const OF_SQUARE = 1
export const OF_TORQUE = 2
export const OF_SINE = 3
export const OF_COSINE = 4
export const OF_VOLTAGE = 5
export const OF_VOLTAGE_SQUARE = 6
const SUMS = 7

/** Order of the series */
export const ORDER = 18
export function newSeriesPulse(circuit: Circuit, winding: SeriesWinding): SeriesPulse {
  const { source, triac, diodeDrops } = circuit
  const row = (): Float64Array => new Float64Array(ORDER + 1)
  const omega = source.angularFrequency
  const resistance = source.resistance + winding.resistance
  const reactance = omega * winding.inductance
  const fieldReactance = omega * winding.fieldInductance
  return {
    winding,
    emf: source.emf,
    resistance,
    drops: winding.brushDrop + diodeDrops + (triac?.drop ?? 0),
    angularFrequency: omega,
    reactance,
    fieldReactance,
    heldReactance: reactance,
    size: source.emf / Math.hypot(resistance, reactance + fieldReactance),
    speed: 0,
    from: 0,
    to: 0,
    peak: 0,
    x: 0,
    span: 0,
    root: 0,
    current: row(),
    inverse: row(),
    inverseSquare: row(),
    saturated: row(),
    sine: row(),
    cosine: row(),
    sums: new Float64Array(SUMS),
  }
}
