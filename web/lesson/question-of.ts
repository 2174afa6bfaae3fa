/** The question that a beat asks, as it is asked anywhere else. */
import { BANK, familyNamed } from '../../sim/question/bank.ts'
import { questionFor, questionWith } from '../../sim/question/instance.ts'
import type { Ask, Question } from '../../sim/question/question.ts'
import type { BeatQuestion, Lesson } from '../store/lesson.ts'

/** Cause of a slip that a lesson words for itself */
const OWN = 'own'

const optionId = (place: number): string => String.fromCodePoint(97 + place)

type OwnQuestion = Exclude<BeatQuestion, { readonly family: string }>

function ownAsk(own: OwnQuestion): Ask {
  if ('answer' in own) {
    const { unit, tolerance, answer } = own
    return { kind: 'number', unit, tolerance, answer, slips: own.slips.map((s) => ({ cause: OWN, ...s })) }
  }
  if (!('options' in own)) return { kind: 'words' }
  const slips = own.options.flatMap(({ sentence }, place) =>
    place === own.right || sentence === '' ? [] : { cause: OWN, sentence, option: optionId(place) },
  )
  const options = own.options.map(({ text }, place) => ({ id: optionId(place), text }))
  return { kind: 'choice', options, answer: optionId(own.right), slips }
}

const ownQuestion = (own: OwnQuestion): Question => ({
  text: own.text,
  ask: ownAsk(own),
  working: 'working' in own ? own.working : '',
  reasons: [],
  watch: null,
  gearing: null,
  trial: null,
  family: null,
  title: '',
  given: null,
  key: null,
})

/** Null where the bank has no such family; a lesson that was read without problems has none of those. */
export function questionOf(question: BeatQuestion, seed: string): Question | null {
  if (!('family' in question)) return ownQuestion(question)
  if ('index' in question) return questionFor({ bank: BANK, seed, ...question })
  const family = familyNamed(question.family)
  return family ? questionWith(family, question.given) : null
}

export function questionAt(lesson: Lesson, beat: number, place: number): Question | null {
  const question = lesson.beats[beat]?.questions[place]
  return question ? questionOf(question, lesson.seed) : null
}
