/** The close-up's canvas: keeps size, colours and fonts right, and draws only when it is seen and has moved. */
import type { Frame } from '../frame/frame-state.ts'
import { type CloseUp, PIXELS_A_MM } from './close-up.ts'
import { type CloseUpPen, closeUpPen, drawCloseUp, readCloseUpColours } from './close-up-picture.ts'
import { followOn } from '../instrument/canvas.ts'
import { type Touching, followFrame } from './touching.ts'

export interface CloseUpContent {
  readonly picture: CloseUp
  readonly touching: Touching
  /** How many times its width the gap is drawn */
  readonly times: number
  /** Told whenever another number of lines touches. */
  readonly onLines: (lines: number) => void
  /** Told how many times life size it is drawn. */
  readonly onSize: (times: number) => void
}

/** Draws at every change of frame, size, theme or fonts; returns what ends it. */
export function attachCloseUp(canvas: HTMLCanvasElement, frame: Frame, content: CloseUpContent): () => void {
  const { picture, touching, times, onLines, onSize } = content
  let pen: CloseUpPen | null = null
  let seen = true
  let lines = -1
  let drawnWheel = Number.NaN
  let drawnPlay = Number.NaN
  const draw = () => {
    drawnWheel = touching.place.wheel
    drawnPlay = touching.place.play
    if (pen) drawCloseUp(pen, picture, touching.place, touching.carrying, times)
  }
  const painter = () => {
    followFrame(touching, frame)
    if (touching.lines !== lines) {
      lines = touching.lines
      onLines(lines)
    }
    const { wheel, play } = touching.place
    if (seen && (wheel !== drawnWheel || play !== drawnPlay)) draw()
  }
  const again = () => {
    pen = closeUpPen(
      canvas,
      touching.side === 'right' ? 1 : -1,
      picture.axialPitch,
      readCloseUpColours(canvas),
    )
    if (pen) onSize(Math.round(pen.scale / PIXELS_A_MM))
    painter()
    draw()
  }
  return followOn(canvas, frame.canvases, {
    painter,
    again,
    draw,
    seen: (isSeen) => {
      seen = isSeen
    },
  })
}
