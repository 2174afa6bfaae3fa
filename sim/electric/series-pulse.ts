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

const ORDER = 18
/** Share of the ordinary current that the last term of a piece may be */
const LAST_TERM = 1e-14
const LONGEST = 0.7 // [rad]
/** Pieces in which no pulse of a machine in range ends are given up. */
const MOST_PIECES = 2000
/** Shorter time constants are held back to this length, as elsewhere where waves are followed [s]. Our choice. */
const LEAST_TIME = 20e-6
const MOST_ROUNDS = 60

/** Nodes and weights of Gauss and Legendre's rule of ten points, its half. Source: M. Abramowitz & I. A. Stegun, Handbook of Mathematical Functions, table 25.4 (from memory). */
const NODES = new Float64Array([
  0.1488743389816312, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717,
])
const WEIGHTS = new Float64Array([
  0.2955242247147529, 0.2692667193099963, 0.219086362515982, 0.1494513491505806, 0.0666713443086881,
])

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

/** Fills the pulse that starts at pulse.from with pulse.speed; false where it does not end. */
export function followPulse(pulse: SeriesPulse): boolean {
  pulse.sums.fill(0)
  pulse.peak = 0
  pulse.x = pulse.from
  pulse.current[0] = 0
  const against = pulse.resistance + pulse.winding.emfConstant * Math.abs(pulse.speed)
  pulse.heldReactance = Math.max(pulse.reactance, pulse.angularFrequency * LEAST_TIME * against)
  for (let piece = 0; piece < MOST_PIECES && pulse.x < pulse.from + 2 * Math.PI; piece++) {
    expand(pulse)
    const ends = valueAtEnd(pulse) <= 0
    if (ends) findEnd(pulse)
    findCrest(pulse)
    addPiece(pulse)
    const left = valueAtEnd(pulse)
    pulse.x += pulse.span
    pulse.current[0] = left
    if (ends) {
      pulse.to = pulse.x
      return true
    }
  }
  return false
}

/** Coefficients of the present piece from its first current, and how long they may be trusted. */
function expand(pulse: SeriesPulse): void {
  const { current: a, inverse: g, inverseSquare: q, saturated: m, sine: s, cosine: c, winding } = pulse
  const { saturationCurrent: is } = winding
  const emfSlope = winding.emfConstant * pulse.speed
  s[0] = Math.sin(pulse.x)
  c[0] = Math.cos(pulse.x)
  g[0] = 1 / (1 + a[0]! / is)
  q[0] = g[0] * g[0]
  m[0] = a[0]! * g[0]
  const first = pulse.heldReactance + pulse.fieldReactance * q[0]
  for (let n = 0; n < ORDER; n++) {
    if (n > 0) saturate(pulse, n)
    let left = pulse.emf * s[n]! - pulse.resistance * a[n]! - emfSlope * m[n]!
    if (n === 0) left -= pulse.drops
    for (let j = 1; j <= n; j++) left -= pulse.fieldReactance * q[j]! * (n - j + 1) * a[n - j + 1]!
    a[n + 1] = left / (first * (n + 1))
    s[n + 1] = c[n]! / (n + 1)
    c[n + 1] = -s[n]! / (n + 1)
  }
  const least = LAST_TERM * pulse.size
  const last = Math.pow(least / Math.abs(a[ORDER]!), 1 / ORDER)
  const before = Math.pow(least / Math.abs(a[ORDER - 1]!), 1 / (ORDER - 1))
  pulse.span = Math.min(LONGEST, last, before)
}

/** Coefficient n of 1/u, 1/u^2 and m = i/u, with u = 1 + i/is: products of series. */
function saturate(pulse: SeriesPulse, n: number): void {
  const { current: a, inverse: g, inverseSquare: q, saturated: m, winding } = pulse
  let inverse = 0
  for (let j = 1; j <= n; j++) inverse -= a[j]! * g[n - j]!
  g[n] = (inverse / winding.saturationCurrent) * g[0]!
  let square = 0
  let saturated = 0
  for (let j = 0; j <= n; j++) {
    square += g[j]! * g[n - j]!
    saturated += a[j]! * g[n - j]!
  }
  q[n] = square
  m[n] = saturated
}

function valueAtEnd({ current: a, span }: SeriesPulse): number {
  let sum = 0
  for (let n = ORDER; n >= 0; n--) sum = sum * span + a[n]!
  return sum
}

/** Shortens the piece to where the current passes zero: Newton from beyond, kept in a bracket by halving. */
function findEnd(pulse: SeriesPulse): void {
  const { current: a } = pulse
  let low = 0
  let high = pulse.span
  let x = high
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let value = 0
    let slope = 0
    for (let n = ORDER; n >= 0; n--) {
      slope = slope * x + value
      value = value * x + a[n]!
    }
    if (value > 0) low = x
    else high = x
    const newton = x - value / slope
    const next = newton > low && newton < high ? newton : (low + high) / 2
    const done = Math.abs(next - x) <= Number.EPSILON
    x = next
    if (done) break
  }
  pulse.span = x
}

/** Raises pulse.peak to the largest current of the piece, where its slope passes zero or at its end. */
function findCrest(pulse: SeriesPulse): void {
  const { current: a, span } = pulse
  if (a[0]! > pulse.peak) pulse.peak = a[0]!
  let low = 0
  let high = span
  let x = span
  let value = 0
  for (let round = 0; round < MOST_ROUNDS; round++) {
    value = 0
    let slope = 0
    let bend = 0
    for (let n = ORDER; n >= 0; n--) {
      bend = bend * x + 2 * slope
      slope = slope * x + value
      value = value * x + a[n]!
    }
    if (slope > 0) low = x
    else high = x
    const newton = x - slope / bend
    const next = newton > low && newton < high ? newton : (low + high) / 2
    // A crest is flat: this near to it the current is the crest's to rounding.
    if (Math.abs(next - x) <= 1e-9 || low === span) break
    x = next
  }
  if (value > pulse.peak) pulse.peak = value
}

function addPiece(pulse: SeriesPulse): void {
  const { span } = pulse
  for (let n = 0; n < NODES.length; n++) {
    const away = NODES[n]! / 2
    const weight = (WEIGHTS[n]! * span) / 2
    addNode(pulse, span * (0.5 - away), weight)
    addNode(pulse, span * (0.5 + away), weight)
  }
}

/** Adds the integrands at one place of the piece. */
function addNode(pulse: SeriesPulse, place: number, weight: number): void {
  const { current: a, sums, winding } = pulse
  let i = 0
  for (let n = ORDER; n >= 0; n--) i = i * place + a[n]!
  const x = pulse.x + place
  const sin = Math.sin(x)
  const part = weight * i
  const drop = pulse.drops - winding.brushDrop + (pulse.resistance - winding.resistance) * i
  const voltage = pulse.emf * sin - drop
  sums[OF_CURRENT]! += part
  sums[OF_SQUARE]! += part * i
  sums[OF_TORQUE]! += (part * i) / (1 + i / winding.saturationCurrent)
  sums[OF_SINE]! += part * sin
  sums[OF_COSINE]! += part * Math.cos(x)
  sums[OF_VOLTAGE]! += weight * voltage
  sums[OF_VOLTAGE_SQUARE]! += weight * voltage * voltage
}
