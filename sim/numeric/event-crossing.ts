import { closeBracket } from './brent.ts'
import { prepareDense, writeDense } from './dormand-prince.ts'
import type { EventRun } from './event-run.ts'
import { lookAtGuard } from './event-run.ts'

/** Guards closer to zero than this are on their surface: rounding, in units of their ordinary size. */
export const SURFACE = 1e-10
/** A guard no further below zero than this has not passed it. */
const ROUNDING = 1e-13
/** Parts of a step at which a guard that starts on its surface is looked at. */
const CLOSER = [1 / 4, 1 / 16, 1 / 64] as const

/** Sets run.guard and run.theta to the earliest change in the step just taken. */
export function findChange(run: EventRun): void {
  const { system, stepper, within, after } = run
  run.guard = -1
  run.theta = 1
  prepareDense(stepper)
  writeDense(stepper.stage, stepper, 0.5)
  system.writeGuards(within, stepper.stage)
  system.writeGuards(after, stepper.next)
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
    lookAtGuard(run)
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
