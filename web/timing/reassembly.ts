/** What comes of putting the left wheel in at a tooth and turning by hand, found before anything turns. */
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import { clearanceAt } from '../../sim/gear/row-clearance.ts'
import { type TimedPair, clashAhead, rowOffset } from '../../sim/gear/timing.ts'

/** A hand turn stops on whole degrees of the worm. */
const DEGREE = TICKS_PER_TURN / 360

/** Worm ticks that bring each wheel on by one tooth */
export const toothTicks = ({ starts }: Pick<TimedPair, 'starts'>): number => TICKS_PER_TURN / starts

/** Worm ticks of one whole turn of the wheels */
export const wheelTicks = (pair: Pick<TimedPair, 'starts' | 'teeth'>): number => pair.teeth * toothTicks(pair)

/** Distance of the rows at the moment the wheel goes in, with the right rows at u. */
export const distanceAsPutIn = (pair: TimedPair, toothOffset: number, u: number): number =>
  clearanceAt(pair.rows, u, rowOffset(pair, toothOffset))

/** Whole degrees, in ticks, that the worm can turn forwards from here before rows come too near; Infinity: for ever. */
export function freeTicks(pair: TimedPair, toothOffset: number, u: number): number {
  const { forward } = clashAhead(pair, u, rowOffset(pair, toothOffset))
  return forward === null ? Infinity : Math.floor((forward * TICKS_PER_TURN) / DEGREE) * DEGREE
}

export interface HandTurn {
  readonly ticks: number
  /** The rows would meet before the turn that was wanted is over. */
  readonly short: boolean
}

/** The hand turn that is made of the one that is wanted: all of it, or as far as it is free. */
export function handTurnOf(pair: TimedPair, toothOffset: number, u: number, wanted: number): HandTurn {
  const free = freeTicks(pair, toothOffset, u)
  return free < wanted ? { ticks: free, short: true } : { ticks: wanted, short: false }
}

/** Whole teeth in so many ticks; a tooth that is short of nothing but rounding has passed. */
export const teethPassed = (pair: TimedPair, ticks: number): number =>
  Math.max(0, Math.floor(ticks / toothTicks(pair) + 1e-9))

/** Number of the tooth, counted from 1 where the wheel went in, in whose passing the rows would meet. */
export const meetingTooth = (pair: TimedPair, ticks: number): number => teethPassed(pair, ticks) + 1
