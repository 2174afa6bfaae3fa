/**
 * The explicit Runge-Kutta pair of J. R. Dormand & P. J. Prince, order 5 with an error of order 4, and its continuous
 * extension of order 4. Coefficients: E. Hairer, S. P. Nørsett & G. Wanner, Solving Ordinary Differential Equations
 * I, section II.5 and II.6 (from memory; held by a test of order). Nothing is allocated while stepping.
 */

/** Component 0 of every state is the time, whose rate is 1. */
export const TIME = 0

export interface Equations {
  /** Writes the rate of every component at y; only the first `coupled` components of y are valid. */
  writeRates(rates: Float64Array, y: Float64Array): void
}

export interface Stepper {
  /** Components on which rates depend, time among them; the others are pure integrals */
  readonly coupled: number
  /** Components 1 to watched - 1 count for the error */
  readonly watched: number
  /** State at the start of the step */
  readonly y: Float64Array
  /** State at its end, once taken */
  readonly next: Float64Array
  /** State at one place inside, for stages and for reading between */
  readonly stage: Float64Array
  /** Rates at the start, at five places inside and at the end */
  readonly rates: readonly Float64Array[]
  /** The continuous extension's own coefficients, once prepared */
  readonly dense: readonly Float64Array[]
  /** Size of each component that counts as ordinary; an error is measured against it where the component is less */
  readonly sizes: Float64Array
  /** Relative error allowed in one step */
  tolerance: number
  /** Length of the step */
  span: number
  /** Estimated error of the step over what is allowed */
  error: number
}

const STAGES = 7

export function newStepper(size: number, coupled: number, watched: number): Stepper {
  const row = (): Float64Array => new Float64Array(size)
  return {
    coupled,
    watched,
    y: row(),
    next: row(),
    stage: row(),
    rates: Array.from({ length: STAGES }, row),
    dense: Array.from({ length: 4 }, row),
    sizes: new Float64Array(watched).fill(1),
    tolerance: 1e-8,
    span: 0,
    error: 0,
  }
}

/** To be called where the state or the equations have changed by other means than a step. */
export const beginStep = (stepper: Stepper, equations: Equations): void =>
  equations.writeRates(stepper.rates[0]!, stepper.y)

/** Takes stepper.span from stepper.y to stepper.next, which is not yet accepted, and sets stepper.error. */
export function takeStep(stepper: Stepper, equations: Equations): void {
  const { y, next, stage, rates, coupled, span: h } = stepper
  const k1 = rates[0]!
  const k2 = rates[1]!
  const k3 = rates[2]!
  const k4 = rates[3]!
  const k5 = rates[4]!
  const k6 = rates[5]!
  const k7 = rates[6]!
  for (let n = 1; n < coupled; n++) stage[n] = y[n]! + h * (k1[n]! / 5)
  stage[TIME] = y[TIME]! + h / 5
  equations.writeRates(k2, stage)
  for (let n = 1; n < coupled; n++) stage[n] = y[n]! + h * ((3 / 40) * k1[n]! + (9 / 40) * k2[n]!)
  stage[TIME] = y[TIME]! + (3 / 10) * h
  equations.writeRates(k3, stage)
  for (let n = 1; n < coupled; n++)
    stage[n] = y[n]! + h * ((44 / 45) * k1[n]! - (56 / 15) * k2[n]! + (32 / 9) * k3[n]!)
  stage[TIME] = y[TIME]! + (4 / 5) * h
  equations.writeRates(k4, stage)
  for (let n = 1; n < coupled; n++)
    stage[n] =
      y[n]! +
      h * ((19372 / 6561) * k1[n]! - (25360 / 2187) * k2[n]! + (64448 / 6561) * k3[n]! - (212 / 729) * k4[n]!)
  stage[TIME] = y[TIME]! + (8 / 9) * h
  equations.writeRates(k5, stage)
  for (let n = 1; n < coupled; n++)
    stage[n] =
      y[n]! +
      h *
        ((9017 / 3168) * k1[n]! -
          (355 / 33) * k2[n]! +
          (46732 / 5247) * k3[n]! +
          (49 / 176) * k4[n]! -
          (5103 / 18656) * k5[n]!)
  stage[TIME] = y[TIME]! + h
  equations.writeRates(k6, stage)
  for (let n = 1; n < y.length; n++)
    next[n] =
      y[n]! +
      h *
        ((35 / 384) * k1[n]! +
          (500 / 1113) * k3[n]! +
          (125 / 192) * k4[n]! -
          (2187 / 6784) * k5[n]! +
          (11 / 84) * k6[n]!)
  next[TIME] = y[TIME]! + h
  equations.writeRates(k7, next)
  estimateError(stepper)
}

function estimateError(stepper: Stepper): void {
  const { y, next, rates, sizes, watched, tolerance, span } = stepper
  const k1 = rates[0]!
  const k3 = rates[2]!
  const k4 = rates[3]!
  const k5 = rates[4]!
  const k6 = rates[5]!
  const k7 = rates[6]!
  stepper.error = 0
  for (let n = 1; n < watched; n++) {
    const miss =
      span *
      ((71 / 57600) * k1[n]! -
        (71 / 16695) * k3[n]! +
        (71 / 1920) * k4[n]! -
        (17253 / 339200) * k5[n]! +
        (22 / 525) * k6[n]! -
        (1 / 40) * k7[n]!)
    const size = Math.max(sizes[n]!, Math.abs(y[n]!), Math.abs(next[n]!))
    const part = Math.abs(miss) / (tolerance * size)
    if (part > stepper.error) stepper.error = part
    // Not a number: a step into where the equations make no sense.
    else if (Number.isNaN(part)) stepper.error = Infinity
  }
}

/** Makes the end of the step the new start; the rates there are known already. */
export function acceptStep(stepper: Stepper): void {
  stepper.y.set(stepper.next)
  stepper.rates[0]!.set(stepper.rates[STAGES - 1]!)
}

const SAFETY = 0.9
const LEAST_FACTOR = 0.2
const MOST_FACTOR = 5

/** Factor by which the next step, or the step once more, may differ in length; for no error and for any. */
export const stepFactor = (error: number): number =>
  Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, SAFETY * error ** -0.2))

/** Fills stepper.dense for the step just taken, accepted or not yet. */
export function prepareDense(stepper: Stepper): void {
  const { y, next, rates, span: h } = stepper
  const k1 = rates[0]!
  const k3 = rates[2]!
  const k4 = rates[3]!
  const k5 = rates[4]!
  const k6 = rates[5]!
  const k7 = rates[6]!
  const r2 = stepper.dense[0]!
  const r3 = stepper.dense[1]!
  const r4 = stepper.dense[2]!
  const r5 = stepper.dense[3]!
  for (let n = 1; n < y.length; n++) {
    const rise = next[n]! - y[n]!
    const bend = h * k1[n]! - rise
    r2[n] = rise
    r3[n] = bend
    r4[n] = rise - h * k7[n]! - bend
    r5[n] =
      h *
      ((-12715105075 / 11282082432) * k1[n]! +
        (87487479700 / 32700410799) * k3[n]! -
        (10690763975 / 1880347072) * k4[n]! +
        (701980252875 / 199316789632) * k5[n]! -
        (1453857185 / 822651844) * k6[n]! +
        (69997945 / 29380423) * k7[n]!)
  }
}

/** Writes the state at part theta of the step, 0 to 1; needs `prepareDense`. */
export function writeDense(out: Float64Array, stepper: Stepper, theta: number): void {
  const { y, span } = stepper
  const r2 = stepper.dense[0]!
  const r3 = stepper.dense[1]!
  const r4 = stepper.dense[2]!
  const r5 = stepper.dense[3]!
  const rest = 1 - theta
  for (let n = 1; n < y.length; n++)
    out[n] = y[n]! + theta * (r2[n]! + rest * (r3[n]! + theta * (r4[n]! + rest * r5[n]!)))
  out[TIME] = y[TIME]! + theta * span
}

/** One component alone. */
export function denseValue(stepper: Stepper, n: number, theta: number): number {
  const r2 = stepper.dense[0]!
  const r3 = stepper.dense[1]!
  const r4 = stepper.dense[2]!
  const r5 = stepper.dense[3]!
  const rest = 1 - theta
  return stepper.y[n]! + theta * (r2[n]! + rest * (r3[n]! + theta * (r4[n]! + rest * r5[n]!)))
}

/** Slope of one component over theta, the derivative of `denseValue`. */
export function denseSlope(stepper: Stepper, n: number, theta: number): number {
  const r2 = stepper.dense[0]!
  const r3 = stepper.dense[1]!
  const r4 = stepper.dense[2]!
  const r5 = stepper.dense[3]!
  const inner = r4[n]! + (1 - theta) * r5[n]!
  const middle = r3[n]! + theta * inner
  const innerSlope = -r5[n]!
  const middleSlope = inner + theta * innerSlope
  const outerSlope = -middle + (1 - theta) * middleSlope
  return r2[n]! + (1 - theta) * middle + theta * outerSlope
}
