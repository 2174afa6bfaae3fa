/** The sheets that come of an order, one for each version of the class, or why there are none. */
import { BANK } from '../../sim/question/bank.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { questionAbout } from '../../sim/question/instance.ts'
import type { Question } from '../../sim/question/question.ts'
import { questionOf } from '../lesson/question-of.ts'
import type { Lesson } from '../store/lesson.ts'
import type { AtHand, Order, Sheet } from './order.ts'
import { type CodedFrom, MOST_SHEETS, isSeed, lessonId, printOf, writeSheetCode } from './sheet-code.ts'
import { type Wanted, filledIn, wantedIn } from './wanted.ts'

/** More questions than this are no sheet but a book. */
const MOST_QUESTIONS = 30

export type Made = { readonly sheets: readonly Sheet[] } | { readonly problem: string }

type Asked = Pick<Sheet, 'questions' | 'screen'>

/** All that versions have in common, and what each of them asks. */
interface Plan extends Pick<Sheet, 'title' | 'machine'> {
  readonly from: CodedFrom
  readonly count: number
  asked(seed: string): Asked
}

/** Every question of a lesson as it asks it, also those in its own words. */
export const questionsIn = ({ beats, seed }: Lesson): readonly Question[] =>
  beats.flatMap(({ questions }) => questions.flatMap((each) => questionOf(each, seed) ?? []))

export const linesOfLesson = (lesson: Lesson, own: boolean): readonly string[] =>
  own
    ? questionsIn(lesson).map(({ text }) => text)
    : wantedIn(lesson).map(({ family, level }) => `${family}/${level}`)

/** `about` - whose counts are not drawn */
function bySeed(wanted: readonly Wanted[], seed: string, about?: Machine): Asked {
  const filled = filledIn(wanted, seed, about && ((key) => questionAbout(about, key)))
  const items = filled.map(({ item }) => item)
  const screen = { bank: BANK, seed, items, at: 0, ...(about && { about: 'machine' as const }) }
  return { questions: filled.map(({ question }) => question), screen }
}

function lessonPlan(order: Order, { lessons, practice: machine }: AtHand): Plan | null {
  const found = lessons.find(({ lesson }) => lesson.id === order.lesson)
  if (!found) return null
  const { lesson, builtIn } = found
  const own = order.ownNumbers
  const wanted = wantedIn(lesson)
  const print = printOf(linesOfLesson(lesson, own))
  const beat = lesson.beats[0]?.id
  const place = builtIn && beat !== undefined ? { id: lesson.id, beat } : null
  return {
    title: lesson.name,
    machine,
    from:
      own || builtIn ? { kind: 'lesson', id: lessonId(lesson.id), own, print } : { kind: 'families', wanted },
    count: own ? questionsIn(lesson).length : wanted.length,
    asked: (seed) => (own ? { questions: questionsIn(lesson), screen: place } : bySeed(wanted, seed)),
  }
}

function machinePlan({ aboutMachine: wanted }: Order, { machine }: AtHand): Plan {
  const { gearing } = machine
  const { wormStarts: starts, wheelTeeth: teeth, hand } = gearing
  return {
    title: machine.name,
    machine,
    from: { kind: 'machine', starts, teeth, right: hand === 'right', wanted },
    count: wanted.length,
    asked: (seed) => bySeed(wanted, seed, machine),
  }
}

const familiesPlan = ({ families: wanted }: Order, { practice: machine }: AtHand): Plan => ({
  title: 'Predict, count, compare',
  machine,
  from: { kind: 'families', wanted },
  count: wanted.length,
  asked: (seed) => bySeed(wanted, seed),
})

const PLANS = { lesson: lessonPlan, machine: machinePlan, families: familiesPlan }

const NOTHING: Readonly<Record<Order['from'], string>> = {
  lesson: 'No lesson with questions is chosen. Choose one above.',
  families: 'No question is chosen. Choose how many of each above.',
  machine: 'No question about this machine is chosen. Choose how many of each above.',
}

/** With the lesson's own numbers there is but one version, whatever the seed. */
export const isFixed = ({ from, ownNumbers }: Order): boolean => from === 'lesson' && ownNumbers

/** Stands in a code where no number is drawn. */
const NO_SEED = 'none'

function versionsOf(order: Order): readonly { readonly version: number; readonly seed: string }[] {
  if (isFixed(order)) return [{ version: 0, seed: '' }]
  if (order.versions === 1) return [{ version: 0, seed: order.seed }]
  return Array.from({ length: order.versions }, (_, i) => ({
    version: i + 1,
    seed: `${order.seed}/${i + 1}`,
  }))
}

function problemOf(order: Order, plan: Plan | null): string | null {
  if (!plan || plan.count === 0) return NOTHING[order.from]
  if (plan.count > MOST_QUESTIONS)
    return `${plan.count} questions are chosen; a sheet holds up to ${MOST_QUESTIONS}.`
  if (isFixed(order)) return null
  if (!isSeed(order.seed)) return 'A seed is a word of up to 15 letters from a to z, digits and hyphens.'
  if (!(Number.isInteger(order.versions) && order.versions >= 1 && order.versions <= MOST_SHEETS))
    return `Versions are a whole number from 1 to ${MOST_SHEETS}.`
  return null
}

export function sheetsOf(order: Order, at: AtHand): Made {
  const plan = PLANS[order.from](order, at)
  const problem = problemOf(order, plan)
  if (problem !== null || !plan) return { problem: problem ?? NOTHING[order.from] }
  const { title, machine, from } = plan
  const word = isFixed(order) ? NO_SEED : order.seed
  const sheets = versionsOf(order).map(({ version, seed }): Sheet => {
    const code = writeSheetCode({ bank: BANK, seed: word, version, from })
    return { title, machine, seed, version, code, ...plan.asked(seed) }
  })
  if (sheets[0]!.questions.length === 0)
    return { problem: 'The chosen questions do not fit the counts of this machine.' }
  return { sheets }
}
