/**
 * The fast lane: how the frame changes by itself. Real time enters as `elapsed` and nowhere else.
 * While the drive runs, a fixed step of screen time is cut into model time by the pace, so the turns do not depend
 * on how often frames are drawn. Nothing here allocates once it has started.
 */
import type { Drive } from '../../sim/drive/drive.ts'
import { followPlay, settlePlay } from '../../sim/drive/play.ts'
import { type Reading, readAt, readState } from '../../sim/drive/reading.ts'
import { step } from '../../sim/drive/step.ts'
import { TICKS_PER_TURN, advanceTicks, advanceTurns, copyTurns, ticksBetween } from '../../sim/drive/turns.ts'
import type { Motion } from '../store/readout.ts'
import type { Frame } from './frame-state.ts'
import { ramped } from './ramp.ts'

/** Screen time of one step [s] */
const SCREEN_STEP = 1 / 240
/** A frame that comes later than this after the last one is taken as this late [s]. */
const LATEST = 1

function setMotion(frame: Frame, motion: Motion): void {
  if (frame.motion === motion) return
  frame.motion = motion
  frame.leftover = 0
  frame.drawnSpeed = 0
  if (motion !== 'running') {
    frame.state.speed = 0
    frame.state.acceleration = 0
    frame.stopping = false
  }
  show(frame)
}

/** Takes another drive; the worm stays where it is. */
export function changeDrive(frame: Frame, drive: Drive): void {
  const { play, state } = frame
  if (drive.halfPlay !== play.half) settlePlay(play, state.turns, drive.halfPlay)
  frame.drive = drive
}

export const turnByDrive = (frame: Frame): void => setMotion(frame, 'running')

/** Holds everything where it is; counts and angles stay. */
export const hold = (frame: Frame): void => setMotion(frame, 'still')

/** Runs by the drive and stops by itself, exactly, `ticks` further on in the drive's own sense. */
export function turnByDriveFor(frame: Frame, ticks: number): void {
  copyTurns(frame.stopAt, frame.state.turns)
  advanceTicks(frame.stopAt, ticks * frame.input.sense)
  setMotion(frame, 'running')
  frame.stopping = true
}

const SECONDS_A_TURN = 0.4
const SHORTEST_SECONDS = 0.3
const LONGEST_SECONDS = 12
/** Time in which a hand turn comes up to speed, and slows down again [s] */
const RAMP_SECONDS = 0.3

/**
 * Turns by hand through whole ticks and ends exactly there. A second step while the first is under way is added to
 * its end. `seconds` is the time for one turn.
 */
export function turnByHand(frame: Frame, ticks: number, seconds = SECONDS_A_TURN): void {
  const { hand, state } = frame
  if (frame.motion === 'hand') advanceTicks(hand.to, ticks)
  else {
    copyTurns(hand.to, state.turns)
    advanceTicks(hand.to, ticks)
  }
  copyTurns(hand.from, state.turns)
  const turns = Math.abs(ticksBetween(hand.from, hand.to)) / TICKS_PER_TURN
  hand.elapsed = 0
  hand.duration = Math.min(LONGEST_SECONDS, Math.max(SHORTEST_SECONDS, seconds * turns))
  if (frame.cuts) {
    copyTurns(state.turns, hand.to)
    show(frame)
  } else setMotion(frame, 'hand')
}

export function beginDrag(frame: Frame): void {
  setMotion(frame, 'dragged')
  copyTurns(frame.hand.from, frame.state.turns)
}

/** Places the worm `wormTurns` from where the drag began. */
export function dragTo(frame: Frame, wormTurns: number): void {
  if (frame.motion !== 'dragged') return
  copyTurns(frame.state.turns, frame.hand.from)
  advanceTurns(frame.state.turns, wormTurns)
  show(frame)
}

/** Lets go on the nearest degree, so that a count that was turned to a mark is exact. */
export function endDrag(frame: Frame): void {
  if (frame.motion !== 'dragged') return
  const degree = TICKS_PER_TURN / 360
  const { turns } = frame.state
  const onDegree = Math.round((turns.ticks + turns.rest) / degree) * degree
  turns.ticks = 0
  advanceTicks(turns, onDegree)
  setMotion(frame, 'still')
}

/** Marks into line with their pointers, counts to zero. */
export function zero(frame: Frame): void {
  setMotion(frame, 'still')
  placeAt(frame, 0, 0, 0)
}

export function placeAt(frame: Frame, turns: number, ticks: number, rest: number): void {
  frame.state.turns.turns = turns
  frame.state.turns.ticks = ticks
  frame.state.turns.rest = rest
  settlePlay(frame.play, frame.state.turns, frame.drive.halfPlay)
  show(frame)
}

function runSteps(frame: Frame, count: number, dt: number): void {
  const { state, drive, input } = frame
  for (let i = 0; i < count; i++) {
    step(state, drive, input, dt)
    if (frame.stopping && ticksBetween(state.turns, frame.stopAt) * input.sense <= 0) {
      copyTurns(state.turns, frame.stopAt)
      setMotion(frame, 'still')
      return
    }
  }
  if (state.speed === 0 && !input.connected) setMotion(frame, 'still')
}

function runHand(frame: Frame, elapsed: number): void {
  const { hand, state } = frame
  hand.elapsed += elapsed
  if (hand.elapsed >= hand.duration) {
    copyTurns(state.turns, hand.to)
    setMotion(frame, 'still')
    return
  }
  const x = hand.elapsed / hand.duration
  const ramp = Math.min(0.5, RAMP_SECONDS / hand.duration)
  const turns = ticksBetween(hand.from, hand.to) / TICKS_PER_TURN
  copyTurns(state.turns, hand.from)
  advanceTurns(state.turns, turns * ramped(x, ramp))
  frame.drawnSpeed = (turns * Math.min(1, x / ramp, (1 - x) / ramp)) / (hand.duration * (1 - ramp))
}

/** Reads the drive as it is now: under power or coasting, else at rest without power. */
export function read(frame: Frame): Reading {
  const { drive, input, reading, state } = frame
  if (frame.motion === 'running') return readState(reading, drive, input, state)
  const { connected } = input
  input.connected = false
  readAt(reading, drive, input, 0, 0)
  input.connected = connected
  return reading
}

/** One frame: moves on by `elapsed` seconds of screen time, then lets everything that shows it paint. */
export function runFrame(frame: Frame, elapsed: number): void {
  const late = Math.min(elapsed, LATEST)
  if (frame.motion === 'running') {
    const due = frame.leftover + late
    const steps = Math.floor(due / SCREEN_STEP)
    frame.leftover = due - steps * SCREEN_STEP
    runSteps(frame, steps, SCREEN_STEP / frame.pace)
    frame.drawnSpeed = frame.state.speed / (2 * Math.PI * frame.pace)
  } else if (frame.motion === 'hand') runHand(frame, late)
  paint(frame)
}

/** Moves on by model time, whatever the pace, without drawing: for exact moments in tests and links. */
export function advanceModel(frame: Frame, seconds: number): void {
  if (frame.motion === 'hand') runHand(frame, frame.hand.duration)
  else if (frame.motion === 'running') runSteps(frame, Math.round(seconds / SCREEN_STEP), SCREEN_STEP)
  show(frame)
}

/** Lets everything that shows the frame paint, and asks the picture to follow. */
export function show(frame: Frame): void {
  paint(frame)
  frame.wake()
}

/** Whatever moved the worm, the wheels follow before anything is shown; within a frame it goes one way. */
function paint(frame: Frame): void {
  const turned = ticksBetween(frame.play.from, frame.state.turns)
  if (turned !== 0) frame.sense = turned > 0 ? 1 : -1
  followPlay(frame.play, frame.state.turns)
  for (const draw of frame.canvases) draw()
  for (const painter of frame.painters) painter()
}
