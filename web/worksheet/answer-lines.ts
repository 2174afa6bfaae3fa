/** A question on the answer page: what is right, how it comes about, and what other answers come from. */
import { isClose, toleranceOf } from '../../sim/question/marking.ts'
import type { AskChoice, AskNumber, AskOrder, Question } from '../../sim/question/question.ts'
import { numberText, valueText } from '../../sim/question/value-text.ts'

export interface AnswerLines {
  readonly text: string
  readonly answer: string
  readonly working: string
  /** What leads to other answers: the answer, and why */
  readonly slips: readonly { readonly value: string; readonly sentence: string }[]
}

/** How far off an answer still counts, in words; '' where it has to be met. */
export function toleranceText({ tolerance, answer, unit }: AskNumber): string {
  const allowed = toleranceOf(tolerance, answer)
  if (isClose(answer, answer * (1 + 1e-6) + 1e-6, allowed, 1)) {
    return allowed.absolute > 0
      ? `give or take ${valueText(allowed.absolute, unit)}`
      : `give or take ${numberText(100 * allowed.relative)} %`
  }
  return ''
}

function numberLines(ask: AskNumber): Pick<AnswerLines, 'answer' | 'slips'> {
  const tolerance = toleranceText(ask)
  const answer = valueText(ask.answer, ask.unit)
  return {
    answer: tolerance === '' ? answer : `${answer}, ${tolerance}`,
    slips: ask.slips.map(({ value, sentence }) => ({ value: valueText(value, ask.unit), sentence })),
  }
}

/** Without the full stop of an option that is a sentence: more follows it here. */
const sentence = (text: string): string => text.replace(/\.$/, '')

function choiceLines({ options, answer, slips }: AskChoice): Pick<AnswerLines, 'answer' | 'slips'> {
  const textOf = (id: string) => sentence(options.find((option) => option.id === id)?.text ?? id)
  return {
    answer: textOf(answer),
    slips: slips.map(({ option, sentence }) => ({ value: textOf(option), sentence })),
  }
}

function orderLines({ cards, answer, slips }: AskOrder): Pick<AnswerLines, 'answer' | 'slips'> {
  const textOf = (id: string) => cards.find((card) => card.id === id)?.text ?? id
  return {
    answer: answer.map((id, i) => `${i + 1} ${textOf(id)}`).join(', '),
    slips: slips.map(({ sentence }) => ({ value: 'Another order', sentence })),
  }
}

export function answerLines({ text, ask, working }: Question): AnswerLines {
  switch (ask.kind) {
    case 'number':
      return { text, working, ...numberLines(ask) }
    case 'choice':
      return { text, working, ...choiceLines(ask) }
    case 'order':
      // the order is its own working
      return { text, working: '', ...orderLines(ask) }
    case 'words':
      return { text, working, answer: 'No one answer: what counts is the reason', slips: [] }
  }
}

/** The same, line by line, as it takes room on a page. */
export const linesTaken = ({ text, answer, working, slips }: AnswerLines): readonly string[] => [
  text,
  `Answer: ${answer}. Working: ${working}`,
  ...slips.map(({ value, sentence }) => `${value}: ${sentence}`),
]
