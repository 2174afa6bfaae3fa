/**
 * One question on its way, from the first word of an answer to the comparison. Until it is committed the counts are
 * covered and the machine is held still; what was committed cannot be changed. Changes are pure: an exercise in, an
 * exercise out, the same one where the phase does not allow the change.
 */
import { createStore } from 'zustand/vanilla'
import type { Level } from '../../sim/question/family.ts'
import type { Sureness } from '../../sim/question/marking.ts'
import type { Question, Reply } from '../../sim/question/question.ts'

/** predict: nothing committed; count: committed, the machine may turn; compare: all is shown. */
export type Phase = 'predict' | 'count' | 'compare'

export interface Exercise {
  readonly question: Question | null
  readonly phase: Phase
  /** The answer as typed; '' is nothing yet. */
  readonly text: string
  /** The same once it reads as an answer. */
  readonly reply: Reply | null
  readonly sureness: Sureness | null
  /** Went on to the count without a prediction. */
  readonly skipped: boolean
  /** Worm places [turn] at which the learner said "Mark passed". */
  readonly taps: readonly number[]
  /** Own count as typed, in the question's unit. */
  readonly ownCount: string
  /** Place of the reason that was picked */
  readonly reason: number | null
  /** A sentence of the learner's own; it stays in this browser. */
  readonly note: string
}

export const noExercise: Exercise = {
  question: null,
  phase: 'predict',
  text: '',
  reply: null,
  sureness: null,
  skipped: false,
  taps: [],
  ownCount: '',
  reason: null,
  note: '',
}

export const createExercise = () => createStore<Exercise>(() => noExercise)

export const asked = (question: Question): Exercise => ({ ...noExercise, question })

const during = (phase: Phase, last: Exercise, change: Partial<Exercise>): Exercise =>
  last.phase === phase && last.question ? { ...last, ...change } : last

export const withAnswer = (last: Exercise, text: string, reply: Reply | null): Exercise =>
  during('predict', last, { text, reply })

export const withSureness = (last: Exercise, sureness: Sureness): Exercise =>
  during('predict', last, { sureness })

/** Only an answer that reads can be committed; how sure may stay open. */
export const committed = (last: Exercise): Exercise =>
  last.reply === null ? last : during('predict', last, { phase: 'count' })

export const skipped = (last: Exercise): Exercise =>
  during('predict', last, { phase: 'count', skipped: true, text: '', reply: null, sureness: null })

export const withTap = (last: Exercise, place: number): Exercise =>
  during('count', last, { taps: [...last.taps, place] })

export const withoutLastTap = (last: Exercise): Exercise =>
  during('count', last, { taps: last.taps.slice(0, -1) })

export const withOwnCount = (last: Exercise, ownCount: string): Exercise =>
  during('count', last, { ownCount })

export const compared = (last: Exercise): Exercise => during('count', last, { phase: 'compare' })

export const withReason = (last: Exercise, reason: number): Exercise => during('compare', last, { reason })

export const withNote = (last: Exercise, note: string): Exercise => during('compare', last, { note })

/** A question of a set, by its place in the bank. */
export interface SetItem {
  readonly family: string
  readonly index: number
  readonly level: Level
}

/** The same questions for everybody who has the seed: of a class, a sheet, a link. */
export interface QuestionSet {
  readonly bank: number
  readonly seed: string
  readonly items: readonly SetItem[]
  /** Which of them stands on the sheet */
  readonly at: number
  /** With the counts of the machine on the bench, where it says so */
  readonly about?: 'machine'
}
