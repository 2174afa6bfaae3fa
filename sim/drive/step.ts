import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import { accelerate, canMove, senseMotion, solveTorque, start } from './motion.ts'
import type { DriveState } from './state.ts'
import { countStep } from './state.ts'
import { advanceTurns, TICKS_PER_TURN } from './turns.ts'

/** Time in which a hand brings a resting crank to its speed, so that the picture does not jump [s]. Our choice. */
const CRANK_RISE = 0.3
/** Largest product of step and settling rate: well inside what Runge-Kutta of fourth order keeps stable (2.78). */
const CALM = 0.5
const MOST_PARTS = 200
/** Standstill is met to this part of the speed before. */
const LANDED = 1e-13
const MOST_LANDINGS = 60
/** Times that a part of a step may come to zero speed. */
const MOST_LEGS = 4
const TURN = 2 * Math.PI

/**
 * Moves the drive on by dt of model time, 0 < dt <= 1/240 s, at cycle means: Runge-Kutta of fourth order on the speed
 * within one sense of motion. A step in which the speed would change sign is cut where it is zero; there friction holds
 * the drive, or it goes on the other way. Allocates nothing: numbers go from function to function in fields.
 */
export function step(state: DriveState, drive: Drive, input: DriveInput, dt: number): void {
  countStep(state, dt)
  drive.work.speed = input.sense * state.speed
  drive.work.acceleration = 0
  senseMotion(drive.work)
  if (!canMove(drive) || input.jammed !== 'none') stop(state)
  else if (drive.crankSpeeds.length > 0 && input.connected) turnCrank(state, drive, input)
  else run(state, drive, input)
}

/** A jammed wheel stops a rigid mesh, and with it the worm, at once. */
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

function run(state: DriveState, drive: Drive, input: DriveInput): void {
  const { work } = drive
  const wanted = Math.ceil((state.stepLength * drive.settlingRate) / CALM)
  const parts = wanted > MOST_PARTS ? MOST_PARTS : wanted > 1 ? wanted : 1
  for (let part = 0; part < parts; part++) {
    let left = state.stepLength / parts
    for (let leg = 0; leg < MOST_LEGS && left > 0; leg++) {
      if (work.speed === 0) {
        solveTorque(drive, input)
        start(drive, input)
        if (work.motion === 0) break
      }
      work.from = work.speed
      work.span = left
      rungeKutta(drive, input)
      if (work.speed * work.motion < 0) land(drive, input)
      turnOn(state, drive, input)
      left -= work.span
    }
  }
  settle(state, drive, input)
}

/** Adds the angle turned to the count: in the field, because as an argument the number could cost a box. */
function turnOn(state: DriveState, drive: Drive, input: DriveInput): void {
  state.turns.rest += ((input.sense * drive.work.turned) / TURN) * TICKS_PER_TURN
  advanceTurns(state.turns, 0)
}

/** Takes work.from over work.span with the sense of motion held; leaves the speed and the angle turned. */
function rungeKutta(drive: Drive, input: DriveInput): void {
  const { work } = drive
  const { from, span } = work
  work.speed = from
  respond(drive, input)
  const k1 = work.acceleration
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

function respond(drive: Drive, input: DriveInput): void {
  solveTorque(drive, input)
  accelerate(drive, input)
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
  solveTorque(drive, input)
  if (work.speed === 0) start(drive, input)
  else accelerate(drive, input)
  // Adding 0 turns a negative zero into a plain one.
  state.speed = input.sense * work.speed + 0
  state.acceleration = input.sense * work.acceleration + 0
}
