/** The tape's canvas: keeps its size, colours and fonts right and draws only when something has changed. */
import { TICKS_PER_TURN, type WormTurns, noTurns } from '../../sim/drive/turns.ts'
import type { Frame } from '../frame/frame.ts'
import {
  type TapeWindow,
  coveredTape,
  dashStep,
  followTurns,
  openTape,
  tapeX,
  toothX,
} from './tape-layout.ts'
import { drawCursor, drawNumbers, drawPasses, drawTeeth, drawWheelMarks } from './tape-marks.ts'
import { FLAG_WIDTH, drawMiss, drawPole, drawTaps, drawWheelTurn } from './tape-notes.ts'
import { type Pen, WEDGE_ROOM, hatchPattern, readColours, tapeSizes } from './tape-pen.ts'

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
  const { starts, teeth, cover, flag, taps } = content
  const open = cover === 'none'
  drawGround(pen, tape.width, cover)
  if (open) drawTeeth(pen, tape, turns, starts, teeth)
  if (cover !== 'all') drawCursor(pen, tape.cursor)
  drawPasses(pen, tape, turns, speed, cover !== 'all')
  if (flag !== null) drawPole(pen, tape, flag)
  drawNumbers(pen, tape, turns, speed, cover !== 'all')
  if (!open) return
  drawWheelMarks(pen, tape, turns, starts, teeth)
  if (flag === null) drawWheelTurn(pen, tape, turns, starts, teeth)
  else drawMiss(pen, tape, flag, starts, teeth)
  drawTaps(pen, tape, taps, Math.floor(teeth / starts))
}

/** Half the width of a wheel's mark, and a little room [px] */
const MARK_REACH = 14

/** The cloth flies to the right of its pole, unless a wheel's mark or the end of the tape is there. */
function placeFlag(
  element: HTMLElement,
  tape: TapeWindow,
  { flag, cover, starts, teeth }: TapeContent,
): void {
  const x = tapeX(tape, 0, flag ?? 0)
  const ahead = toothX(tape, teeth, starts) - x
  const hides = cover === 'none' && ahead > -4 && ahead < FLAG_WIDTH + 8
  const leaves = x + FLAG_WIDTH > tape.width
  const onMark = cover === 'none' && Math.abs(ahead) < MARK_REACH
  const left = (hides || leaves) && x > FLAG_WIDTH
  element.dataset['flies'] = left ? (onMark ? 'beside' : 'left') : 'right'
  element.style.transform = `translateX(${x}px)`
}

export interface TapeSurface {
  /** The window as it was last drawn, for a pointer that drags along it. */
  readonly tape: () => TapeWindow
  readonly detach: () => void
}

const AT_ZERO = noTurns()

/** Draws `content` on the canvas at every change of frame, size, theme or fonts, until detached. */
export function attachTape(
  canvas: HTMLCanvasElement,
  frame: Frame,
  content: TapeContent,
  flag: HTMLElement | null,
): TapeSurface {
  const ctx = canvas.getContext('2d')!
  let pen: Pen | null = null
  let tape = coveredTape({ width: 320, edge: 16, widest: 20 }, null)
  const drawn = { turns: 0, part: 0, motion: frame.motion, step: dashStep(1, 0) }
  const turns = content.cover === 'none' ? frame.state.turns : AT_ZERO

  const paint = (): void => {
    const quarterPixels = Math.floor((4 * tape.px * turns.ticks) / TICKS_PER_TURN)
    const part = frame.motion === 'running' ? quarterPixels : turns.ticks
    const step = dashStep(tape.px, frame.drawnSpeed)
    const moved = turns.turns !== drawn.turns || part !== drawn.part
    if (!pen || !(moved || frame.motion !== drawn.motion || step !== drawn.step)) return
    drawn.turns = turns.turns
    drawn.part = part
    drawn.motion = frame.motion
    drawn.step = step
    redraw(pen)
  }
  const redraw = (now: Pen): void => {
    followTurns(tape, turns)
    drawTape(now, tape, turns, content, content.cover === 'none' ? frame.drawnSpeed : 0)
    if (flag) placeFlag(flag, tape, content)
  }
  const refresh = (): void => {
    const { clientWidth: width, clientHeight: height } = canvas
    if (width === 0 || height === 0) return
    const ratio = Math.min(3, devicePixelRatio)
    canvas.width = Math.round(width * ratio)
    canvas.height = Math.round(height * ratio)
    ctx.setTransform(ratio, 0, 0, ratio, 0, 0)
    const sizes = tapeSizes((height - WEDGE_ROOM) / 3)
    const colours = readColours(canvas)
    pen = { ctx, colours, sizes, hatch: hatchPattern(ctx, colours, ratio) }
    const room = { width, edge: sizes.edge, widest: sizes.widest }
    const { flag: place, cover, starts, teeth } = content
    tape = cover === 'none' ? openTape(room, teeth / starts, place) : coveredTape(room, place)
    redraw(pen)
  }

  const sizes = new ResizeObserver(refresh)
  sizes.observe(canvas)
  const theme = new MutationObserver(refresh)
  theme.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] })
  document.fonts.addEventListener('loadingdone', refresh)
  frame.painters.add(paint)
  refresh()
  return {
    tape: () => tape,
    detach: () => {
      sizes.disconnect()
      theme.disconnect()
      document.fonts.removeEventListener('loadingdone', refresh)
      frame.painters.delete(paint)
    },
  }
}
