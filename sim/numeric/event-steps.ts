import { acceptStep, beginStep, prepareDense, stepFactor, takeStep, TIME } from './dormand-prince.ts'
import { findChange, SURFACE } from './event-crossing.ts'
import type { EventRun } from './event-run.ts'

/** More changes than any circuit has modes, without time moving on */
const MOST_IDLE = 24

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
  findChange(run)
  if (run.idle > MOST_IDLE) run.guard = -1
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
