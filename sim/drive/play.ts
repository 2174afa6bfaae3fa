/**
 * Backlash as play: each wheel stays where it is until one flank of the thread or the other takes it along. The
 * worm's count is never touched by it, nor are the counts of the wheels, which follow from the worm's exactly; only the
 * places that are drawn lag. Friction holds a wheel inside its play; a load that keeps pressing one way, and would
 * lay the wheel against one flank for good, is left out, and so is a wheel that coasts on through its play.
 */
import { TICKS_PER_TURN, type WormTurns, copyTurns, noTurns, ticksBetween } from './turns.ts'

export interface Play {
  /** What each wheel is ahead of the worm's exact place, within half the play either way [turn of the worm] */
  left: number
  right: number
  /** Half of what the worm can turn before a wheel follows [turn] */
  half: number
  /** Where the worm was when the wheels last followed it */
  readonly from: WormTurns
}

export const newPlay = (): Play => ({ left: 0, right: 0, half: 0, from: noTurns() })

/**
 * Half the worm's lost motion [turn], jx/(2 lead): the worm is free to move by the axial backlash jx [m or mm] in the
 * space of the wheel. Lead = pi m z1, in the same unit. Any gear text; from memory.
 */
export const halfPlay = (jx: number, lead: number): number => jx / (2 * lead)

/**
 * Both wheels as if the worm had come to `turns` forwards, about +z: each lies on the flank that drives it so. Thus
 * a machine that is set to zero turns on at once, counts 20 to 1 from there to the last bit, and shows all of its
 * play at the first step back; the marks stand at their pointers within half the play.
 */
export function settlePlay(play: Play, turns: WormTurns, half: number): void {
  play.half = half
  play.left = half === 0 ? 0 : -half
  play.right = play.left
  copyTurns(play.from, turns)
}

/**
 * Lets both wheels follow the worm from where it was last to `turns`, having gone straight there:
 * lag <- clamp(lag - turned, -half, +half), each wheel by itself. Allocates nothing.
 */
export function followPlay(play: Play, turns: WormTurns): void {
  const { half } = play
  if (half === 0) {
    play.left = 0
    play.right = 0
  } else {
    const turned = ticksBetween(play.from, turns) / TICKS_PER_TURN
    play.left = Math.max(-half, Math.min(half, play.left - turned))
    play.right = Math.max(-half, Math.min(half, play.right - turned))
  }
  copyTurns(play.from, turns)
}
