/** What somebody asks for, and the sheets that come of it, one for each version of the class. */
import { BANK } from '../../sim/question/bank.ts'
import type { Level } from '../../sim/question/family.ts'
import type { Question } from '../../sim/question/question.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { SetItem } from '../store/exercise.ts'
import type { Lesson } from '../store/lesson.ts'
import { questionsAbout } from './about-machine.ts'
import { type CodedFrom, MOST_SHEETS, isSeed, lessonId, wantedPrint, writeSheetCode } from './sheet-code.ts'
import { type Wanted, filledIn, wantedIn } from './wanted.ts'

export type Source = 'lesson' | 'families' | 'machine'
export type Paper = 'a4' | 'letter'

export interface Order {
  readonly from: Source
  /** id of a lesson at hand */
  readonly lesson: string
  readonly families: readonly Wanted[]
  readonly aboutMachine: readonly Wanted[]
  readonly level: Level
  readonly seed: string
  readonly versions: number
  readonly paper: Paper
  readonly answers: boolean
  readonly bench: boolean
}

/** More questions than this are no sheet but a book. */
export const MOST_QUESTIONS = 24

export const firstOrder: Order = {
  from: 'families',
  lesson: '',
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
  /** With the number of the version */
  readonly seed: string
  /** 0 where there is but one */
  readonly version: number
  readonly code: string
  readonly questions: readonly Question[]
  /** By their places in the bank; null where they are about a machine of one's own. */
  readonly items: readonly SetItem[] | null
  /** That the questions are about; those with counts of their own change them. */
  readonly machine: Machine
}

export type Made = { readonly sheets: readonly Sheet[] } | { readonly problem: string }

export const tidySeed = (text: string): string => text.trim().toLowerCase()

const SEED_WORDS = 'A seed is a word of up to 15 letters from a to z, digits and hyphens.'

function sourceOf(order: Order, at: AtHand): { title: string; wanted: readonly Wanted[]; from: CodedFrom } {
  const found = order.from === 'lesson' ? at.lessons.find(({ lesson }) => lesson.id === order.lesson) : null
  if (found) {
    const wanted = wantedIn(found.lesson)
    const id = { kind: 'lesson', id: lessonId(found.lesson.id), wanted: wantedPrint(wanted) } as const
    return {
      title: found.lesson.name,
      wanted,
      from: found.builtIn ? id : { kind: 'families', wanted },
    }
  }
  if (order.from === 'machine') {
    const { wormStarts: starts, wheelTeeth: teeth, hand } = at.machine.gearing
    const wanted = order.aboutMachine
    const from = { kind: 'machine', starts, teeth, right: hand === 'right', wanted } as const
    return { title: at.machine.name, wanted, from }
  }
  const wanted = order.from === 'families' ? order.families : []
  return { title: 'Predict, count, compare', wanted, from: { kind: 'families', wanted } }
}

const NOTHING: Readonly<Record<Source, string>> = {
  lesson: 'No lesson with questions is chosen. Choose one above.',
  families: 'No question is chosen. Choose how many of each above.',
  machine: 'No question about this machine is chosen. Choose how many of each above.',
}

/** Why there are no sheets, or the sheets. */
export function sheetsOf(order: Order, at: AtHand): Made {
  const { title, wanted, from } = sourceOf(order, at)
  if (wanted.length === 0) return { problem: NOTHING[order.from] }
  if (wanted.length > MOST_QUESTIONS)
    return { problem: `${wanted.length} questions are chosen; a sheet holds up to ${MOST_QUESTIONS}.` }
  if (!isSeed(order.seed)) return { problem: SEED_WORDS }
  if (!(Number.isInteger(order.versions) && order.versions >= 1 && order.versions <= MOST_SHEETS))
    return { problem: `Versions are a whole number from 1 to ${MOST_SHEETS}.` }
  const numbers =
    order.versions === 1 ? [0] : Array.from({ length: order.versions }, (_, version) => version + 1)
  const sheets = numbers.map((version) => {
    const seed = version === 0 ? order.seed : `${order.seed}/${version}`
    const code = writeSheetCode({ bank: BANK, seed: order.seed, version, from })
    const about = order.from === 'machine'
    const filled = about ? [] : filledIn(wanted, seed)
    return {
      title,
      seed,
      version,
      code,
      questions: about
        ? questionsAbout(at.machine.gearing, wanted, seed)
        : filled.map(({ question }) => question),
      items: about ? null : filled.map(({ item }) => item),
      machine: about ? at.machine : at.practice,
    }
  })
  if (sheets[0]!.questions.length === 0)
    return { problem: 'The chosen questions do not fit the counts of this machine.' }
  return { sheets }
}
