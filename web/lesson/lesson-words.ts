/** What the page says about a lesson: where it is, what a press does, what an answer is. */
import type { Tolerance } from '../../sim/question/family.ts'
import type { Question } from '../../sim/question/question.ts'
import { valueText } from '../../sim/question/value-text.ts'
import { answerText } from '../question/answer-words.ts'
import type { Lesson, LessonState, LessonStep } from '../store/lesson.ts'
import type { Coming } from './progress.ts'

export const STEP_NAMES: Readonly<Record<LessonStep, string>> = {
  show: 'Show',
  ask: 'Ask',
  count: 'Count',
  reveal: 'Reveal',
}

/** 'Topic 5 of 14: One turn of the wheel. Ask.' */
export function placeWords({ lesson, beat, question, step }: LessonState): string {
  const now = lesson?.beats[beat]
  if (!lesson || !now) return ''
  const several = now.questions.length > 1 ? `, question ${question + 1} of ${now.questions.length}` : ''
  const asked = step === 'show' ? '' : ` ${STEP_NAMES[step]}${several}.`
  const ended = /[.?]$/.test(now.title) ? '' : '.'
  return `Topic ${beat + 1} of ${lesson.beats.length}: ${now.title}${ended}${asked}`
}

const COMING_WORDS: Readonly<Record<Exclude<Coming['kind'], 'question'>, string>> = {
  count: 'Count',
  reveal: 'Reveal',
  light: 'Next place',
  topic: 'Next topic',
  end: 'Last topic',
}

/** What the button says that goes on. */
export const comingWords = (coming: Coming): string =>
  coming.kind === 'question' ? `Question ${coming.question + 1}` : COMING_WORDS[coming.kind]

/** Digits that are worth reading out from the back row */
const DIGITS: Readonly<Record<Tolerance, number>> = { exact: 5, 'r0.5': 5, r1: 3, r2: 3, 'a0.5': 3, a1: 3 }

/** The right answer as it is read out in a room, no finer than it is marked; null where there is none. */
export const spokenAnswer = (question: Question): string | null =>
  question.ask.kind === 'number'
    ? valueText(question.ask.answer, question.ask.unit, DIGITS[question.ask.tolerance])
    : answerText(question)

const minutesOf = (beats: Lesson['beats']): number => beats.reduce((sum, { minutes }) => sum + minutes, 0)

/** '14 topics, 50 minutes; 45 without the extra ones' */
export function lengthWords({ beats }: Lesson): string {
  const needed = beats.filter(({ extra }) => !extra)
  const topics = `${beats.length} ${beats.length === 1 ? 'topic' : 'topics'}, ${minutesOf(beats)} minutes`
  return needed.length === beats.length ? topics : `${topics}; ${minutesOf(needed)} without the extra ones`
}
