/** A lesson as data, as its file holds it, and where somebody is in it. */
import { createStore } from 'zustand/vanilla'
import type { AnswerUnit, Given, Level, Tolerance } from '../../sim/question/family.ts'
import type { Exercise } from './exercise.ts'
import type { GearSigns, PanelName, PowerStop } from './view.ts'

export const LESSON_VERSION = 1

/** What a beat puts on the stage. */
export interface BeatStage {
  /** id of a demo machine */
  readonly machine: string
  /** What differs from that machine's plain state, by path: 'machine.gearing.wormStarts', 'bench.setting', 'picture.caseState' */
  readonly set: Readonly<Record<string, unknown>>
  readonly panel: PanelName | 'none'
  readonly signs: readonly (keyof GearSigns)[]
  /** Where the light on the power's way stands */
  readonly lit: PowerStop | null
  /** "Next" walks the light on before it leaves the beat. */
  readonly walk: boolean
  readonly motion: 'still' | 'running'
}

/** Of a family with parameters of its own, of a family by the lesson's seed, or in the lesson's own words. */
export type AskedQuestion =
  | { readonly family: string; readonly given: Given }
  | { readonly family: string; readonly index: number; readonly level: Level }
  | {
      readonly text: string
      readonly unit: AnswerUnit
      readonly answer: number
      readonly tolerance: Tolerance
      readonly working: string
      readonly slips: readonly { readonly value: number; readonly sentence: string }[]
    }
  | {
      readonly text: string
      readonly options: readonly { readonly text: string; readonly sentence: string }[]
      /** Place of the right option */
      readonly right: number
      readonly working: string
    }
  | { readonly text: string }

/** A question may be asked on a stage of its own; without one it is asked on that of its topic. */
export type BeatQuestion = AskedQuestion & { readonly stage?: BeatStage }

/** One topic of a lesson. */
export interface Beat {
  readonly id: string
  readonly title: string
  /** One sentence for the stage */
  readonly words: string
  /** A few quantities with their values, for a card on the stage */
  readonly facts: readonly { readonly name: string; readonly value: string }[]
  /** For the presenter alone */
  readonly notes: readonly string[]
  readonly minutes: number
  /** Can be left out where time is short */
  readonly extra: boolean
  /** The card of cautions stands on the stage. */
  readonly safety: boolean
  readonly stage: BeatStage
  readonly questions: readonly BeatQuestion[]
}

export interface Lesson {
  readonly counterturnLesson: typeof LESSON_VERSION
  /** Of a lesson that comes with the program; what links name. */
  readonly id: string
  readonly name: string
  readonly summary: string
  readonly seed: string
  readonly beats: readonly Beat[]
}

/** show: nothing is asked; ask: covered and held still; count: still covered, the machine may turn; reveal: all is shown. */
export type LessonStep = 'show' | 'ask' | 'count' | 'reveal'

export interface LessonState {
  readonly lesson: Lesson | null
  /** Whether it comes with the program, so that a link can name it. */
  readonly builtIn: boolean
  /** Led in front of a room, where answers are spoken; or alone, where they are typed and committed. */
  readonly mode: 'lead' | 'alone'
  readonly beat: number
  /** Which question of the beat */
  readonly question: number
  readonly step: LessonStep
  /** Beats that have been on the stage, by id */
  readonly seen: readonly string[]
  /** Questions as they were left, by id of the beat and place: 'turns/0'. What was committed or revealed stays so. */
  readonly exercises: Readonly<Record<string, Exercise>>
  /** Random, one for each run through the lesson */
  readonly run: string
  /** When the question was asked [ms since 1970] */
  readonly began: number
  /** The stage is covered on purpose, in Large. */
  readonly blank: boolean
}

export const noLesson: LessonState = {
  lesson: null,
  builtIn: false,
  mode: 'lead',
  beat: 0,
  question: 0,
  step: 'show',
  seen: [],
  exercises: {},
  run: '',
  began: 0,
  blank: false,
}

export const createLesson = () => createStore<LessonState>(() => noLesson)
