/** A canvas on the page: as sharp as the screen, in the colours of the page. */

export interface FittedCanvas {
  readonly ctx: CanvasRenderingContext2D
  /** [px] of the page, in which is drawn */
  readonly width: number
  readonly height: number
  /** Pixels of the canvas to one of the page */
  readonly ratio: number
}

/** More than that cannot be told apart. */
const MOST_RATIO = 3

/** Fits the canvas to its place on the page; null while it has none. */
export function fitCanvas(canvas: HTMLCanvasElement): FittedCanvas | null {
  const { clientWidth: width, clientHeight: height } = canvas
  const ctx = canvas.getContext('2d')
  if (width === 0 || height === 0 || !ctx) return null
  const ratio = Math.min(MOST_RATIO, devicePixelRatio)
  canvas.width = Math.round(width * ratio)
  canvas.height = Math.round(height * ratio)
  ctx.setTransform(ratio, 0, 0, ratio, 0, 0)
  return { ctx, width, height, ratio }
}

/** What the page's style sheet says for a token such as '--ink'. */
export function tokensOf(element: Element): (name: string) => string {
  const style = getComputedStyle(element)
  return (name) => style.getPropertyValue(name).trim()
}
