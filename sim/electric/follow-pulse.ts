import type { SeriesPulse } from './series-pulse.ts'
import { ORDER } from './series-pulse.ts'
import { addPiece } from './series-sums.ts'

/** Share of the ordinary current that the last term of a piece may be */
const LAST_TERM = 1e-14
const LONGEST = 0.7 // [rad]
/** Pieces in which no pulse of a machine in range ends are given up. */
const MOST_PIECES = 2000
/** Shorter time constants are held back to this length, as elsewhere where waves are followed [s]. Our choice. */
const LEAST_TIME = 20e-6
const MOST_ROUNDS = 60

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
