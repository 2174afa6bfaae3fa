/** Draws frames while they are asked for, and measures what one costs. */

export interface PictureCost {
  readonly triangles: number
  readonly drawCalls: number
  /** Geometries that the graphics card holds */
  readonly geometries: number
}

export interface Ticker {
  /** Asks for a frame. */
  readonly wake: () => void
  /** Draws exactly one frame now, `elapsed` seconds after the last one. */
  draw(elapsed: number): void
  /** What the last picture was made of. */
  cost(): PictureCost
  stop(): void
}

/**
 * `draw` makes one picture and says whether another must follow; `waits` says that a frame which was asked for is not
 * worth drawing, because something is under way that will ask again. The first frame after a rest counts the time
 * since it was asked for, so that a move is not one slow picture late.
 */
export function createTicker(
  draw: (elapsed: number) => boolean,
  waits: () => boolean,
  cost: () => PictureCost,
): Ticker {
  let handle = 0
  let last = 0
  let resting = true
  const step = (now: number) => {
    handle = 0
    const elapsed = Math.max(0, (now - last) / 1000)
    last = now
    if (!waits() && draw(elapsed)) wake()
    else if (handle === 0) resting = true
  }
  const wake = () => {
    if (handle !== 0) return
    if (resting) last = performance.now()
    resting = false
    handle = requestAnimationFrame(step)
  }
  return {
    wake,
    draw,
    cost,
    stop: () => cancelAnimationFrame(handle),
  }
}

const tickers = new Set<Ticker>()

export function enlist(ticker: Ticker): () => void {
  tickers.add(ticker)
  return () => void tickers.delete(ticker)
}

/** Asks every mounted stage for a frame. */
export function requestFrame(): void {
  for (const ticker of tickers) ticker.wake()
}

/** Draws exactly one frame on every mounted stage, `elapsed` seconds after the last one; for tests and pictures. */
export function drawNow(elapsed = 0): void {
  for (const ticker of tickers) ticker.draw(elapsed)
}

/** Of all mounted stages together. */
export function pictureCost(): PictureCost {
  const costs = [...tickers].map((ticker) => ticker.cost())
  return {
    triangles: costs.reduce((sum, { triangles }) => sum + triangles, 0),
    drawCalls: costs.reduce((sum, { drawCalls }) => sum + drawCalls, 0),
    geometries: costs.reduce((sum, { geometries }) => sum + geometries, 0),
  }
}
