/** What holds for every family of the bank, whatever it asks: tried on many keys at each level. */
import { expect } from 'vitest'
import { BANK, familyNamed } from '../../sim/question/bank.ts'
import type { Family, Given, Level, NumberFamily } from '../../sim/question/family.ts'
import { questionFor } from '../../sim/question/instance.ts'
import { isClose, mark, toleranceOf } from '../../sim/question/marking.ts'
import type { AskNumber, Question, QuestionKey } from '../../sim/question/question.ts'

/** Every choice of wording and of the order of reasons should have come up by then. */
const SEEDS = 1000

const LEVELS: readonly Level[] = [1, 2, 3]

const keyOf = (family: string, seed: number, level: Level): QuestionKey => ({
  bank: BANK,
  seed: `check-${seed}`,
  family,
  index: seed,
  level,
})

/** The questions of a family for `seeds` keys at each level, with their parameters. */
export function* questionsOf(
  name: string,
  seeds: number = SEEDS,
): Generator<{ readonly question: Question; readonly given: Given; readonly level: Level }> {
  for (const level of LEVELS)
    for (let seed = 0; seed < seeds; seed++) {
      const question = questionFor(keyOf(name, seed, level))
      if (!question?.given) throw new Error(`${name} is not in the bank`)
      yield { question, given: question.given, level }
    }
}

/** What a program leaves in a sentence where a figure is missing, or a word. */
const HOLES =
  /NaN|undefined|\bnull\b|Infinity|\[object|[{}]| {2}|^ | $| [.,;:?]|!|\d[eE][+-]?\d|-\d|(?<![\d./])1 (turns|teeth|starts|days)\b/

/** Fails with the place and what should have held there. */
function demand(holds: boolean, where: string, what: string): void {
  if (!holds) expect.fail(`${where}: ${what}`)
}

function sentencesOf({ text, working, reasons, watch, trial, ask, title }: Question): string[] {
  const asked =
    ask.kind === 'choice'
      ? ask.options.map((option) => option.text)
      : ask.kind === 'order'
        ? ask.cards.map((card) => card.text)
        : []
  const causes = ask.kind === 'words' ? [] : ask.slips.map(({ sentence }) => sentence)
  const looked = watch ? [watch.words] : []
  const tried = trial ? [trial.words] : []
  return [text, working, title, ...reasons.map((each) => each.text), ...looked, ...tried, ...asked, ...causes]
}

function checkWords(question: Question, where: string): void {
  for (const sentence of sentencesOf(question)) {
    demand(sentence.length > 0, where, 'a sentence is empty')
    demand(!HOLES.test(sentence), where, `"${sentence}"`)
  }
  const reasons = question.reasons.map(({ text }) => text)
  demand(new Set(reasons).size === 3, where, 'three reasons')
  demand(question.reasons.filter(({ right }) => right).length === 1, where, 'one right reason')
}

/** Significant digits that a first question's answer may need: five. */
const isShort = (value: number): boolean =>
  Math.abs(Number(value.toPrecision(5)) - value) <= 1e-12 * Math.abs(value)

function checkApart(family: NumberFamily, given: Given, where: string): void {
  const answer = family.answer(given)
  const allowed = toleranceOf(family.tolerance, answer)
  const apart = family.slips.filter((slip) => slip.apart)
  apart.forEach((slip, i) => {
    const value = slip.value(given)
    if (value === null) return
    demand(!isClose(answer, value, allowed, 3), where, `${slip.cause} keeps away from the answer`)
    for (const earlier of apart.slice(0, i)) {
      const other = earlier.value(given)
      const near = other !== null && isClose(other, value, allowed, 1)
      demand(!near, where, `${slip.cause} keeps away from ${earlier.cause}`)
    }
  })
}

function checkNumber(question: Question, ask: AskNumber, anyLength: boolean, where: string): void {
  const { answer, slips, tolerance } = ask
  const isRight = (value: number) => mark(question, { kind: 'number', value }).right
  demand(Number.isFinite(answer), where, `the answer is finite, not ${answer}`)
  demand(anyLength || isShort(answer), where, `a first answer is short, not ${answer}`)
  demand(isRight(answer) === true, where, 'the answer is right')
  const allowed = toleranceOf(tolerance, answer)
  slips.forEach(({ cause, value }, i) => {
    demand(Number.isFinite(value), where, `${cause} leads to a number, not ${value}`)
    demand(!isClose(answer, value, allowed, 3), where, `${cause} keeps away from the answer`)
    demand(isRight(value) === false, where, `${cause} is not right`)
    for (const earlier of slips.slice(0, i)) {
      const near = isClose(earlier.value, value, allowed, 1)
      demand(!near, where, `${cause} keeps away from ${earlier.cause}`)
    }
  })
}

function checkAsk(family: Family, question: Question, level: Level, where: string): void {
  const { ask, given } = question
  if (family.kind === 'number') {
    if (ask.kind !== 'number') throw new Error(`${where}: a number is asked as ${ask.kind}`)
    if (given !== family.example) checkApart(family, given!, where)
    checkNumber(question, ask, level > 1 || family.irrational === true, where)
  } else if (ask.kind === 'choice') {
    const ids = ask.options.map(({ id }) => id)
    demand(new Set(ids).size === ids.length && ids.includes(ask.answer), where, 'one option is the answer')
    for (const { option, cause } of ask.slips)
      demand(ids.includes(option) && option !== ask.answer, where, `${cause} leads to another option`)
  } else if (ask.kind === 'order') {
    const ids = ask.cards.map(({ id }) => id)
    demand(new Set(ids).size === ids.length, where, 'each card is there once')
    demand(ids.toSorted().join() === ask.answer.toSorted().join(), where, 'the order is one of the cards')
    for (const slip of ask.slips)
      demand(!slip.fits(ask.answer), where, `${slip.cause} does not fit the right order`)
  } else throw new Error(`${where}: a family asks for words`)
}

/** Everything of a question but the functions that a slip of order is tested with. */
const asText = (question: Question): string => JSON.stringify(question)

/** Fails unless all that every family promises holds for `seeds` keys at each level. */
export function checkFamily(name: string, seeds: number = SEEDS): void {
  const family = familyNamed(name)
  if (!family) throw new Error(`${name} is not in the bank`)
  const wordings = new Set<number>()
  let examples = 0
  let drawn = 0
  for (const { question, given, level } of questionsOf(name, seeds)) {
    const where = `${name} level ${level} ${JSON.stringify(given)}`
    drawn++
    if (given === family.example) examples++
    else if (family.accepts) demand(family.accepts(given, level), where, 'the parameters are accepted')
    checkWords(question, where)
    checkAsk(family, question, level, where)
    wordings.add(family.texts.findIndex((words) => words(given) === question.text))
    demand(asText(questionFor(question.key!)!) === asText(question), where, 'the same when asked again')
  }
  expect(wordings, `${name}: wordings`).toEqual(new Set(family.texts.keys()))
  expect(examples, `${name}: the example stands in for draws that find nothing`).toBeLessThan(drawn / 50)
}
