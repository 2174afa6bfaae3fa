import { TURN } from '../quantity/constants.ts'
import { stepBackward } from './backward-step.ts'
import { discharge, holdCurrent, isOnCapacitor, keepCapacitor } from './capacitor.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import { canMove, respond, respondFrom, senseMotion, takeState } from './motion.ts'
import { readPrimary } from './electric-reading.ts'
import { warmProtection } from './protection.ts'
import { boundRate } from './settling.ts'
import type { DriveState } from './state.ts'
import { countStep } from './state.ts'
import { advanceTurns, TICKS_PER_TURN } from './turns.ts'

/** Time in which a hand brings a resting crank to its speed, so that nothing jumps [s]. Our choice. */
const CRANK_RISE = 0.3
/** Largest product of span and settling rate, well inside what this Runge-Kutta keeps stable (2.78). */
const CALM = 0.5
/** Where a step would need more parts, the drive settles within it, and implicit parts are taken. */
const MOST_PARTS = 32
const BACKWARD_PARTS = 8
/** Standstill is met to this part of the speed before. */
const LANDED = 1e-13
const MOST_LANDINGS = 60

/**
 * Moves the drive on by dt of model time at cycle means; dt > 0 [s], at most 1/240 s where the way to the
 * steady speed matters and not only where it ends. Runge-Kutta of fourth order on the speed within one sense
 * of motion, in parts that suit the rate at which the speed settles; implicit parts where it settles much
 * faster. A part in which the speed would change sign is cut where it is zero; there friction holds the
 * drive, or it goes on the other way. Allocates nothing: numbers go from function to function in fields.
 */
export function step(state: DriveState, drive: Drive, input: DriveInput, dt: number): void {
  countStep(state, dt)
  takeState(state, drive, input)
  const { work } = drive
  work.acceleration = 0
  senseMotion(work)
  if (!canMove(drive)) stop(state)
  else if (drive.crankSpeeds.length === 0 || !input.connected) run(state, drive, input)
  else if (input.jammed === 'none') turnCrank(state, drive, input)
  else stop(state)
}

/** A hand lets go of a crank whose wheel is jammed. */
function stop(state: DriveState): void {
  state.speed = 0
  state.acceleration = 0
}

function turnCrank(state: DriveState, drive: Drive, input: DriveInput): void {
  const dt = state.stepLength
  const target = input.sense * (drive.crankSpeeds[input.setting] ?? 0)
  const rate = Math.abs(target) / CRANK_RISE
  const missing = target - state.speed
  const rising = Math.min(dt, rate > 0 ? Math.abs(missing) / rate : 0)
  const before = state.speed
  state.acceleration = rising < dt ? 0 : Math.sign(missing) * rate
  state.speed = rising < dt ? target : before + state.acceleration * dt
  drive.work.turned = input.sense * (((before + state.speed) / 2) * rising + state.speed * (dt - rising))
  turnOn(state, drive, input)
}

/**
 * Every part but one that lands takes at least 1/MOST_PARTS of the step, so the loop ends. Of one variable
 * and without time in it, the motion can come to rest once only; were rounding to bring it there again, it
 * stays for what is left.
 */
function run(state: DriveState, drive: Drive, input: DriveInput): void {
  const { work } = drive
  work.remaining = state.stepLength
  for (let landings = 0; work.remaining > 0 && landings < 2; work.remaining -= work.span) {
    work.span = work.remaining
    work.held = isOnCapacitor(drive, input)
    if (work.held) holdCurrent(drive, input)
    respondFrom(drive, input)
    if (work.motion !== 0) {
      takePart(state, drive, input)
      if (work.speed === 0) landings++
      turnOn(state, drive, input)
    } else if (!work.held) break
    if (work.held) discharge(drive, input)
  }
  work.held = false
  settle(state, drive, input)
}

/** Moves over work.span, or less of it, from work.speed with its acceleration. */
function takePart(state: DriveState, drive: Drive, input: DriveInput): void {
  const { work } = drive
  work.from = work.speed
  work.push = work.acceleration
  work.reach = Math.abs(work.from) + Math.abs(work.push) * work.span
  boundRate(drive, input)
  const calm = CALM / work.rate
  const isCalm = calm * MOST_PARTS >= state.stepLength
  const most = isCalm ? calm : state.stepLength / BACKWARD_PARTS
  if (work.span > most) work.span = most
  if (isCalm) stepForward(drive, input)
  else stepBackward(drive, input)
}

/** Adds the angle turned to the count: in the field, because as an argument the number could cost a box. */
function turnOn(state: DriveState, drive: Drive, input: DriveInput): void {
  state.turns.rest += ((input.sense * drive.work.turned) / TURN) * TICKS_PER_TURN
  advanceTurns(state.turns, 0)
}

function stepForward(drive: Drive, input: DriveInput): void {
  const { work } = drive
  rungeKutta(drive, input)
  if (work.speed * work.motion < 0) land(drive, input)
}

/** Takes work.from over work.span with the sense of motion held; leaves the speed and the angle turned. */
function rungeKutta(drive: Drive, input: DriveInput): void {
  const { work } = drive
  const { from, span, push: k1 } = work
  work.speed = from + (span / 2) * k1
  respond(drive, input)
  const k2 = work.acceleration
  work.speed = from + (span / 2) * k2
  respond(drive, input)
  const k3 = work.acceleration
  work.speed = from + span * k3
  respond(drive, input)
  const k4 = work.acceleration
  work.speed = from + (span / 6) * (k1 + 2 * (k2 + k3) + k4)
  work.turned = span * (from + (span / 6) * (k1 + k2 + k3))
}

/** Shortens work.span until the speed at its end is zero: false position, halving where that lags. */
function land(drive: Drive, input: DriveInput): void {
  const { work } = drive
  const near = Math.abs(work.from) * LANDED
  let early = 0
  let late = work.span
  let earlySpeed = work.from
  let lateSpeed = work.speed
  for (let round = 0; round < MOST_LANDINGS && Math.abs(work.speed) > near; round++) {
    const guess = early + ((late - early) * earlySpeed) / (earlySpeed - lateSpeed)
    work.span = round % 3 === 2 ? (early + late) / 2 : guess
    rungeKutta(drive, input)
    if (work.speed * work.motion > 0) {
      early = work.span
      earlySpeed = work.speed
    } else {
      late = work.span
      lateSpeed = work.speed
    }
  }
  work.speed = 0
}

/** Leaves in the state the speed reached and the acceleration that belongs to it. */
function settle(state: DriveState, drive: Drive, input: DriveInput): void {
  const { work } = drive
  respondFrom(drive, input)
  // Adding 0 turns a negative zero into a plain one.
  state.speed = input.sense * work.speed + 0
  state.acceleration = input.sense * work.acceleration + 0
  keepCapacitor(state, drive)
  readPrimary(drive, input)
  warmProtection(state, drive)
}
