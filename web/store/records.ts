/** Answers that were committed in this browser. They stay in it: nothing is sent. */
import { createStore } from 'zustand/vanilla'
import type { AnswerUnit, Given, Level } from '../../sim/question/family.ts'
import type { Sureness } from '../../sim/question/marking.ts'
import type { Question } from '../../sim/question/question.ts'

/** What asked the question: spaced practice, the machine on the stage, a set that others have too, a lesson. */
export type Asker = 'practice' | 'machine' | 'set' | 'lesson'

export interface Answered {
  /** Random, so that the same answer is taken in once. */
  readonly id: string
  /** When it was compared, ISO 8601, UTC */
  readonly time: string
  readonly asker: Asker
  /** One for each run of a lesson, a set, a practice */
  readonly run: string
  /** id of the lesson, '' outside one */
  readonly lesson: string
  readonly bank: number
  readonly seed: string
  /** '' for a question of a lesson's own */
  readonly family: string
  readonly index: number
  readonly level: Level
  readonly given: Given
  readonly text: string
  readonly kind: 'number' | 'choice' | 'order' | 'words'
  readonly unit: AnswerUnit | ''
  /** As typed, or the words of the options that were chosen */
  readonly raw: string
  /** The number in the base unit, ids of options joined by a space, the words; null without a prediction */
  readonly value: number | string | null
  /** The right answer in the same form, and how far off a number may be */
  readonly answer: number | string
  readonly allowed: number
  /** Null without a prediction, and where there is nothing to be right about */
  readonly right: boolean | null
  readonly cause: string
  readonly sureness: Sureness | null
  readonly ownCount: string
  /** From the question to the commitment [s] */
  readonly seconds: number
  /** Why it was chosen, '' in a fixed set */
  readonly why: string
}

/** A topic of a lesson that somebody went through alone, or the lesson whole. */
export interface Passage {
  readonly id: string
  /** ISO 8601, UTC */
  readonly time: string
  readonly run: string
  readonly lesson: string
  /** id of the topic; '' where it is the lesson */
  readonly beat: string
  readonly title: string
}

export interface Records {
  /** Oldest first */
  readonly answered: readonly Answered[]
  readonly passed: readonly Passage[]
  /** Whether what this browser kept has been read back. */
  readonly readBack: boolean
  /** Why they are not kept beyond this page; '' while they are. */
  readonly notKept: string
  /** What could not be read back, in a sentence; '' where all could be. */
  readonly damaged: string
  /** When the question that is asked now was committed [ms since 1970] */
  readonly committedAt: number
  /** For the learner's own print; never exported. */
  readonly nickname: string
  /** Whether marks for how sure one was are told. */
  readonly marksOn: boolean
  /** Names whose records they are in an xAPI file. */
  readonly homePage: string
  /** The random name of these records there; '' until it is needed. */
  readonly account: string
}

const noRecords: Records = {
  answered: [],
  passed: [],
  readBack: false,
  notKept: '',
  damaged: '',
  committedAt: 0,
  nickname: '',
  marksOn: false,
  homePage: '',
  account: '',
}

export function createRecords() {
  const store = createStore<Records>(() => noRecords)
  const runs = new WeakMap<Question, string>()
  return {
    store,
    /** Whether this question has not been answered in this run; from then on it has. */
    isNew: (question: Question, run: string): boolean => {
      const first = runs.get(question) !== run
      runs.set(question, run)
      return first
    },
    add: (answered: Answered): void => store.setState((last) => ({ answered: [...last.answered, answered] })),
    eraseAll: (): void =>
      store.setState(({ readBack, notKept, committedAt }) => ({
        ...noRecords,
        readBack,
        notKept,
        committedAt,
      })),
  }
}

export type RecordStore = ReturnType<typeof createRecords>
