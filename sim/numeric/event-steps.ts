import type { Curve } from './brent.ts'
import { brent } from './brent.ts'
import type { Equations, Stepper } from './dormand-prince.ts'
import {
  acceptStep,
  beginStep,
  prepareDense,
  stepFactor,
  takeStep,
  TIME,
  writeDense,
} from './dormand-prince.ts'

/**
 * Equations that are smooth within a mode. A mode holds while all its guards are positive; where one passes zero the
 * system changes its mode. Changes at times known beforehand are instants, at which a step ends.
 */
export interface SwitchedSystem extends Equations {
  readonly guards: number
  /** Guards as plain numbers of ordinary size 1; a guard that has nothing to watch is 1. */
  writeGuards(out: Float64Array, y: Float64Array): void
  /** Changes the mode as guard n asks; may put y onto the surface. */
  change(n: number, y: Float64Array): void
  /** Time of the next instant; Infinity is none */
  nextInstant: number
  passInstant(y: Float64Array): void
  /** Longest step */
  longest: number
}

/** What wants to see every step before its end becomes the new start; the continuous extension is prepared. */
export interface Witness {
  see(stepper: Stepper): void
}

export interface EventRun {
  readonly system: SwitchedSystem
  readonly stepper: Stepper
  witness: Witness | null
  /** Whether the mode, or the state by hand, has changed since the last step */
  fresh: boolean
  /** Length that the next step may have */
  stride: number
  /** Guards at the start, middle and end of a step, and in passing */
  readonly before: Float64Array
  readonly within: Float64Array
  readonly after: Float64Array
  readonly passing: Float64Array
  /** The earliest guard to pass zero in the step, -1 for none, and the part of the step where it does */
  guard: number
  theta: number
  /** Changes since time last moved on, and how often they would not end */
  idle: number
  chatter: number
  /** Steps taken, also those not accepted */
  steps: number
  readonly curve: Curve
}

/** Guards closer to zero than this are on their surface: rounding, in units of their ordinary size. */
const SURFACE = 1e-10
/** A guard no further below zero than this has not passed it. */
const ROUNDING = 1e-13
/** Parts of a step at which a guard that starts on its surface is looked at. */
const CLOSER = [1 / 4, 1 / 16, 1 / 64] as const
/** More changes than any circuit has modes, without time moving on */
const MOST_IDLE = 24
const ROOT = 1e-15

export function newEventRun(system: SwitchedSystem, stepper: Stepper): EventRun {
  const row = (): Float64Array => new Float64Array(system.guards)
  const run: EventRun = {
    system,
    stepper,
    witness: null,
    fresh: true,
    stride: Infinity,
    before: row(),
    within: row(),
    after: row(),
    passing: row(),
    guard: -1,
    theta: 1,
    idle: 0,
    chatter: 0,
    steps: 0,
    curve: {
      at: (theta) => {
        writeDense(stepper.stage, stepper, theta)
        system.writeGuards(run.passing, stepper.stage)
        return run.passing[run.guard]!
      },
    },
  }
  return run
}

/** Moves the state on to the time `until`, through all events on the way. */
export function advance(run: EventRun, until: number): void {
  const { system, stepper } = run
  const { y } = stepper
  while (y[TIME]! < until) {
    if (run.fresh) refresh(run)
    const limit = Math.min(until, system.nextInstant)
    const left = limit - y[TIME]!
    if (left <= 0) {
      arrive(run, limit)
      continue
    }
    let span = Math.min(run.stride, system.longest)
    const reaches = span >= left
    if (reaches) span = left
    else if (2 * span > left) span = left / 2
    stepper.span = span
    takeStep(stepper, system)
    run.steps++
    if (!(stepper.error <= 1)) {
      run.stride = span * stepFactor(stepper.error)
      continue
    }
    find(run)
    if (run.guard >= 0) cut(run)
    else {
      run.witness?.see(stepper)
      acceptStep(stepper)
      run.before.set(run.after)
      run.idle = 0
      // A step cut short by the limit says nothing about the length of the next.
      const stride = span * stepFactor(stepper.error)
      run.stride = reaches ? Math.max(run.stride, stride) : stride
      if (reaches) arrive(run, limit)
    }
  }
  if (y[TIME]! >= system.nextInstant) arrive(run, until)
}

function arrive(run: EventRun, limit: number): void {
  const { y } = run.stepper
  y[TIME] = limit
  if (limit < run.system.nextInstant) return
  run.system.passInstant(y)
  run.fresh = true
}

/** Changes modes that do not hold where they start, then takes rates and guards anew. */
function refresh(run: EventRun): void {
  const { system, stepper, before } = run
  for (;;) {
    system.writeGuards(before, stepper.y)
    const wrong = run.idle > MOST_IDLE ? -1 : before.findIndex((guard) => guard < -SURFACE)
    if (wrong < 0) break
    run.idle++
    system.change(wrong, stepper.y)
  }
  if (run.idle > MOST_IDLE) run.chatter++
  beginStep(stepper, system)
  run.fresh = false
}

/**
 * Ends the step where the guard passes zero: takes it once more as far as that, since the longer one looked past the
 * end of the mode and is the less exact for it.
 */
function cut(run: EventRun): void {
  const { stepper, system, theta } = run
  if (theta > 0) {
    stepper.span *= theta
    takeStep(stepper, system)
    prepareDense(stepper)
    run.witness?.see(stepper)
    stepper.y.set(stepper.next)
    run.idle = 0
  } else run.idle++
  system.change(run.guard, stepper.y)
  run.fresh = true
}

/** Sets run.guard and run.theta to the earliest change in the step just taken. */
function find(run: EventRun): void {
  const { system, stepper, before, within, after } = run
  run.guard = -1
  run.theta = 1
  prepareDense(stepper)
  writeDense(stepper.stage, stepper, 0.5)
  system.writeGuards(within, stepper.stage)
  system.writeGuards(after, stepper.next)
  if (run.idle > MOST_IDLE) return
  let first = -1
  let earliest = Infinity
  for (let n = 0; n < system.guards; n++) {
    if (within[n]! > -ROUNDING && after[n]! > -ROUNDING) continue
    run.guard = n
    const theta = crossing(run, before[n]!, within[n]!, after[n]!)
    if (theta >= earliest) continue
    earliest = theta
    first = n
  }
  run.guard = first
  if (first >= 0) run.theta = earliest
}

/**
 * Part of the step where guard run.guard passes zero. One that starts on its surface has to rise first: where it does
 * so, the later zero inside is meant; where it does not, the mode ends at once.
 */
function crossing(run: EventRun, before: number, within: number, after: number): number {
  if (before > SURFACE)
    return within > 0
      ? brent(run.curve, 0.5, 1, within, after, ROOT)
      : brent(run.curve, 0, 0.5, before, within, ROOT)
  if (within > 0) return brent(run.curve, 0.5, 1, within, after, ROOT)
  let high = 0.5
  let highValue = within
  for (const low of CLOSER) {
    const lowValue = run.curve.at(low)
    if (lowValue > 0) return brent(run.curve, low, high, lowValue, highValue, ROOT)
    high = low
    highValue = lowValue
  }
  return 0
}
