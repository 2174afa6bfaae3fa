/** The question that was answered, made again from what was recorded of it. */
import { familyNamed } from '../../sim/question/bank.ts'
import type { Family, Given } from '../../sim/question/family.ts'
import { questionFor, questionWith } from '../../sim/question/instance.ts'
import type { Question } from '../../sim/question/question.ts'
import type { Answered } from '../store/records.ts'

/** Whether these are parameters of the family, by name and kind; a record may come from anywhere. */
const fits = ({ example }: Family, given: Given): boolean =>
  Object.keys(given).length === Object.keys(example).length &&
  Object.entries(example).every(([name, value]) => typeof given[name] === typeof value)

/** Null for a question of a lesson's own, and where the bank of this program does not have it as it was asked. */
export function recordedQuestion({
  bank,
  seed,
  family,
  index,
  level,
  given,
  text,
}: Answered): Question | null {
  const known = familyNamed(family)
  if (!known) return null
  const question =
    seed === ''
      ? fits(known, given) && questionWith(known, given)
      : questionFor({ bank, seed, family, index, level })
  return question && question.text === text ? question : null
}
