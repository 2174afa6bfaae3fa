/** What a question of a known kind is answered with. */
import { familyNamed } from '../../sim/question/bank.ts'
import type { Given } from '../../sim/question/family.ts'
import { questionWith } from '../../sim/question/instance.ts'
import type { Question } from '../../sim/question/question.ts'

export function numberAnswer({ ask }: Question): number {
  if (ask.kind !== 'number') throw new Error('a number is asked for')
  return ask.answer
}

export function choiceAnswer({ ask }: Question): string {
  if (ask.kind !== 'choice') throw new Error('a choice is asked for')
  return ask.answer
}

function asked(name: string, given: Given): Question {
  const family = familyNamed(name)
  if (!family) throw new Error(`${name} is not in the bank`)
  return questionWith(family, given)
}

/** The answer to a family's question with parameters of one's own. */
export const numberAsked = (name: string, given: Given): number => numberAnswer(asked(name, given))

export const choiceAsked = (name: string, given: Given): string => choiceAnswer(asked(name, given))
