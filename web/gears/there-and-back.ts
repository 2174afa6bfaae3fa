/** A small turn by hand back and forth again, so that the play can be watched. */
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import { hold, turnByHand } from '../frame/frame.ts'
import type { Workshop } from '../frame/workshop.ts'

/** How much further than the play it turns, at least so far [deg], and how long the play takes */
const BEYOND = 2.5
const LEAST = 12
const SECONDS_OF_PLAY = 1
/** Before it turns forth again [ms] */
const PAUSE = 700
const LONG_PAUSE = 2500

/** Degrees of the worm, whole ones, that show a play of so many. */
const swing = (play: number): number => Math.max(LEAST, Math.ceil(BEYOND * play))

export function turnBackAndForth(workshop: Workshop, play: number): void {
  const { frame, readout } = workshop
  if (frame.motion === 'hand') return
  hold(frame)
  // Where hand turns land at once, it stops half-way through the play, so that the gaps are there to see.
  const degrees = frame.cuts ? play / 2 : swing(play)
  const ticks = Math.round((degrees * TICKS_PER_TURN) / 360)
  const seconds = (SECONDS_OF_PLAY * 360) / Math.max(play, LEAST / BEYOND)
  const forth = () => {
    if (frame.motion === 'still') turnByHand(frame, ticks, seconds)
  }
  turnByHand(frame, -ticks, seconds)
  if (frame.motion === 'still') {
    setTimeout(forth, LONG_PAUSE)
    return
  }
  const end = readout.subscribe(({ motion }) => {
    if (motion === 'hand') return
    end()
    if (motion === 'still') setTimeout(forth, PAUSE)
  })
}
