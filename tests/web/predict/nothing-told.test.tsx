import { renderToString } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { createStore } from 'zustand/vanilla'
import type { Machine } from '../../../sim/machine/machine.ts'
import { BANK, FAMILIES } from '../../../sim/question/bank.ts'
import { questionFor } from '../../../sim/question/instance.ts'
import type { Question } from '../../../sim/question/question.ts'
import { isCovered } from '../../../web/frame/asking.ts'
import { advanceModel } from '../../../web/frame/frame.ts'
import { type Workshop, WorkshopProvider, createWorkshop } from '../../../web/frame/workshop.ts'
import { TurnBand } from '../../../web/instrument/TurnBand.tsx'
import { PredictionSheet } from '../../../web/predict/PredictionSheet.tsx'
import * as session from '../../../web/predict/session.ts'
import { answerText } from '../../../web/question/answer-words.ts'
import { trialEnd, turnToEnd } from '../../../web/question/trial-run.ts'
import { bootCleaner } from '../../support/machines.ts'

/** A page that is open in Predict. */
function inPredict(machine: Machine = bootCleaner): Workshop {
  const workshop = createWorkshop(machine, 'light')
  workshop.view.setState({ way: 'predict' })
  return workshop
}

describe('nothing gives the answer away', () => {
  /** The stores as they are now, where the server's renderer looks: in their first state. */
  const frozen = (workshop: Workshop): Workshop => {
    const now = <T,>(store: { getState(): T }) => createStore<T>(() => store.getState())
    return {
      ...workshop,
      exercise: now(workshop.exercise),
      predict: now(workshop.predict),
      view: now(workshop.view),
      document: { ...workshop.document, store: now(workshop.document.store) },
    }
  }
  const rendered = (workshop: Workshop): string =>
    renderToString(
      <WorkshopProvider value={frozen(workshop)}>
        <PredictionSheet />
        <TurnBand size="predict" covered={isCovered(workshop)} />
      </WorkshopProvider>,
    ).replaceAll('<!-- -->', '')

  /** What is seen and what is read out: the text, and names, titles and values of the elements. */
  const told = (html: string): string => {
    const spoken = html.matchAll(/(?:aria-[a-z]+|title|alt|placeholder|value|data-[a-z]+)="([^"]*)"/g)
    return [html.replaceAll(/<[^>]*>/g, ' '), ...[...spoken].map(([, text]) => text)].join(' ')
  }
  const numbersIn = (text: string): readonly string[] => text.match(/\d+(?:\.\d+)?/g) ?? []

  /** A question of the family whose answer is no number that is given, so that finding it means that it was told. */
  function telling(name: string): Question {
    for (const level of [2, 1, 3] as const) {
      for (let index = 0; index < 60; index++) {
        const question = questionFor({ bank: BANK, seed: 'leak', family: name, index, level })!
        const given = `${question.text} ${question.trial?.words} 1 2 3`
        const [answer] = numbersIn(answerText(question) ?? '')
        if (question.ask.kind !== 'number' || !numbersIn(given).includes(answer!)) return question
      }
    }
    throw new Error(`${name} always gives its answer`)
  }
  const withTrial = FAMILIES.filter((family) => {
    const question = questionFor({ bank: BANK, seed: 'leak', family: family.name, index: 0, level: 1 })
    return question!.trial !== null
  }).map(({ name }) => name)

  /** The page at each phase, with the machine turned as far as the answer needs. */
  function pages(question: Question): { readonly before: readonly string[]; readonly after: string } {
    const workshop = inPredict()
    const { family, index, level } = question.key!
    const set = { bank: BANK, seed: 'leak', items: [{ family, index, level }], at: 0 }
    workshop.predict.setState({ source: 'set', set })
    session.enter(workshop)
    const predicting = rendered(workshop)
    session.skip(workshop)
    if (question.trial) {
      turnToEnd(workshop.frame, trialEnd(question)!)
      advanceModel(workshop.frame, 0)
    }
    const counting = question.trial ? rendered(workshop) : ''
    session.compare(workshop)
    return { before: [predicting, counting].map(told), after: told(rendered(workshop)) }
  }

  test('there are families of each sort to look at', () => {
    expect(withTrial.length).toBeGreaterThan(6)
    expect(withTrial).toEqual(
      expect.arrayContaining(['turns-worm', 'turns-wheel', 'pair-sense', 'wheel-sense']),
    )
  })

  test.each(withTrial)('%s, until it is compared', (name) => {
    const question = telling(name)
    const { before, after } = pages(question)
    const answer = answerText(question)!
    const [figure] = numbersIn(answer)
    const isNumber = question.ask.kind === 'number'
    const found = (page: string) =>
      isNumber ? numbersIn(page).includes(figure!) : page.includes(question.working)
    for (const page of before) {
      expect(found(page), page).toBe(false)
      expect(page).not.toContain(question.working)
      for (const { sentence } of question.ask.kind === 'words' ? [] : question.ask.slips)
        expect(page).not.toContain(sentence)
      for (const { text } of question.reasons) expect(page).not.toContain(text)
    }
    if (!isNumber) expect(before[1]).not.toContain(answer)
    expect(found(after)).toBe(true)
  })

  test.each(FAMILIES.map(({ name }) => name))('%s, before it is committed', (name) => {
    const question = telling(name)
    const [page] = pages(question).before
    expect(page).not.toContain(question.working)
    if (question.ask.kind === 'number')
      expect(numbersIn(page!)).not.toContain(numbersIn(answerText(question)!)[0])
    else expect(page!.split(answerText(question)!).length).toBeLessThanOrEqual(2)
  })
})
