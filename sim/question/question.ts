/** A question as it is asked: from a family by its key, with parameters of one's own, or written into a lesson. */
import type { AnswerUnit, Given, Level, Option, StageGearing, Tolerance, Trial, Watch } from './family.ts'

/** Numbers, wording and order of a question follow from this alone. */
export interface QuestionKey {
  readonly bank: number
  readonly seed: string
  readonly family: string
  readonly index: number
  readonly level: Level
}

export interface AskNumber {
  readonly kind: 'number'
  readonly unit: AnswerUnit
  readonly tolerance: Tolerance
  readonly answer: number
  readonly slips: readonly { readonly cause: string; readonly sentence: string; readonly value: number }[]
}

export interface AskChoice {
  readonly kind: 'choice'
  readonly options: readonly Option[]
  readonly answer: string
  readonly slips: readonly { readonly cause: string; readonly sentence: string; readonly option: string }[]
}

export interface AskOrder {
  readonly kind: 'order'
  readonly cards: readonly Option[]
  readonly answer: readonly string[]
  readonly slips: readonly {
    readonly cause: string
    readonly sentence: string
    fits(order: readonly string[]): boolean
  }[]
}

/** Nothing to be right or wrong about: a reason is asked for. */
export interface AskWords {
  readonly kind: 'words'
}

export type Ask = AskNumber | AskChoice | AskOrder | AskWords

export interface Question {
  readonly text: string
  readonly ask: Ask
  readonly working: string
  /** In the order in which they are offered; empty where none are. */
  readonly reasons: readonly { readonly text: string; readonly right: boolean }[]
  readonly watch: Watch | null
  readonly gearing: StageGearing | null
  readonly trial: Trial | null
  /** Null for a question of a lesson's own. */
  readonly family: string | null
  readonly title: string
  readonly given: Given | null
  readonly key: QuestionKey | null
}

/** What somebody answered. */
export type Reply =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'choice'; readonly option: string }
  | { readonly kind: 'order'; readonly order: readonly string[] }
  | { readonly kind: 'words'; readonly text: string }
