/** Where a question is answered: a number, one of a few options, cards put in order, or a sentence. */
import type { Question } from '../../sim/question/question.ts'
import { AnswerChoice } from './AnswerChoice.tsx'
import { AnswerNumber } from './AnswerNumber.tsx'
import { AnswerOrder } from './AnswerOrder.tsx'
import { AnswerWords } from './AnswerWords.tsx'
import type { AnswerProps } from './answer-props.ts'
import './question.css'

interface AnswerFieldProps extends AnswerProps {
  readonly question: Question
  /** Said under the box of a number while nothing else is. */
  readonly hint?: string
}

export function AnswerField({ question, hint, ...rest }: AnswerFieldProps) {
  const { ask } = question
  if (ask.kind === 'number') return <AnswerNumber ask={ask} hint={hint} {...rest} />
  if (ask.kind === 'choice') return <AnswerChoice ask={ask} {...rest} />
  if (ask.kind === 'order') return <AnswerOrder ask={ask} {...rest} />
  return <AnswerWords {...rest} />
}
