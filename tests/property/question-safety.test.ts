/** The order in which a machine is opened, card by card. */
import { describe, expect, test } from 'vitest'
import { familyNamed } from '../../sim/question/bank.ts'
import { questionWith } from '../../sim/question/instance.ts'
import { mark } from '../../sim/question/marking.ts'
import type { AskOrder, Question } from '../../sim/question/question.ts'
import { questionsOf } from '../support/question-check.ts'

/** Word of each step, in the order of the practice of electrical work: common practice, from memory. */
const PRACTICE = ['Unplug', 'measure', 'screws', 'hot', 'Mark', 'Lift']

function askOf({ ask }: Question): AskOrder {
  if (ask.kind !== 'order') throw new Error('no order is asked')
  return ask
}

/** Where in the practice a card stands. */
const place = (text: string): number => PRACTICE.findIndex((word) => text.includes(word))

const every = [...questionsOf('safe-order')]

/** What an order of three cards is marked as, u for unplug, w for wait, c for cover. */
function marked(order: string) {
  const question = questionWith(familyNamed('safe-order')!, { others: '', laid: 1 })
  const ids = { u: 'unplug', w: 'wait', c: 'cover' }
  return mark(question, { kind: 'order', order: [...order].map((letter) => ids[letter as 'u' | 'w' | 'c']) })
}

describe('safe-order', () => {
  test('has three cards at first, then four or five, then all six', () => {
    const counts = new Map<number, Set<number>>([1, 2, 3].map((level) => [level, new Set()]))
    for (const { question, level } of every) counts.get(level)!.add(askOf(question).cards.length)
    expect([...counts.values()]).toEqual([new Set([3]), new Set([4, 5]), new Set([6])])
  })

  test('has unplugging, waiting and the cover among the cards always', () => {
    for (const { question } of every) {
      const places = askOf(question).cards.map(({ text }) => place(text))
      expect(places).toEqual(expect.arrayContaining([0, 1, 2]))
    }
  })

  test('takes the order of the practice for right', () => {
    for (const { question } of every) {
      const { cards, answer } = askOf(question)
      const sorted = cards.toSorted((a, b) => place(a.text) - place(b.text)).map(({ id }) => id)
      expect(answer).toEqual(sorted)
    }
  })

  test('is never laid out in the right order, and at first in each other one', () => {
    const laid = new Set<string>()
    for (const { question, level } of every) {
      const { cards, answer } = askOf(question)
      const order = cards.map(({ id }) => id)
      expect(order).not.toEqual(answer)
      if (level === 1) laid.add(order.join())
    }
    expect(laid.size).toBe(5)
  })

  test('leaves the last word to local rules and licensed practice', () => {
    for (const { question } of every) expect(question.text).toMatch(/local rules.*licensed practice.*first/i)
  })

  test('tells what was wrong with an order', () => {
    expect(marked('uwc')).toEqual({ right: true, cause: null, sentence: null })
    for (const order of ['cuw', 'ucw']) expect(marked(order).cause, order).toBe('cover-first')
    for (const order of ['cwu', 'wcu']) expect(marked(order).cause, order).toBe('switch-is-enough')
    expect(marked('wuc')).toEqual({ right: false, cause: null, sentence: null })
  })
})
