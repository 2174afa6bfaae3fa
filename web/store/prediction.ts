/**
 * One prediction, from the first guess to the comparison. Until it is committed the counts are covered and the
 * machine is held still; what was committed cannot be changed. Changes are pure: a prediction in, a prediction out,
 * the same one where the phase does not allow the change.
 */
import { createStore } from 'zustand/vanilla'

/** predict: nothing committed; count: committed, the machine may turn; compare: the mark came back, all is shown. */
export type PredictionPhase = 'predict' | 'count' | 'compare'
export type Sureness = 1 | 2 | 3

/** The counts that the question is about */
export interface Pair {
  readonly starts: number
  readonly teeth: number
}

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
  /** The learner asked to see the counts before the mark was back. */
  readonly shown: boolean
  /** What the machine had when the prediction was committed. */
  readonly pair: Pair | null
}

export const noPrediction: Prediction = {
  phase: 'predict',
  text: '',
  turns: null,
  direction: null,
  sureness: null,
  taps: [],
  shown: false,
  pair: null,
}

export const createPrediction = () => createStore<Prediction>(() => noPrediction)

const whilePredicting = (last: Prediction, change: Partial<Prediction>): Prediction =>
  last.phase === 'predict' ? { ...last, ...change } : last

export const withGuess = (last: Prediction, text: string, turns: number | null): Prediction =>
  whilePredicting(last, { text, turns })

export const withDirection = (last: Prediction, direction: 'same' | 'opposite'): Prediction =>
  whilePredicting(last, { direction })

export const withSureness = (last: Prediction, sureness: Sureness): Prediction =>
  whilePredicting(last, { sureness })

/** Only a number can be committed; direction and sureness may stay open, which is told as "no prediction". */
export const committed = (last: Prediction, pair: Pair): Prediction =>
  last.turns === null ? last : whilePredicting(last, { phase: 'count', pair })

const whileCounting = (last: Prediction, change: Partial<Prediction>): Prediction =>
  last.phase === 'count' ? { ...last, ...change } : last

export const withTap = (last: Prediction, place: number): Prediction =>
  whileCounting(last, { taps: [...last.taps, place] })

export const withoutLastTap = (last: Prediction): Prediction =>
  whileCounting(last, { taps: last.taps.slice(0, -1) })

export const withCountShown = (last: Prediction): Prediction => whileCounting(last, { shown: true })

export const compared = (last: Prediction): Prediction => whileCounting(last, { phase: 'compare' })
