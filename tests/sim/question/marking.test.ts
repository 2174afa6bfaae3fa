import { describe, expect, test } from 'vitest'
import type { Tolerance } from '../../../sim/question/family.ts'
import { type Sureness, confidenceMark, mark, toleranceOf } from '../../../sim/question/marking.ts'
import type { Ask, AskNumber, Question, Reply } from '../../../sim/question/question.ts'

const asking = (ask: Ask): Question => ({
  text: '',
  ask,
  working: '',
  reasons: [],
  watch: null,
  gearing: null,
  trial: null,
  family: null,
  title: '',
  given: null,
  key: null,
})

const slip = (cause: string, value: number) => ({ cause, sentence: `${cause}.`, value })

const numeric = (tolerance: Tolerance, answer: number, slips: AskNumber['slips'] = []): Question =>
  asking({ kind: 'number', unit: '1', tolerance, answer, slips })

const number = (value: number): Reply => ({ kind: 'number', value })

const isRight = (question: Question, value: number) => mark(question, number(value)).right

describe('how far off an answer may be', () => {
  test.each([
    { tolerance: 'r0.5', answer: 252.55, inside: 253.81, outside: 253.82 },
    { tolerance: 'r1', answer: 23.5, inside: 23.73, outside: 23.74 },
    { tolerance: 'r2', answer: -50, inside: -50.99, outside: -51.01 },
    { tolerance: 'a0.5', answer: 30.4, inside: 30.89, outside: 30.91 },
    { tolerance: 'a1', answer: 80, inside: 79.01, outside: 78.99 },
    { tolerance: 'exact', answer: 1 / 3, inside: 1 / 3 + 1e-10, outside: 0.3333 },
  ] as const)('$tolerance of $answer', ({ tolerance, answer, inside, outside }) => {
    expect(isRight(numeric(tolerance, answer), inside)).toBe(true)
    expect(isRight(numeric(tolerance, answer), outside)).toBe(false)
    expect(isRight(numeric(tolerance, answer), -answer)).toBe(false)
  })

  test('counts are counts, up to ten thousand', () => {
    expect(isRight(numeric('r0.5', 10_000), 10_001)).toBe(false)
    expect(isRight(numeric('r0.5', 10_001), 10_002)).toBe(true)
    expect(isRight(numeric('r1', 100), 101)).toBe(true)
  })

  test('nothing is met by nothing only', () => {
    expect(isRight(numeric('r0.5', 0), 5e-10)).toBe(true)
    expect(isRight(numeric('r0.5', 0), 2e-9)).toBe(false)
    expect(isRight(numeric('r1', 0), 0.01)).toBe(false)
    expect(isRight(numeric('a1', 0), 0.9)).toBe(true)
    expect(toleranceOf('exact', 0).absolute).toBeGreaterThan(0)
  })
})

describe('what leads to a wrong answer', () => {
  const question = numeric('r0.5', 20, [slip('inverted', 0.05), slip('both-added', 40), slip('near', 40.2)])

  test('the first slip within one per cent names the cause', () => {
    expect(mark(question, number(40.3))).toEqual({
      right: false,
      cause: 'both-added',
      sentence: 'both-added.',
    })
    expect(mark(question, number(40.5)).cause).toBe('near')
    expect(mark(question, number(0.0504)).cause).toBe('inverted')
  })

  test('no known slip names none', () => {
    expect(mark(question, number(30))).toEqual({ right: false, cause: null, sentence: null })
    expect(mark(question, number(0.0506)).cause).toBeNull()
  })

  test('a right answer has no cause', () => {
    expect(mark(question, number(20))).toEqual({ right: true, cause: null, sentence: null })
  })

  test('where the answer may be off by so much in its unit, so may a slip', () => {
    const heat = numeric('a0.5', 30, [slip('rise-only', 9)])
    expect(mark(heat, number(9.4)).cause).toBe('rise-only')
    expect(mark(heat, number(9.6)).cause).toBeNull()
    const straight = numeric('a0.5', 60, [slip('straight-line', 100)])
    expect(mark(straight, number(100.4)).cause).toBe('straight-line')
    expect(mark(straight, number(100.6)).cause).toBeNull()
  })

  test('a slip that leads to nothing is met by nothing', () => {
    const phase = numeric('r0.5', 9, [slip('always-aligns', 0)])
    expect(mark(phase, number(0)).cause).toBe('always-aligns')
    expect(mark(phase, number(0.01)).cause).toBeNull()
  })
})

test('of options, one is right and others have a cause', () => {
  const question = asking({
    kind: 'choice',
    options: [],
    answer: 'a',
    slips: [
      { cause: 'first', sentence: 'First.', option: 'b' },
      { cause: 'second', sentence: 'Second.', option: 'b' },
    ],
  })
  expect(mark(question, { kind: 'choice', option: 'a' }).right).toBe(true)
  expect(mark(question, { kind: 'choice', option: 'b' })).toEqual({
    right: false,
    cause: 'first',
    sentence: 'First.',
  })
  expect(mark(question, { kind: 'choice', option: 'c' }).cause).toBeNull()
})

test('of orders, one is right', () => {
  const question = asking({
    kind: 'order',
    cards: [],
    answer: ['a', 'b', 'c'],
    slips: [{ cause: 'late', sentence: 'Late.', fits: (order) => order.at(-1) === 'a' }],
  })
  expect(mark(question, { kind: 'order', order: ['a', 'b', 'c'] }).right).toBe(true)
  expect(mark(question, { kind: 'order', order: ['b', 'c', 'a'] }).cause).toBe('late')
  expect(mark(question, { kind: 'order', order: ['b', 'a', 'c'] })).toEqual({
    right: false,
    cause: null,
    sentence: null,
  })
  expect(mark(question, { kind: 'order', order: ['a', 'b'] }).right).toBe(false)
})

test('words are neither right nor wrong', () => {
  const reply: Reply = { kind: 'words', text: 'because' }
  expect(mark(asking({ kind: 'words' }), reply)).toEqual({ right: null, cause: null, sentence: null })
})

test('a reply of another kind than was asked for is a mistake of the program', () => {
  expect(() => mark(numeric('r1', 1), { kind: 'choice', option: 'a' })).toThrow('of kind choice')
})

describe('marks for confidence', () => {
  const levels: readonly Sureness[] = [1, 2, 3]
  const expected = (sureness: Sureness, chance: number): number =>
    chance * confidenceMark(true, sureness) + (1 - chance) * confidenceMark(false, sureness)
  const best = (chance: number): Sureness =>
    levels.toSorted((a, b) => expected(b, chance) - expected(a, chance))[0]!

  /** A. R. Gardner-Medwin, confidence-based marking, Physiological Society workshop, Bristol 2005 */
  test('are 1, 2, 3 for right and 0, -2, -6 for wrong', () => {
    expect(levels.map((each) => confidenceMark(true, each))).toEqual([1, 2, 3])
    expect(levels.map((each) => confidenceMark(false, each))).toEqual([0, -2, -6])
  })

  test('pay best for saying how sure one is: 1 below 67 %, 3 above 80 %', () => {
    expect([0.1, 0.5, 0.66].map(best)).toEqual([1, 1, 1])
    expect([0.68, 0.75, 0.79].map(best)).toEqual([2, 2, 2])
    expect([0.81, 0.9, 1].map(best)).toEqual([3, 3, 3])
  })
})
