/** The tape's canvas: keeps its size, colours and fonts right and draws only when something has changed. */
import { TICKS_PER_TURN, type WormTurns, noTurns } from '../../sim/drive/turns.ts'
import type { Frame } from '../frame/frame-state.ts'
import { type TapeWindow, coveredTape, dashStep, followTurns, openTape } from './tape-layout.ts'
import { type Pen, WEDGE_ROOM, hatchPattern, readColours, tapeSizes } from './tape-pen.ts'
import { type TapeContent, drawTape, placeFlag } from './tape-picture.ts'
import { fitCanvas, repaintOn } from './canvas.ts'

export interface TapeSurface {
  readonly canvas: HTMLCanvasElement
  flag: HTMLElement | null
  content: TapeContent
  /** The worm's place, or zero for ever under a cover */
  turns: WormTurns
  /** Of the canvas as it was measured last [px] */
  width: number
  pen: Pen | null
  tape: TapeWindow
  /** What was drawn last: whole turns, place in the turn, motion, every which dash */
  readonly drawn: { turns: number; part: number; motion: Frame['motion']; step: 1 | 5 }
}

function redraw({ pen, tape, turns, content, flag }: TapeSurface, speed: number): void {
  if (!pen) return
  followTurns(tape, turns)
  drawTape(pen, tape, turns, content, content.cover === 'none' ? speed : 0)
  if (flag) placeFlag(flag, pen.flagWidth, tape, content)
}

/** While it runs, a move of less than a quarter of a pixel is not drawn; when it stops, all is drawn. */
function paint(surface: TapeSurface, frame: Frame): void {
  const { turns, tape, drawn } = surface
  const quarterPixels = Math.floor((4 * tape.px * turns.ticks) / TICKS_PER_TURN)
  const part = frame.motion === 'running' ? quarterPixels : turns.ticks
  const step = dashStep(tape.px, frame.drawnSpeed)
  const moved = turns.turns !== drawn.turns || part !== drawn.part
  if (!moved && frame.motion === drawn.motion && step === drawn.step) return
  drawn.turns = turns.turns
  drawn.part = part
  drawn.motion = frame.motion
  drawn.step = step
  redraw(surface, frame.drawnSpeed)
}

/** Lays the tape out for its content. Nothing is measured here but a flag, so an edit costs no layout of the page. */
function layOut(surface: TapeSurface, frame: Frame): void {
  const { pen, flag, width } = surface
  if (!pen) return
  pen.flagWidth = flag?.offsetWidth ?? 0
  const room = { width, edge: pen.sizes.edge, widest: pen.sizes.widest }
  const { flag: place, cover, starts, teeth, trial } = surface.content
  const span = Math.max(teeth / starts, trial?.end ?? 0)
  surface.tape = cover === 'none' ? openTape(room, span, place) : coveredTape(room, place)
  redraw(surface, frame.drawnSpeed)
}

/** Measures the canvas, and reads its colours and fonts. */
function refresh(surface: TapeSurface, frame: Frame): void {
  const { canvas } = surface
  const fitted = fitCanvas(canvas)
  if (!fitted) return
  const { ctx, width, height, ratio } = fitted
  const sizes = tapeSizes((height - WEDGE_ROOM) / 3)
  const colours = readColours(canvas)
  surface.width = width
  surface.pen = { ctx, colours, sizes, hatch: hatchPattern(ctx, colours, ratio), flagWidth: 0 }
  layOut(surface, frame)
}

const BLANK: TapeContent = { starts: 1, teeth: 1, cover: 'all', flag: null, taps: [], trial: null }

export const createSurface = (canvas: HTMLCanvasElement, frame: Frame): TapeSurface => ({
  canvas,
  flag: null,
  content: BLANK,
  turns: noTurns(),
  width: 0,
  pen: null,
  tape: coveredTape({ width: 320, edge: 16, widest: 20 }, null),
  drawn: { turns: 0, part: 0, motion: frame.motion, step: 1 },
})

export function showContent(
  surface: TapeSurface,
  frame: Frame,
  content: TapeContent,
  flag: HTMLElement | null,
): void {
  surface.content = content
  surface.flag = flag
  surface.turns = content.cover === 'none' ? frame.state.turns : noTurns()
  layOut(surface, frame)
}

/** Draws at every change of frame, size, theme or fonts, and for paper; returns what ends it. */
export function attachSurface(surface: TapeSurface, frame: Frame): () => void {
  const again = () => refresh(surface, frame)
  const painter = () => paint(surface, frame)
  const end = repaintOn(surface.canvas, again)
  frame.canvases.add(painter)
  again()
  return () => {
    end()
    frame.canvases.delete(painter)
  }
}
