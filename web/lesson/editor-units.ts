/** Units and tolerances as the editor offers them. */
import type { AnswerUnit, Tolerance } from '../../sim/question/family.ts'
import { UNIT_WORDS } from '../question/answer-words.ts'

const UNITS: Readonly<Record<AnswerUnit, string>> = { ...UNIT_WORDS, '1': 'no unit' }

const TOLERANCES: Readonly<Record<Tolerance, string>> = {
  exact: 'exactly',
  'r0.5': 'within 0.5 %, counts exactly',
  r1: 'within 1 %',
  r2: 'within 2 %',
  'a0.5': 'within 0.5 of its unit',
  a1: 'within 1 of its unit',
}

const options = <T extends string>(words: Readonly<Record<T, string>>) =>
  (Object.keys(words) as T[]).map((value) => ({ value, text: words[value] }))

export const UNIT_OPTIONS = options(UNITS)
export const TOLERANCE_OPTIONS = options(TOLERANCES)
