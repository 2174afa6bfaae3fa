/** Where the questions in Predict come from, and the one that waits there while something else is on the stage. */
import { createStore } from 'zustand/vanilla'
import type { WormTurns } from '../../sim/drive/turns.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Exercise, QuestionSet } from './exercise.ts'

/** The machine on the bench, spaced practice, or a set that others have too. */
export type Source = 'machine' | 'practice' | 'set'

/** A question that was left, to be found as it was. */
export interface LeftQuestion {
  readonly exercise: Exercise
  readonly moment: WormTurns
  /** What the person had on the bench */
  readonly machine: Machine
  /** See Records */
  readonly committedAt: number
}

export interface Predict {
  readonly source: Source
  /** Which of the questions about the machine on the bench */
  readonly own: number
  readonly set: QuestionSet | null
  /** Why this question was chosen, in a sentence; '' in a fixed order */
  readonly why: string
  /** When it was asked [ms since 1970] */
  readonly began: number
  /** One for each run of practice or of a set */
  readonly run: string
  readonly left: LeftQuestion | null
}

export const firstPredict: Predict = {
  source: 'machine',
  own: 0,
  set: null,
  why: '',
  began: 0,
  run: '',
  left: null,
}

export const createPredict = () => createStore<Predict>(() => firstPredict)

/** A lesson and a topic of it, as a link names them. */
export interface LessonPlace {
  readonly id: string
  /** id of the beat */
  readonly beat: string
}
