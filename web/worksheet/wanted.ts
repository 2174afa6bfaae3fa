/** Which questions stand on a sheet: families in order, to be filled in by a seed. */
import { BANK, FAMILIES, familyNamed } from '../../sim/question/bank.ts'
import type { Level } from '../../sim/question/family.ts'
import { questionFor } from '../../sim/question/instance.ts'
import type { Question, QuestionKey } from '../../sim/question/question.ts'
import type { SetItem } from '../store/exercise.ts'
import type { BeatQuestion, Lesson } from '../store/lesson.ts'

/** One question of a family, with numbers to come. */
export interface Wanted {
  readonly family: string
  readonly level: Level
}

/** How often a family is drawn again where it asks what stands on the sheet already. */
const MOST_AGAIN = 16

export const countOf = (all: readonly Wanted[], family: string): number =>
  all.filter((each) => each.family === family).length

const placeOf = (name: string): number => FAMILIES.findIndex((family) => family.name === name)

/** So many of a family, where it stood, or where it comes in the bank. */
export function withCount(all: readonly Wanted[], wanted: Wanted, count: number): readonly Wanted[] {
  const others = all.filter(({ family }) => family !== wanted.family)
  const stood = all.findIndex(({ family }) => family === wanted.family)
  const after = others.findIndex(({ family }) => placeOf(family) > placeOf(wanted.family))
  const at = stood >= 0 ? stood : after >= 0 ? after : others.length
  return [...others.slice(0, at), ...Array.from({ length: count }, () => wanted), ...others.slice(at)]
}

/** Two starts or more are no first question. */
function levelOf(question: BeatQuestion): Level {
  if ('index' in question) return question.level
  return 'given' in question && Number(question.given['z1'] ?? 1) > 1 ? 2 : 1
}

/** The questions of a lesson that the bank can fill in with numbers; those in its own words stay in the lesson. */
export const wantedIn = (lesson: Lesson): readonly Wanted[] =>
  lesson.beats.flatMap(({ questions }) =>
    questions.flatMap((question) =>
      'family' in question && familyNamed(question.family)
        ? { family: question.family, level: levelOf(question) }
        : [],
    ),
  )

export const inOwnWords = (lesson: Lesson): number =>
  lesson.beats.reduce((sum, { questions }) => sum + questions.length, 0) - wantedIn(lesson).length

export interface Filled {
  readonly item: SetItem
  readonly question: Question
}

/** What is asked, whatever the wording. */
const sense = ({ family, given }: Question): string => `${family} ${JSON.stringify(given)}`

/** A question of the bank by its key, or none. */
type AskedBy = (key: QuestionKey) => Question | null

/** With their numbers. None asks the same twice as long as the family has something else to ask. */
export function filledIn(
  all: readonly Wanted[],
  seed: string,
  askedBy: AskedBy = questionFor,
): readonly Filled[] {
  const next = new Map<string, number>()
  const asked = new Set<string>()
  return all.flatMap(({ family, level }) => {
    const first = next.get(family) ?? 0
    const ask = (at: number) => askedBy({ bank: BANK, seed, family, index: at, level })
    let index = first
    let question = ask(index)
    while (question && asked.has(sense(question)) && index - first < MOST_AGAIN) question = ask(++index)
    if (!question) return []
    next.set(family, index + 1)
    asked.add(sense(question))
    return { item: { family, index, level }, question }
  })
}
