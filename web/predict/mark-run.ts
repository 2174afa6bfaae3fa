/** The run of the Count step: by hand, slowly enough to count, to the place where the left wheel's mark is back. */
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import { type Frame } from '../frame/frame-state.ts'
import { hold, turnByHand } from '../frame/frame.ts'
import type { Pair } from '../store/prediction.ts'

/** One worm turn in this time [s] can be counted by eye. */
const SECONDS_A_TURN = 1

/** Ticks of one wheel turn: whole, as every number of starts up to 12 divides a turn. */
const wheelTurnTicks = ({ starts, teeth }: Pair): number => (TICKS_PER_TURN / starts) * teeth

/** Whole ticks to the mark; what a stopped turn left below a tick is let go of when it is turned on. */
function ticksAhead({ state }: Frame, pair: Pair): number {
  const { turns, ticks } = state.turns
  return wheelTurnTicks(pair) - turns * TICKS_PER_TURN - ticks
}

export const markIsBack = (frame: Frame, pair: Pair): boolean =>
  frame.motion === 'still' && ticksAhead(frame, pair) === 0 && frame.state.turns.rest === 0

/** Turns on, or back where it has gone past, and stops on the mark. */
export function turnToMark(frame: Frame, pair: Pair): void {
  hold(frame)
  const ticks = ticksAhead(frame, pair)
  turnByHand(frame, ticks, SECONDS_A_TURN)
  frame.hand.duration = Math.max(frame.hand.duration, (SECONDS_A_TURN * Math.abs(ticks)) / TICKS_PER_TURN)
}

const QUARTER = TICKS_PER_TURN / 4

/** For reduced motion: a quarter turn on its way, or what is left of it. */
export function stepToMark(frame: Frame, pair: Pair): void {
  const ticks = ticksAhead(frame, pair)
  turnByHand(frame, Math.sign(ticks) * Math.min(QUARTER, Math.abs(ticks)))
}
