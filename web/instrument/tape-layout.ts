/**
 * Where things stand on the turn tape [px]. It is laid out by worm angle, never by time. Places are told relative to
 * a whole worm turn at the left edge, so that they are as exact after a million turns as at the start.
 */
import { TICKS_PER_TURN, type WormTurns, wormFraction } from '../../sim/drive/turns.ts'

/** Part of the width to which the cursor rides before the tape runs under it */
const CURSOR_RIDES_TO = 0.85
/** A whole wheel turn and this much more fits on the tape. */
const ROOM = 1.1
/** A flag further out than this many wheel turns is left off the tape. */
const FLAG_FITS = 2.5
/** Closer than this [px], or faster than this [1/s], only every fifth pass is drawn. */
const CLOSEST_DASHES = 8
const FASTEST_PASSES = 12
const NUMBER_STEPS = [5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000]

export interface TapeWindow {
  readonly width: number
  /** From the left end to worm turn 0 while the tape stands at its start */
  readonly edge: number
  /** Width of one worm turn */
  readonly px: number
  /** Last whole worm turn at or before the left end of the scale, and the part of a turn that is past it. */
  firstTurn: number
  firstPart: number
  cursor: number
  /** Worm turns that fit between the edge and the right end */
  readonly shown: number
}

export interface TapeRoom {
  readonly width: number
  readonly edge: number
  /** A worm turn is never drawn wider than this. */
  readonly widest: number
}

const windowOf = ({ width, edge, widest }: TapeRoom, span: number): TapeWindow => {
  const px = Math.max(0.01, Math.min(widest, (width - 2 * edge) / span))
  return { width, edge, px, firstTurn: 0, firstPart: 0, cursor: edge, shown: (width - edge) / px }
}

/** Scale for an open tape: fits one wheel turn of `period` worm turns, and the flag where it is not far beyond. */
export function openTape(room: TapeRoom, period: number, flag: number | null): TapeWindow {
  const fits = flag !== null && flag <= FLAG_FITS * period
  return windowOf(room, ROOM * (fits ? Math.max(period, flag) : period))
}

/** Scale for a covered tape: it depends on the learner's flag and not on the machine, so it gives nothing away. */
export function coveredTape(room: TapeRoom, flag: number | null): TapeWindow {
  const scale = room.width - 2 * room.edge
  const usual = Math.min(Math.max(22, scale / room.widest), scale / CLOSEST_DASHES)
  return windowOf(room, flag === null || flag <= usual ? usual : 1.25 * flag)
}

/** Moves the window so that the worm's place stands where the cursor may stand. */
export function followTurns(out: TapeWindow, turns: WormTurns): TapeWindow {
  const part = wormFraction(turns)
  const room = (CURSOR_RIDES_TO * out.width - out.edge) / out.px
  const value = turns.turns + part
  const behind = value > room ? room : value < 0 ? 0 : null
  if (behind === null) {
    out.firstTurn = 0
    out.firstPart = 0
    out.cursor = out.edge + value * out.px
    return out
  }
  const first = part - behind
  const down = Math.floor(first)
  out.firstTurn = turns.turns + down
  out.firstPart = first - down
  out.cursor = out.edge + behind * out.px
  return out
}

/** Where the worm place `turn + part` stands; `turn` may be any size, the difference is taken first. */
export const tapeX = (tape: TapeWindow, turn: number, part: number): number =>
  tape.edge + (turn - tape.firstTurn + part - tape.firstPart) * tape.px

/** Where tooth number `tooth` of a wheel meets the edge: at tooth/z1 worm turns, also between whole ones. */
export const toothX = (tape: TapeWindow, tooth: number, z1: number): number =>
  tape.edge + ((tooth - tape.firstTurn * z1) / z1 - tape.firstPart) * tape.px

/** First and last tooth that the window shows, a little beyond both ends. */
export const firstTooth = (tape: TapeWindow, z1: number): number =>
  Math.floor((tape.firstTurn - tape.edge / tape.px - 1) * z1)
export const lastTooth = (tape: TapeWindow, z1: number): number =>
  Math.ceil((tape.firstTurn + tape.shown + 2) * z1)

/** Ticks of the wheels' teeth from the worm's place to tooth number `tooth`; whole numbers only. */
const ticksToTooth = (turns: WormTurns, tooth: number, z1: number): number =>
  (tooth - turns.turns * z1) * TICKS_PER_TURN - turns.ticks * z1

/** The tooth has gone past the pointer between the count of zero and now. */
export function toothPassed(turns: WormTurns, tooth: number, z1: number): boolean {
  const ahead = ticksToTooth(turns, tooth, z1) - turns.rest * z1
  return tooth === 0 || (tooth > 0 ? ahead <= 0 : ahead >= 0)
}

/** 1, or 5 where passes come too close or too fast to be told apart. */
export const dashStep = (px: number, turnsPerSecond: number): 1 | 5 =>
  px < CLOSEST_DASHES || Math.abs(turnsPerSecond) > FASTEST_PASSES ? 5 : 1

/** Step between numbers so that neighbours stand `room` apart at least. */
export const numberStep = (px: number, room: number): number =>
  NUMBER_STEPS.find((step) => step * px >= room) ?? Math.ceil(room / px / 10_000) * 10_000
