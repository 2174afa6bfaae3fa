/** A canvas on the page: as sharp as the screen, in the colours of the page, drawn anew when these change. */

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

/** Draws a canvas again when its size, the theme or the fonts change, or for paper; returns what ends it. */
export function repaintOn(canvas: HTMLCanvasElement, again: () => void): () => void {
  const sizes = new ResizeObserver(again)
  sizes.observe(canvas)
  const theme = new MutationObserver(again)
  theme.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] })
  document.fonts.addEventListener('loadingdone', again)
  const paper = matchMedia('print')
  paper.addEventListener('change', again)
  return () => {
    sizes.disconnect()
    theme.disconnect()
    document.fonts.removeEventListener('loadingdone', again)
    paper.removeEventListener('change', again)
  }
}

export interface SeenPainter {
  /** Called in every frame */
  readonly painter: () => void
  /** Fits and draws anew */
  readonly again: () => void
  /** Draws as it stands */
  readonly draw: () => void
  readonly seen: (isSeen: boolean) => void
}

/** Keeps a canvas right while the frame moves, and draws it when it comes in sight; returns what ends it. */
export function followOn(
  canvas: HTMLCanvasElement,
  canvases: Set<() => void>,
  content: SeenPainter,
): () => void {
  const { painter, again, draw, seen } = content
  const sight = new IntersectionObserver(([entry]) => {
    const isSeen = entry?.isIntersecting ?? true
    seen(isSeen)
    if (isSeen) draw()
  })
  sight.observe(canvas)
  const end = repaintOn(canvas, again)
  canvases.add(painter)
  again()
  return () => {
    end()
    sight.disconnect()
    canvases.delete(painter)
  }
}
