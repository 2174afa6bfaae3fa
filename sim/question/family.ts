/**
 * A family of questions as data and pure functions: what may be given, what is asked, the answer, and the wrong
 * answers that known slips lead to. One family with parameters filled in is a question (see instance.ts).
 */

export type Level = 1 | 2 | 3

/** Parameters by name. Numbers are in the unit that the wording says; words choose. */
export type Given = Readonly<Record<string, number | string>>

/** Base units of answers: what a number without a unit is taken to be in; '1' is a plain count or factor. */
export type AnswerUnit =
  | 'turn'
  | 'deg'
  | '1'
  | 'r/min'
  | 'A'
  | 'N m'
  | 'W'
  | 'N'
  | 'V'
  | 'degC'
  | '%'
  | 'd'
  | 's'
  | 'mm'

/** exact: 1e-9 of the answer; r: that many per cent of it; a: that much in its unit. */
export type Tolerance = 'exact' | 'r0.5' | 'r1' | 'r2' | 'a0.5' | 'a1'

export interface Parameter<G extends Given> {
  readonly name: string
  /** All it may be at a level; `given` holds what was drawn before it. Part of the bank: a change is a new version. */
  values(level: Level, given: G): readonly (number | string)[]
}

/** What the stage takes on so that the question is about the machine that is seen. */
export interface StageGearing {
  readonly wormStarts?: number
  readonly wheelTeeth?: number
  readonly hand?: 'right' | 'left'
  /** Sense of the worm about the axis that points to the viewer: 1 is anticlockwise seen from the front. */
  readonly sense?: 1 | -1
}

/** Where to look when the explanation plays. */
export type Sight =
  | 'marks'
  | 'teeth'
  | 'underside'
  | 'motor'
  | 'readings'
  | 'waves'
  | 'torque'
  | 'power'
  | 'heat'
  | 'brushes'
  | 'forces'
  | 'timing'
  | 'supply chain'

export interface Watch {
  readonly sight: Sight
  /** What to see there: one sentence, an instruction. */
  readonly words: string
  /** Worm turns that the stage makes when the explanation plays; 0 stands still, null runs by the drive. */
  readonly turns: number | null
}

/** A counted turn by which a learner tries the answer on the stage before it is told. */
export interface Trial {
  /** Worm turns to the end, as a fraction, so that the end is exact. */
  readonly top: number
  readonly bottom: number
  /** Whose marks or teeth are counted; 'senses' is looked at, not counted. */
  readonly counted: 'worm' | 'left' | 'teeth' | 'senses'
  /** What to do, without the answer: "Count the worm's mark until the left wheel's mark is back." */
  readonly words: string
}

export interface Option {
  readonly id: string
  readonly text: string
}

/** Written as a method so that a family of its own parameters is one of the bank's. */
interface Worded<G extends Given> {
  words(given: G): string
}

interface Shared<G extends Given> {
  readonly name: string
  /** For lists and progress: "Worm turns for wheel turns" */
  readonly title: string
  readonly parameters: readonly Parameter<G>[]
  /** Whether these parameters together may be asked. */
  accepts?(given: G, level: Level): boolean
  /** Asked where 64 draws were refused. */
  readonly example: G
  /** Wordings, at least two, each with every number and unit that is needed. */
  readonly texts: readonly Worded<G>['words'][]
  /** The way to the answer in one line, for the comparison and the answer sheet. */
  working(given: G): string
  /** Why it is so, in a sentence; and two reasons that sound like it and are not. */
  reasons(given: G): readonly [right: string, wrong: string, alsoWrong: string]
  watch(given: G): Watch
  gearing?(given: G): StageGearing
  trial?(given: G): Trial | null
}

export interface NumberSlip<G extends Given> {
  readonly cause: string
  /** A question is drawn again when this one falls on the answer or on another that must stay apart. */
  readonly apart?: true
  /** Null where it does not apply to these parameters. */
  value(given: G): number | null
}

export interface NumberFamily<G extends Given = Given> extends Shared<G> {
  readonly kind: 'number'
  unit(given: G): AnswerUnit
  readonly tolerance: Tolerance
  /** No figures tell the answer exactly, as with a root or with pi: it may be asked first however long it is. */
  readonly irrational?: true
  answer(given: G): number
  readonly slips: readonly NumberSlip<G>[]
}

export interface ChoiceFamily<G extends Given = Given> extends Shared<G> {
  readonly kind: 'choice'
  options(given: G): readonly Option[]
  /** id of the right option */
  answer(given: G): string
  readonly slips: readonly { readonly cause: string; option(given: G): string | null }[]
}

export interface OrderFamily<G extends Given = Given> extends Shared<G> {
  readonly kind: 'order'
  /** In the order in which they are laid out. */
  cards(given: G): readonly Option[]
  /** ids in the right order */
  answer(given: G): readonly string[]
  readonly slips: readonly { readonly cause: string; fits(given: G, order: readonly string[]): boolean }[]
}

export type Family = NumberFamily | ChoiceFamily | OrderFamily
