/** What the answers say about each family of questions, and which to look at again first. */
import { FAMILIES } from '../../sim/question/bank.ts'
import { confidenceMark } from '../../sim/question/marking.ts'
import { SETTLED_AFTER } from '../../sim/question/next-family.ts'
import type { Answered } from '../store/records.ts'
import { recordedQuestion } from './recorded-question.ts'

const MOST_SHOWN = 6

export type Standing = 'settled' | 'open' | 'not met yet'
export type Verdict = 'right' | 'not yet' | 'no prediction'

export interface FamilyProgress {
  readonly family: string
  readonly title: string
  readonly standing: Standing
  /** Of the last answers, oldest first */
  readonly last: readonly Verdict[]
}

export const verdictOf = ({ right }: Answered): Verdict =>
  right === null ? 'no prediction' : right ? 'right' : 'not yet'

function standingOf(verdicts: readonly Verdict[]): Standing {
  if (verdicts.length === 0) return 'not met yet'
  const inRow = verdicts.slice(-SETTLED_AFTER)
  return inRow.length === SETTLED_AFTER && inRow.every((each) => each === 'right') ? 'settled' : 'open'
}

/** Every family of the bank, in the order of learning. */
export function progressOf(answered: readonly Answered[]): readonly FamilyProgress[] {
  const verdicts = new Map<string, Verdict[]>()
  for (const each of answered) {
    const own = verdicts.get(each.family)
    if (own) own.push(verdictOf(each))
    else verdicts.set(each.family, [verdictOf(each)])
  }
  return FAMILIES.map(({ name, title }) => {
    const own = verdicts.get(name) ?? []
    return { family: name, title, standing: standingOf(own), last: own.slice(-MOST_SHOWN) }
  })
}

/** Wrong answers cost by how sure one was: the costliest first, those without a level last. */
const cost = ({ sureness }: Answered): number => (sureness === null ? 1 : confidenceMark(false, sureness))

/** The last answer of each family where that was not right: sure and wrong first, then the newest. */
export function lookAgain(answered: readonly Answered[]): readonly Answered[] {
  const last = new Map<string, Answered>()
  for (const each of answered) if (each.family !== '' && each.right !== null) last.set(each.family, each)
  return [...last.values()]
    .filter(({ right, family }) => right === false && FAMILIES.some(({ name }) => name === family))
    .toSorted((a, b) => cost(a) - cost(b) || (a.time < b.time ? 1 : -1))
}

/** The sentence of the known slip that led to an answer; '' where none did, or none is known any more. */
export function causeOf(answered: Answered): string {
  const ask = answered.cause === '' ? undefined : recordedQuestion(answered)?.ask
  if (!ask || ask.kind === 'words') return ''
  return ask.slips.find(({ cause }) => cause === answered.cause)?.sentence ?? ''
}
