/** Answers as sentences and fields name them. */
import type { AnswerUnit } from '../../sim/question/family.ts'
import type { Ask, Question, Reply } from '../../sim/question/question.ts'
import { valueText } from '../../sim/question/value-text.ts'

/** Units as they stand beside the box of a number */
export const UNIT_WORDS: Readonly<Record<AnswerUnit, string>> = {
  turn: 'turns',
  deg: 'degrees',
  '1': '',
  'r/min': 'r/min',
  A: 'A',
  'N m': 'N m',
  W: 'W',
  N: 'N',
  V: 'V',
  degC: '°C',
  '%': '%',
  d: 'days',
  s: 's',
  mm: 'mm',
}

const MISSING: Readonly<Record<Ask['kind'], string>> = {
  number: 'Write a number first.',
  choice: 'Choose one of them first.',
  order: 'Put the cards in order first.',
  words: 'Write a sentence first.',
}

/** What is said where an answer is to be committed that is not there yet. */
export const missingAnswer = ({ ask }: Question): string => MISSING[ask.kind]

const textOf = (id: string, of: readonly { readonly id: string; readonly text: string }[]): string =>
  of.find((each) => each.id === id)?.text ?? id

const inOrder = (ids: readonly string[], ask: Ask): string =>
  ask.kind === 'order' ? ids.map((id, i) => `${i + 1} ${textOf(id, ask.cards)}`).join('; ') : ''

/** "13.333 turns", the words of an option, the cards with their places. */
export function replyText({ ask }: Question, reply: Reply): string {
  if (reply.kind === 'number') return ask.kind === 'number' ? valueText(reply.value, ask.unit) : ''
  if (reply.kind === 'choice') return ask.kind === 'choice' ? textOf(reply.option, ask.options) : ''
  return reply.kind === 'order' ? inOrder(reply.order, ask) : reply.text
}

/** What would have been right; null where nothing would. */
export function rightReply({ ask }: Question): Reply | null {
  if (ask.kind === 'number') return { kind: 'number', value: ask.answer }
  if (ask.kind === 'choice') return { kind: 'choice', option: ask.answer }
  return ask.kind === 'order' ? { kind: 'order', order: ask.answer } : null
}

/** The right answer in words; null where there is none. */
export function answerText(question: Question): string | null {
  const right = rightReply(question)
  return right && replyText(question, right)
}
