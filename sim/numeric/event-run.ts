import type { Bracket, Probe } from './brent.ts'
import { newBracket } from './brent.ts'
import type { Equations, Stepper } from './dormand-prince.ts'
import { writeDense } from './dormand-prince.ts'

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
    probe: { look: () => lookAtGuard(run) },
  }
  run.bracket.near = ROOT
  return run
}

/** Sets bracket.value to guard run.guard at part bracket.x of the step. */
export function lookAtGuard(run: EventRun): void {
  const { system, stepper, bracket, passing } = run
  writeDense(stepper.stage, stepper, bracket.x)
  system.writeGuards(passing, stepper.stage)
  bracket.value = passing[run.guard]!
}
