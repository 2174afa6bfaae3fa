/**
 * Exact moments for browser tests and benches: model time is set and a frame asked for, never waited for. The page
 * itself does not use it.
 */
import { onPictureReady } from '../store/view.ts'
import { advanceModel, placeAt, paint, hold } from './frame.ts'
import type { Workshop } from './workshop.ts'

export interface Exact {
  /** Moves the model on by this many seconds of its own time, then updates every reading. */
  advance(modelSeconds: number): void
  /** Puts the worm at whole turns and a part of a turn in ticks. */
  placeAt(turns: number, ticks: number): void
  /** Draws exactly one frame. */
  draw(): void
  /** Triangles and draw calls of the last picture. */
  renderInfo(): { triangles: number; drawCalls: number }
  /** Settles when the first picture, or the drawn view in its place, is up. */
  readonly ready: Promise<void>
}

declare global {
  interface Window {
    counterturn: Exact
  }
}
