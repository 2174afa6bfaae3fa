/** A question on the answer page: what is right, how it comes about, and what other answers come from. */
import { isClose, toleranceOf } from '../../sim/question/marking.ts'
import type { AskChoice, AskNumber, AskOrder, Question } from '../../sim/question/question.ts'
import { numberText, valueText } from '../../sim/question/value-text.ts'

interface Slip {
  readonly value: string
  readonly sentence: string
}

export interface AnswerLines {
  readonly text: string
  readonly answer: string
  readonly working: string
  /** What leads to other answers: the answer, and why */
  readonly slips: readonly Slip[]
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

/** Several slips that lead to one answer, in one line. */
function joined(slips: readonly Slip[]): readonly Slip[] {
  const byValue = new Map<string, string>()
  for (const { value, sentence } of slips) {
    const before = byValue.get(value)
    byValue.set(value, before === undefined ? sentence : `${before} Or: ${sentence}`)
  }
  return [...byValue].map(([value, sentence]) => ({ value, sentence }))
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
const unended = (text: string): string => text.replace(/\.$/, '')

function choiceLines({ options, answer, slips }: AskChoice): Pick<AnswerLines, 'answer' | 'slips'> {
  const textOf = (id: string) => unended(options.find((option) => option.id === id)?.text ?? id)
  return {
    answer: textOf(answer),
    slips: joined(slips.map(({ option, sentence }) => ({ value: textOf(option), sentence }))),
  }
}

function orderLines({ cards, answer, slips }: AskOrder): Pick<AnswerLines, 'answer' | 'slips'> {
  const textOf = (id: string) => cards.find((card) => card.id === id)?.text ?? id
  return {
    answer: answer.map((id, i) => `${i + 1} ${textOf(id)}`).join('; '),
    slips: joined(slips.map(({ sentence }) => ({ value: 'Another order', sentence }))),
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
