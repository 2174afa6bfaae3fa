/** What the presenter knows of a question: the answer, and what others say with where it comes from. */
import type { Ask, Question } from '../../sim/question/question.ts'
import { valueText } from '../../sim/question/value-text.ts'
import { spokenAnswer } from '../lesson/lesson-words.ts'

export interface Expected {
  /** Null where there is nothing to be right about. */
  readonly answer: string | null
  /** In their order, where the answer is one */
  readonly order: readonly string[]
  readonly working: string
  readonly slips: readonly ExpectedSlip[]
}

export interface ExpectedSlip {
  /** '' where it is not one answer. */
  readonly said: string
  readonly sentence: string
}

/** Digits of a wrong answer: enough to know it by. */
const SLIP_DIGITS = 3

const wordsOf = (options: readonly { readonly id: string; readonly text: string }[], id: string): string =>
  options.find((each) => each.id === id)?.text ?? id

function allSlips(ask: Ask): readonly ExpectedSlip[] {
  if (ask.kind === 'number')
    return ask.slips.map(({ value, sentence }) => ({
      said: valueText(value, ask.unit, SLIP_DIGITS),
      sentence,
    }))
  if (ask.kind === 'choice')
    return ask.slips.map(({ option, sentence }) => ({ said: wordsOf(ask.options, option), sentence }))
  return ask.kind === 'order' ? ask.slips.map(({ sentence }) => ({ said: '', sentence })) : []
}

/** The first cause of each answer; one that is as short as the right one cannot be told from it. */
function slipsOf(ask: Ask, answer: string | null): readonly ExpectedSlip[] {
  const known = new Set<string>()
  return allSlips(ask).filter(({ said, sentence }) => {
    const name = said === '' ? sentence : said
    if (known.has(name) || said === answer) return false
    known.add(name)
    return true
  })
}

export function expectedOf(question: Question): Expected {
  const { ask, working } = question
  const answer = ask.kind === 'words' ? null : spokenAnswer(question)
  const order = ask.kind === 'order' ? ask.answer.map((id) => wordsOf(ask.cards, id)) : []
  return { answer, order, working, slips: slipsOf(ask, answer) }
}
