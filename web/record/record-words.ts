/** Answers and standings in words. */
import { familyNamed } from '../../sim/question/bank.ts'
import type { AnswerUnit } from '../../sim/question/family.ts'
import { valueText } from '../../sim/question/value-text.ts'
import type { Answered } from '../store/records.ts'
import type { LevelCalibration } from './calibration.ts'
import { recordedQuestion } from './recorded-question.ts'

const numberWords = (value: number, unit: AnswerUnit | ''): string => valueText(value, unit || '1')

/** What was answered, as it was read */
export const saidWords = ({ value, unit, raw }: Answered): string =>
  typeof value === 'number' ? numberWords(value, unit) : `“${raw}”`

/** The right answer; '' where its words are not known any more. */
export function answerWords(answered: Answered): string {
  const { answer, unit } = answered
  if (typeof answer === 'number') return numberWords(answer, unit)
  const ask = recordedQuestion(answered)?.ask
  const all = ask?.kind === 'choice' ? ask.options : ask?.kind === 'order' ? ask.cards : []
  const texts = answer.split(' ').map((id) => all.find((each) => each.id === id)?.text)
  return texts.every((text) => text !== undefined) ? `“${texts.join(' → ')}”` : ''
}

/** The title of its family, or what a question of a lesson’s own is */
export const familyTitle = ({ family }: Answered): string =>
  familyNamed(family)?.title ?? 'A question of a lesson'

const percent = (share: number): string => `${Math.round(100 * share)}\u00a0%`

/** '3 of 4, 75 %', broken at the comma alone */
export const shareWords = ({ right, count, share }: LevelCalibration): string =>
  share === null ? 'no answer' : `${right}\u00a0of\u00a0${count}, ${percent(share)}`

/** Where a level pays best: 'below 67 %' */
export function paysWords({ paysFrom, paysTo }: LevelCalibration): string {
  if (paysFrom === 0) return `below ${percent(paysTo)}`
  return paysTo === 1 ? `above ${percent(paysFrom)}` : `${Math.round(100 * paysFrom)} to ${percent(paysTo)}`
}
