/** What both drawings of the commutator are drawn with. */
import { fitCanvas, tokensOf } from '../instrument/canvas.ts'

export interface CommutatorColours {
  readonly ink: string
  readonly faint: string
  readonly panel: string
  readonly lane: string
  readonly flow: string
  readonly control: string
  readonly words: string
  readonly sign: string
}

export interface Pen {
  readonly ctx: CanvasRenderingContext2D
  readonly colours: CommutatorColours
  readonly width: number
  readonly height: number
}

/** Fits the canvas to its place on the page; null while it has none. */
export function penOn(canvas: HTMLCanvasElement): Pen | null {
  const fitted = fitCanvas(canvas)
  if (!fitted) return null
  const { ctx, width, height } = fitted
  return { ctx, colours: coloursOf(canvas), width, height }
}

function coloursOf(element: Element): CommutatorColours {
  const token = tokensOf(element)
  return {
    ink: token('--ink'),
    faint: token('--ink-2'),
    panel: token('--panel'),
    lane: token('--panel-2'),
    flow: token('--flow'),
    control: token('--control'),
    words: `600 14px ${token('--text')}`,
    sign: `600 18px ${token('--num')}`,
  }
}

/** A filled head with its tip towards `direction` [rad], as the canvas counts angles. */
export function arrowHead(
  ctx: CanvasRenderingContext2D,
  x: number,
  y: number,
  direction: number,
  size: number,
): void {
  const cos = Math.cos(direction) * size
  const sin = Math.sin(direction) * size
  ctx.beginPath()
  ctx.moveTo(x + cos, y + sin)
  ctx.lineTo(x - 0.7 * cos - 0.85 * sin, y - 0.7 * sin + 0.85 * cos)
  ctx.lineTo(x - 0.7 * cos + 0.85 * sin, y - 0.7 * sin - 0.85 * cos)
  ctx.closePath()
  ctx.fill()
}
