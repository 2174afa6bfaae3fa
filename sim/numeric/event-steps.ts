import type { Bracket, Probe } from './brent.ts'
import { closeBracket, newBracket } from './brent.ts'
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
  readonly clock: Clock
  passInstant(y: Float64Array): void
  /** Longest step */
  longest: number
}

/** Where the time of the next instant stands; Infinity is none. */
export interface Clock {
  readonly nextInstant: number
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
  /** Time that no step passes, and whether the present one ends there */
  limit: number
  reaches: boolean
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
  /** Of parts of the step, and the guard run.guard in it */
  readonly bracket: Bracket
  readonly probe: Probe
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
    limit: 0,
    reaches: false,
    before: row(),
    within: row(),
    after: row(),
    passing: row(),
    guard: -1,
    theta: 1,
    idle: 0,
    chatter: 0,
    steps: 0,
    bracket: newBracket(),
    probe: { look: () => look(run) },
  }
  run.bracket.near = ROOT
  return run
}

/** Sets bracket.value to guard run.guard at part bracket.x of the step. */
function look(run: EventRun): void {
  const { system, stepper, bracket, passing } = run
  writeDense(stepper.stage, stepper, bracket.x)
  system.writeGuards(passing, stepper.stage)
  bracket.value = passing[run.guard]!
}

/** Moves the state on to the time `until`, through all events on the way. */
export function advance(run: EventRun, until: number): void {
  const { system, stepper } = run
  const { y } = stepper
  while (y[TIME]! < until) {
    if (run.fresh) refresh(run)
    run.limit = Math.min(until, system.clock.nextInstant)
    if (run.limit <= y[TIME]!) {
      arrive(run)
      continue
    }
    measureStep(run)
    takeStep(stepper, system)
    run.steps++
    if (stepper.error <= 1) finishStep(run)
    else shorten(run)
  }
  run.limit = y[TIME]!
  if (y[TIME]! >= system.clock.nextInstant) arrive(run)
}

/** Throws where no step is short enough: then the equations have no solution there, which is a mistake in them. */
function shorten(run: EventRun): void {
  const { span, error, y } = run.stepper
  if (y[TIME]! + span === y[TIME]) throw new Error(`no step leads on from time ${y[TIME]}`)
  run.stride = span * stepFactor(error)
}

/** Sets the length of the next step; one that nearly reaches the limit leaves no sliver before it. */
function measureStep(run: EventRun): void {
  const { system, stepper } = run
  const left = run.limit - stepper.y[TIME]!
  const span = Math.min(run.stride, system.longest)
  run.reaches = span >= left
  stepper.span = span
  if (run.reaches) stepper.span = left
  else if (2 * span > left) stepper.span = left / 2
}

/** Keeps the step as far as the mode holds. */
function finishStep(run: EventRun): void {
  const { stepper } = run
  find(run)
  if (run.guard >= 0) {
    cut(run)
    return
  }
  run.witness?.see(stepper)
  acceptStep(stepper)
  run.before.set(run.after)
  run.idle = 0
  const stride = stepper.span * stepFactor(stepper.error)
  // A step cut short by the limit says nothing about the length of the next.
  if (!run.reaches || stride > run.stride) run.stride = stride
  if (run.reaches) arrive(run)
}

function arrive(run: EventRun): void {
  const { y } = run.stepper
  y[TIME] = run.limit
  if (run.limit < run.system.clock.nextInstant) return
  run.system.passInstant(y)
  run.fresh = true
}

/** Changes modes that do not hold where they start, then takes rates and guards anew. */
function refresh(run: EventRun): void {
  const { system, stepper, before } = run
  for (;;) {
    system.writeGuards(before, stepper.y)
    let wrong = 0
    while (wrong < before.length && !(before[wrong]! < -SURFACE)) wrong++
    if (wrong === before.length || run.idle > MOST_IDLE) break
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
  const { system, stepper, within, after } = run
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
    findCrossing(run)
    if (run.bracket.b >= earliest) continue
    earliest = run.bracket.b
    first = n
  }
  run.guard = first
  if (first >= 0) run.theta = earliest
}

/**
 * Sets bracket.b to the part of the step where guard run.guard passes zero. One that starts on its surface has to rise
 * first: where it does so, the later zero inside is meant; where it does not, the mode ends at once.
 */
function findCrossing(run: EventRun): void {
  const { bracket, guard } = run
  const within = run.within[guard]!
  if (within > 0) {
    bracket.a = 0.5
    bracket.fa = within
    bracket.b = 1
    bracket.fb = run.after[guard]!
  } else {
    bracket.a = 0
    bracket.fa = run.before[guard]!
    bracket.b = 0.5
    bracket.fb = within
    if (bracket.fa <= SURFACE && !rises(run)) {
      bracket.b = 0
      return
    }
  }
  closeBracket(bracket, run.probe)
}

/** Whether a guard that starts on its surface is above it at first; narrows the bracket to where it is. */
function rises(run: EventRun): boolean {
  const { bracket } = run
  for (const part of CLOSER) {
    bracket.x = part
    look(run)
    if (bracket.value > 0) {
      bracket.a = part
      bracket.fa = bracket.value
      return true
    }
    bracket.b = part
    bracket.fb = bracket.value
  }
  return false
}
