/** Answers of the bank, to be held against what comes out of the core in another way. */
import { familyNamed } from '../../sim/question/bank.ts'
import type { Given } from '../../sim/question/family.ts'
import { questionWith } from '../../sim/question/instance.ts'
import { mark } from '../../sim/question/marking.ts'
import { questionsOf } from './question-check.ts'

type Numbers = Readonly<Record<string, number>>

const asNumbers = (given: Given): Numbers =>
  Object.fromEntries(Object.entries(given).map(([name, value]) => [name, Number(value)]))

/** What 1000 keys at each level give, each set of numbers once. */
export function numbersOf(family: string): readonly Numbers[] {
  const found = new Map<string, Numbers>()
  for (const { given } of questionsOf(family)) found.set(JSON.stringify(given), asNumbers(given))
  return [...found.values()]
}

/** The number that a family takes for right. */
export function answerOf(name: string, given: Given): number {
  const family = familyNamed(name)
  if (!family) throw new Error(`${name} is not in the bank`)
  const { ask } = questionWith(family, given)
  if (ask.kind !== 'number') throw new Error(`${name} does not ask for a number`)
  return ask.answer
}

/** The slip that is named for an answer; 'right' where there is none to name, null where no known slip leads to it. */
export function causeOf(name: string, given: Given, value: number): string | null {
  const family = familyNamed(name)
  if (!family) throw new Error(`${name} is not in the bank`)
  const { right, cause } = mark(questionWith(family, given), { kind: 'number', value })
  return right ? 'right' : cause
}

/** Runs a check on all of them; fails where there are too few to prove anything. */
export function eachOf(name: string, check: (given: Numbers, answer: number) => void, atLeast = 20): void {
  const all = numbersOf(name)
  if (all.length < atLeast) throw new Error(`${name}: only ${all.length} different questions`)
  for (const given of all) check(given, answerOf(name, given))
}
