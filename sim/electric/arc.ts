/**
 * The current of one loop of R and L between two events under a sinusoidal emf and a constant voltage: i(x) =
 * sine sin x + cosine cos x + constant + decaying exp(-rate (x - from)), x the mains angle [rad], rate = R/X.
 * Fields instead of arguments, because a number handed over in a field needs no memory of its own.
 */
export interface Arc {
  sine: number
  cosine: number
  constant: number
  decaying: number
  rate: number
  /** Angle at which the arc begins [rad] */
  from: number
  /** Angle at which it ends [rad] */
  to: number
  /** Current there, once evaluated [A] */
  value: number
  /** Largest current on the arc, once looked for [A] */
  peak: number
  /** Integral of i over the arc [A rad], and of i squared, i sin x and i cos x */
  sum: number
  squareSum: number
  sineSum: number
  cosineSum: number
}

export const newArc = (): Arc => ({
  sine: 0,
  cosine: 0,
  constant: 0,
  decaying: 0,
  rate: 1,
  from: 0,
  to: 0,
  value: 0,
  peak: 0,
  sum: 0,
  squareSum: 0,
  sineSum: 0,
  cosineSum: 0,
})

/** Sets arc.value to the current at arc.to. */
export function evaluateArc(arc: Arc): void {
  const { to } = arc
  arc.value =
    arc.sine * Math.sin(to) +
    arc.cosine * Math.cos(to) +
    arc.constant +
    arc.decaying * Math.exp(-arc.rate * (to - arc.from))
}

const MOST_ROUNDS = 80
/** Spacing of doubles near a whole half cycle, doubled [rad] */
const ROUNDING = 8 * Number.EPSILON
/** A crest is flat: this near to it the current is the crest's to rounding [rad] */
const CREST = 1e-8

/**
 * Moves arc.to to the angle in [arc.to, limit.to] where arc - limit passes zero downwards, to rounding:
 * Newton, kept inside a shrinking bracket by halving. `limit` may be an arc of zeros. Expects a positive
 * start and a negative end.
 */
export function meetArc(arc: Arc, limit: Arc): void {
  let low = arc.to
  let high = limit.to
  let x = (low + high) / 2
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const sin = Math.sin(x)
    const cos = Math.cos(x)
    const p = arc.decaying * Math.exp(-arc.rate * (x - arc.from))
    const q = limit.decaying * Math.exp(-limit.rate * (x - limit.from))
    const s = arc.sine - limit.sine
    const c = arc.cosine - limit.cosine
    const value = s * sin + c * cos + (arc.constant - limit.constant) + p - q
    const slope = s * cos - c * sin - arc.rate * p + limit.rate * q
    if (value === 0) break
    if (value > 0) low = x
    else high = x
    const newton = x - value / slope
    const next = newton >= low && newton <= high ? newton : (low + high) / 2
    const done = Math.abs(next - x) <= ROUNDING
    x = next
    if (done) break
  }
  arc.to = x
}

/**
 * Sets arc.peak to the largest current between arc.from and arc.to, where the arc has one crest at most: at an
 * end, or where the slope passes zero (Newton on the slope, kept inside a shrinking bracket).
 */
export function findPeak(arc: Arc): void {
  const { sine, cosine, decaying, rate, from } = arc
  let low = from
  let high = arc.to
  let x = (low + high) / 2
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const sin = Math.sin(x)
    const cos = Math.cos(x)
    const p = decaying * Math.exp(-rate * (x - from))
    const slope = sine * cos - cosine * sin - rate * p
    if (slope > 0) low = x
    else high = x
    const newton = x - slope / (rate * rate * p - sine * sin - cosine * cos)
    const next = newton > low && newton < high ? newton : (low + high) / 2
    const done = Math.abs(next - x) <= CREST
    x = next
    if (done) break
  }
  const { to, value } = arc
  arc.to = x
  evaluateArc(arc)
  arc.peak = arc.value
  arc.to = from
  evaluateArc(arc)
  if (arc.value > arc.peak) arc.peak = arc.value
  arc.to = to
  evaluateArc(arc)
  if (arc.value > arc.peak) arc.peak = arc.value
  arc.value = value
}

/** Fills the integrals of the arc over its length, in closed form (elementary, derived here). */
export function integrateArc(arc: Arc): void {
  const { sine, cosine, constant, decaying, rate, from, to } = arc
  const length = to - from
  const sinFrom = Math.sin(from)
  const cosFrom = Math.cos(from)
  const sinTo = Math.sin(to)
  const cosTo = Math.cos(to)
  const left = Math.exp(-rate * length)
  const ofSine = cosFrom - cosTo
  const ofCosine = sinTo - sinFrom
  const ofSineSquare = (length - sinTo * cosTo + sinFrom * cosFrom) / 2
  const ofCosineSquare = length - ofSineSquare
  const ofProduct = (sinTo * sinTo - sinFrom * sinFrom) / 2
  const ofDecay = rate > 0 ? -Math.expm1(-rate * length) / rate : length
  const ofDecaySquare = rate > 0 ? -Math.expm1(-2 * rate * length) / (2 * rate) : length
  const spread = 1 + rate * rate
  const ofDecaySine = (cosFrom + rate * sinFrom - left * (cosTo + rate * sinTo)) / spread
  const ofDecayCosine = (rate * cosFrom - sinFrom - left * (rate * cosTo - sinTo)) / spread
  arc.sum = sine * ofSine + cosine * ofCosine + constant * length + decaying * ofDecay
  arc.sineSum = sine * ofSineSquare + cosine * ofProduct + constant * ofSine + decaying * ofDecaySine
  arc.cosineSum = sine * ofProduct + cosine * ofCosineSquare + constant * ofCosine + decaying * ofDecayCosine
  const decaySum = sine * ofDecaySine + cosine * ofDecayCosine + constant * ofDecay + decaying * ofDecaySquare
  arc.squareSum = sine * arc.sineSum + cosine * arc.cosineSum + constant * arc.sum + decaying * decaySum
}
