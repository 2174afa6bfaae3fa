/** The turn by which a learner tries an answer: by hand, slowly enough to count, to an exact end, and no further. */
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import type { Question } from '../../sim/question/question.ts'
import type { Frame } from '../frame/frame-state.ts'
import { hold, placeAt, turnByHand } from '../frame/frame.ts'

/** One worm turn in this time can be counted by eye without haste [s] */
const UNHURRIED = 1
/** A long run takes no longer than this [s] ... */
const LONG_RUN = 60
/** ... unless its turns could not be counted any more; of one turn [s] */
const COUNTABLE = 0.4

/** The sense in which the stage turns the worm: what the question says, else forwards. */
export const senseOf = ({ gearing }: Question): 1 | -1 => gearing?.sense ?? 1

/** Where the trial ends, from the count of zero [ticks]; null where there is none. */
export function trialEnd(question: Question): number | null {
  const { trial } = question
  if (!trial) return null
  return Math.round((senseOf(question) * trial.top * TICKS_PER_TURN) / trial.bottom)
}

/** Whole ticks to the end; what a stopped turn left below a tick is let go of when it is turned on. */
const ticksAhead = ({ state }: Frame, end: number): number =>
  end - state.turns.turns * TICKS_PER_TURN - state.turns.ticks

export const isAtEnd = (frame: Frame, end: number): boolean =>
  frame.motion === 'still' && ticksAhead(frame, end) === 0 && frame.state.turns.rest === 0

/** Puts the machine at the end of the trial, wherever it was left. */
export function finishTrial(frame: Frame, question: Question): void {
  const end = trialEnd(question)
  hold(frame)
  if (end === null || isAtEnd(frame, end)) return
  const turns = Math.floor(end / TICKS_PER_TURN)
  placeAt(frame, turns, end - turns * TICKS_PER_TURN, 0)
}

/** How long so many worm turns take [s] */
export const runSeconds = (turns: number): number =>
  Math.max(COUNTABLE * turns, Math.min(UNHURRIED * turns, LONG_RUN))

/** Turns on, or back where it has gone past, and stops at the end. */
export function turnToEnd(frame: Frame, end: number, unhurried = false): void {
  hold(frame)
  const ticks = ticksAhead(frame, end)
  const turns = Math.abs(ticks) / TICKS_PER_TURN
  turnByHand(frame, ticks)
  frame.hand.duration = Math.max(frame.hand.duration, unhurried ? UNHURRIED * turns : runSeconds(turns))
}

const QUARTER = TICKS_PER_TURN / 4
/** Time between the quarter turns of a run without motion [ms] */
const QUARTER_EVERY = 250

/** Without motion: a quarter turn on its way, or what is left of it. */
export function stepToEnd(frame: Frame, end: number): void {
  const ticks = ticksAhead(frame, end)
  turnByHand(frame, Math.sign(ticks) * Math.min(QUARTER, Math.abs(ticks)))
}

interface RunOptions {
  /** However long it takes */
  readonly unhurried?: boolean
  /** Called where it went by steps, once it is there. */
  readonly ended?: () => void
}

/**
 * Runs to the end, or steps there where motion is reduced, until something else moves the machine; returns what stops
 * it.
 */
export function runToEnd(
  frame: Frame,
  end: number,
  { unhurried = false, ended }: RunOptions = {},
): () => void {
  if (!frame.cuts) {
    turnToEnd(frame, end, unhurried)
    return () => {
      if (frame.motion === 'hand') hold(frame)
    }
  }
  let left = ticksAhead(frame, end)
  const timer = setInterval(() => {
    const isOwn = frame.motion === 'still' && ticksAhead(frame, end) === left
    if (isOwn) stepToEnd(frame, end)
    left = ticksAhead(frame, end)
    if (isOwn && left !== 0) return
    clearInterval(timer)
    ended?.()
  }, QUARTER_EVERY)
  return () => clearInterval(timer)
}
