/** What the frame last said, copied ten times a second for the panels that React renders. */
import { createStore } from 'zustand/vanilla'
import type { Reading } from '../../sim/drive/reading.ts'

/**
 * still   - nothing turns
 * running - the drive turns it, or it coasts
 * hand    - a hand turn is on its way to its angle
 * dragged - a finger holds the worm or the fan
 */
export type Motion = 'still' | 'running' | 'hand' | 'dragged'

export interface Readout {
  readonly motion: Motion
  readonly reading: Reading

  /** A "count turns" run is under way and will stop by itself. */
  readonly stopping: boolean
}

export const createReadout = (reading: Reading) =>
  createStore<Readout>(() => ({ motion: 'still', reading, stopping: false }))
