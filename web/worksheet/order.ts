/** What somebody asks for, and what a sheet is. */
import type { Level } from '../../sim/question/family.ts'
import type { Question } from '../../sim/question/question.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { QuestionSet } from '../store/exercise.ts'
import type { Lesson } from '../store/lesson.ts'
import type { LessonPlace } from '../store/predict.ts'
import type { Wanted } from './wanted.ts'

export type Source = 'lesson' | 'families' | 'machine'
export type Paper = 'a4' | 'letter'

export interface Order {
  readonly from: Source
  /** id of a lesson at hand */
  readonly lesson: string
  /** The lesson's questions with its own numbers, else with others by the seed */
  readonly ownNumbers: boolean
  readonly families: readonly Wanted[]
  readonly aboutMachine: readonly Wanted[]
  readonly level: Level
  readonly seed: string
  readonly versions: number
  readonly paper: Paper
  readonly answers: boolean
  readonly bench: boolean
}

export const firstOrder: Order = {
  from: 'families',
  lesson: '',
  ownNumbers: true,
  families: [
    { family: 'turns-worm', level: 1 },
    { family: 'turns-wheel', level: 1 },
    { family: 'pair-sense', level: 1 },
    { family: 'torque-each', level: 1 },
  ],
  aboutMachine: [
    { family: 'turns-worm', level: 1 },
    { family: 'turns-wheel', level: 1 },
    { family: 'teeth-passed', level: 1 },
  ],
  level: 1,
  seed: 'first',
  versions: 1,
  paper: 'a4',
  answers: false,
  bench: true,
}

/** What stands outside of the order: the machine on the bench, the one that practice stands on, lessons by their id. */
export interface AtHand {
  readonly machine: Machine
  readonly practice: Machine
  readonly lessons: readonly { readonly lesson: Lesson; readonly builtIn: boolean }[]
}

/** One version. */
export interface Sheet {
  readonly title: string
  /** With the number of the version; '' where no number is drawn */
  readonly seed: string
  /** 0 where there is but one */
  readonly version: number
  readonly code: string
  readonly questions: readonly Question[]
  /** What a link can bring to the screen; null for a lesson in somebody's own file. */
  readonly screen: QuestionSet | LessonPlace | null
  /** That the questions are about; those with counts of their own change them. */
  readonly machine: Machine
}

export const tidySeed = (text: string): string => text.trim().toLowerCase()
