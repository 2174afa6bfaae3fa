/**
 * Exact moments for browser tests and benches: model time is set and a frame asked for, never waited for. The page
 * itself does not use it.
 */
import { TICKS_PER_TURN } from '../sim/drive/turns.ts'
import type { Machine } from '../sim/machine/machine.ts'
import { advanceModel, hold, placeAt } from './frame/frame.ts'
import type { Workshop } from './frame/workshop.ts'
import type { View } from './store/view.ts'
import { type PictureCost, drawNow, pictureCost } from './scene/ticker.ts'

export function exposeExact({ document, frame, view, copyReading }: Workshop): void {
  const ready = new Promise<void>((settle) => {
    const look = () => {
      const { pictureReady, plan } = view.getState()
      if (pictureReady || plan !== 'no') settle()
    }
    view.subscribe(look)
    look()
  })
  window.counterturn = {
    advance(modelSeconds) {
      advanceModel(frame, modelSeconds)
      copyReading()
    },
    placeAt(turns, degrees) {
      hold(frame)
      placeAt(frame, turns, Math.round((degrees * TICKS_PER_TURN) / 360), 0)
      copyReading()
    },
    edit: (change) => document.edit(change),
    look: (changes) => view.setState(changes),
    draw: () => drawNow(),
    renderInfo: pictureCost,
    ready,
  }
}

declare global {
  interface Window {
    counterturn: {
      /** Moves the model on by this many seconds of its own time, or ends a hand turn, and updates every reading. */
      advance(modelSeconds: number): void
      /** Puts the worm at whole turns and degrees. */
      placeAt(turns: number, degrees: number): void
      /** Changes the machine as the controls do. */
      edit(change: (machine: Machine) => Machine): void
      /** Changes what is on screen as the buttons do. */
      look(changes: Partial<View>): void
      /** Draws exactly one frame. */
      draw(): void
      /** Of the last picture. */
      renderInfo(): PictureCost
      /** Settles when the first picture, or the drawn view in its place, is up. */
      readonly ready: Promise<void>
    }
  }
}
