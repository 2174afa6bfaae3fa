/** The whole tape as one picture, open or covered, and where the prediction's flag stands on it. */
import type { WormTurns } from '../../sim/drive/turns.ts'
import { type TapeWindow, tapeX } from './tape-layout.ts'
import { drawCursor, drawNumbers, drawPasses, drawTeeth, drawWheelMarks } from './tape-marks.ts'
import { type Trial, drawMiss, drawPole, drawTaps, drawWheelTurn } from './tape-notes.ts'
import type { Pen } from './tape-pen.ts'

/**
 * none  - everything is drawn
 * scale - wheel lanes are hatched, the worm's scale stands at zero for a flag to be put on
 * all   - the machine turns under the cover: nothing moves here
 */
export type TapeCover = 'none' | 'scale' | 'all'

export interface TapeContent {
  readonly starts: number
  readonly teeth: number
  readonly cover: TapeCover
  /** Place of the prediction's flag [turn]; null without one. */
  readonly flag: number | null
  readonly taps: readonly number[]
  /** The turn that is or was counted; null where none is */
  readonly trial: Trial | null
}

function drawGround({ ctx, colours, sizes, hatch }: Pen, width: number, cover: TapeCover): void {
  const { lane, top } = sizes
  ctx.clearRect(0, 0, width, top + 3 * lane)
  ctx.fillStyle = cover !== 'none' && hatch ? hatch : colours.lane
  ctx.fillRect(0, top, width, 3 * lane)
  if (cover !== 'all') {
    ctx.fillStyle = colours.panel
    ctx.fillRect(0, top + lane, width, lane)
  }
  ctx.fillStyle = colours.ink
  ctx.fillRect(0, top + lane - 0.6, width, 1.2)
  ctx.fillRect(0, top + 2 * lane - 0.6, width, 1.2)
}

export function drawTape(
  pen: Pen,
  tape: TapeWindow,
  turns: WormTurns,
  content: TapeContent,
  speed: number,
): void {
  const { starts, teeth, cover, flag, taps, trial } = content
  const open = cover === 'none'
  drawGround(pen, tape.width, cover)
  if (open) drawTeeth(pen, tape, turns, starts, teeth)
  if (cover !== 'all') drawCursor(pen, tape.cursor)
  drawPasses(pen, tape, turns, speed, cover !== 'all')
  if (flag !== null) drawPole(pen, tape, flag)
  drawNumbers(pen, tape, turns, speed, cover !== 'all')
  if (!open) return
  drawWheelMarks(pen, tape, turns, starts, teeth)
  if (flag === null || !trial) drawWheelTurn(pen, tape, turns, starts, teeth)
  else if (!markBetween(flag, trial.end, teeth / starts)) drawMiss(pen, tape, flag, trial.end)
  if (trial) drawTaps(pen, tape, taps, trial)
}

/** Whether a wheel's mark was printed between the flag and the end [worm turn], where words would strike it. */
const markBetween = (flag: number, end: number, period: number): boolean =>
  (Math.floor(flag / period) + 1) * period < end - 1e-9

/** Half the width of a wheel's mark, and a little room [px] */
const MARK_REACH = 14

/** The cloth flies to the right of its pole, unless a wheel's mark or the end of the tape is there. */
export function placeFlag(element: HTMLElement, width: number, tape: TapeWindow, content: TapeContent): void {
  const { flag, cover, starts, teeth } = content
  const x = tapeX(tape, 0, flag ?? 0)
  const period = teeth / starts
  const nearest = period * Math.max(1, Math.ceil(((flag ?? 0) - MARK_REACH / tape.px) / period))
  const ahead = tapeX(tape, 0, nearest) - x
  const hides = cover === 'none' && ahead > -MARK_REACH && ahead < width + MARK_REACH / 2
  const leaves = x + width > tape.width
  const onMark = cover === 'none' && Math.abs(ahead) < MARK_REACH
  const left = (hides || leaves) && x > width
  element.dataset['flies'] = left ? (onMark ? 'beside' : 'left') : 'right'
  element.style.transform = `translateX(${x}px)`
}
