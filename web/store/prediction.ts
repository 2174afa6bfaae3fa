/**
 * One prediction, from the first guess to the comparison. Until it is committed the counts are covered and the
 * machine is held still; what was committed cannot be changed.
 */
import { createStore } from 'zustand/vanilla'

/** predict: nothing committed; count: committed, the machine may turn; compare: the mark came back, all is shown. */
export type PredictionPhase = 'predict' | 'count' | 'compare'
export type Sureness = 1 | 2 | 3

export interface Prediction {
  readonly phase: PredictionPhase
  /** Worm turns until the left wheel's mark is back at its pointer, as typed; '' is nothing yet. */
  readonly text: string
  /** The same as a number, once it reads as one. */
  readonly turns: number | null
  readonly direction: 'same' | 'opposite' | null
  readonly sureness: Sureness | null
  /** Worm places [turn] at which the learner said "Mark passed". */
  readonly taps: readonly number[]
}

export const noPrediction: Prediction = {
  phase: 'predict',
  text: '',
  turns: null,
  direction: null,
  sureness: null,
  taps: [],
}

export const createPrediction = () => createStore<Prediction>(() => noPrediction)
