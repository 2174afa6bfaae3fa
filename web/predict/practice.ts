/** Practice of one's own: which question comes next, by what was right before, with new numbers each time. */
import { BANK, FAMILIES } from '../../sim/question/bank.ts'
import type { Level } from '../../sim/question/family.ts'
import { questionFor } from '../../sim/question/instance.ts'
import { nextFamily } from '../../sim/question/next-family.ts'
import type { Question } from '../../sim/question/question.ts'
import { type Keeper, keep, kept } from '../file/storage.ts'
import { randomId } from '../record/random-id.ts'
import type { Answered } from '../store/records.ts'

/** A question, and why it was chosen. */
export interface Chosen {
  readonly question: Question
  readonly why: string
}

const SEED_KEY = 'counterturn.practice'
const SEED = /^[0-9a-f]{8}$/

/** Drawn once for this browser, so that its questions are its own and come again as they were. */
export function practiceSeed(keeper: Keeper | null): string {
  const last = kept(keeper, SEED_KEY)
  if (last !== null && SEED.test(last)) return last
  const seed = randomId().slice(0, 8)
  keep(keeper, SEED_KEY, seed)
  return seed
}

/** Whoever asked: what was right in a set or a lesson is known, and what was missed there is due. */
const metOf = (answered: readonly Answered[]): readonly Answered[] =>
  answered.filter(({ family, bank }) => family !== '' && bank === BANK)

/** The next instance of a family that was not practised yet. */
export function instanceOf(
  family: string,
  level: Level,
  seed: string,
  answered: readonly Answered[],
): Question | null {
  const index = metOf(answered).filter((each) => each.asker === 'practice' && each.family === family).length
  return questionFor({ bank: BANK, seed, family, index, level })
}

/** A family that was skipped has not been shown to be known. Null when every family is settled. */
export function nextPractised(seed: string, answered: readonly Answered[]): Chosen | null {
  const met = metOf(answered).map(({ family, right, sureness }) => ({
    family,
    right: right === true,
    sureness,
  }))
  const order = FAMILIES.map(({ name }) => name)
  const next = nextFamily(order, met)
  const question = next && instanceOf(next.family, next.level, seed, answered)
  return question && { question, why: next.why }
}
