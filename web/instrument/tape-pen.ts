/** What the tape is drawn with: one canvas context, sizes that follow the lane, colours and fonts of the page. */
import { tokensOf } from './canvas.ts'

export interface TapeColours {
  readonly ink: string
  readonly faint: string
  readonly panel: string
  readonly lane: string
  readonly control: string
  readonly hairline: string
  readonly worm: string
  readonly left: string
  readonly right: string
  readonly num: string
  readonly text: string
}

export interface TapeSizes {
  /** Height of a lane; three of them stand below `top`, where only the cursor's wedge reaches. */
  readonly lane: number
  readonly top: number
  readonly axis: number
  readonly wheel: number
  readonly word: number
  readonly edge: number
  /** A worm turn is never wider than this. */
  readonly widest: number
}

export interface Pen {
  readonly ctx: CanvasRenderingContext2D
  readonly colours: TapeColours
  readonly sizes: TapeSizes
  readonly hatch: CanvasPattern | null
  /** Width of the prediction's flag, which is an element of the page over the canvas. */
  flagWidth: number
}

export const WEDGE_ROOM = 12

/** Letter sizes for the three heights that lanes come in: phone, page, projector. */
export function tapeSizes(lane: number): TapeSizes {
  const top = WEDGE_ROOM
  if (lane >= 80) return { lane, top, axis: 32, wheel: 42, word: 34, edge: 44, widest: 42 }
  if (lane >= 54) return { lane, top, axis: 17, wheel: 24, word: 16, edge: 28, widest: 35 }
  return { lane, top, axis: 15, wheel: 18, word: 14, edge: 18, widest: 20 }
}

export function readColours(element: Element): TapeColours {
  const token = tokensOf(element)
  return {
    ink: token('--ink'),
    faint: token('--ink-2'),
    panel: token('--panel'),
    lane: token('--panel-2'),
    control: token('--control'),
    hairline: token('--hairline'),
    worm: token('--worm'),
    left: token('--left'),
    right: token('--right'),
    num: token('--num'),
    text: token('--text'),
  }
}

/** Lines at 45 degrees over the lane's colour, for what is covered. */
export function hatchPattern(
  ctx: CanvasRenderingContext2D,
  colours: TapeColours,
  ratio: number,
): CanvasPattern | null {
  const size = 13
  const tile = document.createElement('canvas')
  tile.width = tile.height = Math.round(size * ratio)
  const pen = tile.getContext('2d')
  if (!pen) return null
  const side = tile.width
  pen.fillStyle = colours.lane
  pen.fillRect(0, 0, side, side)
  pen.strokeStyle = colours.hairline
  pen.lineWidth = 2.4 * ratio
  for (const shift of [-side, 0, side]) {
    pen.moveTo(shift - side, 2 * side)
    pen.lineTo(shift + 2 * side, -side)
  }
  pen.stroke()
  const pattern = ctx.createPattern(tile, 'repeat')
  pattern?.setTransform(new DOMMatrix().scale(1 / ratio))
  return pattern
}

/** Letters with a halo of the lane's colour, so that no line strikes them. */
export function haloText(pen: Pen, text: string, x: number, y: number, halo: string): void {
  const { ctx } = pen
  ctx.lineJoin = 'round'
  ctx.lineWidth = 6
  ctx.strokeStyle = halo
  ctx.strokeText(text, x, y)
  ctx.fillText(text, x, y)
}

export const numberFont = (pen: Pen, size: number): string => `600 ${size}px ${pen.colours.num}`
export const wordFont = (pen: Pen, size: number): string => `500 ${size}px ${pen.colours.text}`
