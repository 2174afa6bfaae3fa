/** The one mutable object of the page: what changes by itself, and who is told. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { type Play, newPlay, settlePlay } from '../../sim/drive/play.ts'
import { type Reading, newReading } from '../../sim/drive/reading.ts'
import { type DriveState, restState } from '../../sim/drive/state.ts'
import { type WormTurns, noTurns } from '../../sim/drive/turns.ts'
import type { Motion } from '../store/readout.ts'

/** A hand turn: from where, to which exact place, how long, how far. */
interface HandTurn {
  readonly from: WormTurns
  readonly to: WormTurns
  elapsed: number
  duration: number
}

export interface Frame {
  drive: Drive
  input: DriveInput
  readonly state: DriveState
  /** Where backlash has left the wheels */
  readonly play: Play
  readonly reading: Reading
  pace: number
  motion: Motion
  leftover: number
  readonly hand: HandTurn
  readonly stopAt: WormTurns
  stopping: boolean
  /** Reduced motion: hand turns land at once. */
  cuts: boolean
  /** Worm speed as it is drawn [turn/s of screen time] */
  drawnSpeed: number
  /** Sense about +z in which the worm last turned; forwards until it has */
  sense: 1 | -1
  /** Called after every frame, in the order they came: counters, plan view. */
  readonly painters: Set<() => void>
  /**
   * Called before the painters: what draws letters on a canvas. To set a font there settles the styles of the page,
   * which costs nothing only while no painter has changed it.
   */
  readonly canvases: Set<() => void>
  /** Asks for a frame, because something changed that no frame was under way to show. */
  wake: () => void
}

export function createFrame(drive: Drive, input: DriveInput): Frame {
  const state = restState()
  const play = newPlay()
  settlePlay(play, state.turns, drive.halfPlay)
  return {
    drive,
    input,
    state,
    play,
    reading: newReading(),
    pace: 1,
    motion: 'still',
    leftover: 0,
    hand: { from: noTurns(), to: noTurns(), elapsed: 0, duration: 0 },
    stopAt: noTurns(),
    stopping: false,
    cuts: false,
    drawnSpeed: 0,
    sense: 1,
    painters: new Set(),
    canvases: new Set(),
    wake: () => undefined,
  }
}

/** Names who draws when the frame asks for it; returns the way to let go again. */
export function drawnBy(frame: Frame, wake: () => void): () => void {
  frame.wake = wake
  return () => {
    if (frame.wake === wake) frame.wake = () => undefined
  }
}

/** With reduced motion a hand turn lands at once. */
export function setCuts(frame: Frame, cuts: boolean): void {
  frame.cuts = cuts
}
