import { describe, expect, test } from 'vitest'
import { familyNamed } from '../../../sim/question/bank.ts'
import { questionWith } from '../../../sim/question/instance.ts'
import type { Question } from '../../../sim/question/question.ts'
import { eraseDraft, keepDraft, keptDraft } from '../../../web/question/draft.ts'
import {
  type Exercise,
  asked,
  committed,
  compared,
  skipped,
  withAnswer,
  withNote,
  withReason,
  withSureness,
  withTap,
} from '../../../web/store/exercise.ts'
import { forbidding, memory, refusing } from '../record/storages.ts'

const exampleOf = (name: string): Question => {
  const family = familyNamed(name)!
  return questionWith(family, family.example)
}
const turns = exampleOf('turns-worm')
const order = exampleOf('safe-order')
const choice = exampleOf('pair-sense')
const times = { began: 1000, committedAt: 2000 }

/** What a page that is loaded again finds of it. */
function foundAgain(exercise: Exercise, questions = [exercise.question!]): Exercise | undefined {
  const keeper = memory()
  keepDraft(exercise, times, keeper)
  return keptDraft(questions, keeper)?.exercise
}

const typed = (text: string, value: number | null): Exercise =>
  withAnswer(asked(turns), text, value === null ? null : { kind: 'number', value })

describe('a question that is asked when the page is loaded again', () => {
  test.each([
    ['half typed', typed('20 *', null)],
    ['typed, with how sure', withSureness(typed('12', 12), 2)],
    ['compared', withNote(withReason(compared(withTap(committed(typed('12', 12)), 1)), 0), 'why')],
    ['skipped', compared(skipped(asked(turns)))],
    ['a choice', withAnswer(asked(choice), 'x', { kind: 'choice', option: optionOf(choice) })],
    ['an order', withAnswer(asked(order), 'x', { kind: 'order', order: cardsOf(order).toReversed() })],
  ])('%s stands as it stood', (_, exercise) => {
    expect(foundAgain(exercise)).toEqual(exercise)
  })
  test('what was committed stays committed, and is counted anew', () => {
    const found = foundAgain(withTap(committed(typed('12', 12)), 1))!
    expect(found).toMatchObject({ phase: 'count', text: '12', reply: { value: 12 }, taps: [] })
  })
  test('it keeps when it was asked and committed', () => {
    const keeper = memory()
    keepDraft(typed('12', 12), times, keeper)
    expect(keptDraft([turns], keeper)).toMatchObject(times)
  })
  test('it belongs to its own question only', () => {
    expect(foundAgain(typed('12', 12), [order])).toBeUndefined()
    expect(foundAgain(typed('12', 12), [order, turns])?.text).toBe('12')
  })
  test('erased, nothing is left', () => {
    const keeper = memory()
    keepDraft(typed('12', 12), times, keeper)
    eraseDraft(keeper)
    expect([...keeper.kept.keys()]).toEqual([])
  })
  test.each([null, refusing('QuotaExceededError'), forbidding()])(
    'a tab that keeps nothing is no fault',
    (k) => {
      expect(() => keepDraft(typed('12', 12), times, k)).not.toThrow()
      expect(keptDraft([turns], k)).toBeNull()
    },
  )
})

function optionOf({ ask }: Question): string {
  return ask.kind === 'choice' ? ask.options[1]!.id : ''
}
function cardsOf({ ask }: Question): readonly string[] {
  return ask.kind === 'order' ? ask.cards.map(({ id }) => id) : []
}

describe('what is kept and is not what it should be', () => {
  const read = (fields: object, question = turns) =>
    keptDraft(
      [question],
      memory({ 'counterturn.draft': JSON.stringify({ question: question.text, ...fields }) }),
    )
  test.each(['', '{', '[]', '7', 'null', '{"question":7}'])('%s is no draft', (text) => {
    expect(keptDraft([turns], memory({ 'counterturn.draft': text }))).toBeNull()
  })
  test('a comparison without an answer is none', () => {
    expect(read({ phase: 'compare', reply: null })?.exercise.phase).toBe('predict')
    expect(read({ phase: 'compare', reply: { kind: 'choice', option: 'a' } })?.exercise.phase).toBe('predict')
  })
  test.each([
    { kind: 'order', order: ['a', 'b', 'c'] },
    { kind: 'order', order: 7 },
    { kind: 'order', order: cardsOf(order).slice(1) },
  ])('an order of other cards is none: %j', (reply) => {
    expect(read({ reply, phase: 'count' }, order)?.exercise).toMatchObject({ reply: null, phase: 'predict' })
  })
  test('fields of other kinds are as if they were not there', () => {
    const { exercise } = read({ text: 7, sureness: 9, reason: 'x', taps: 'no', note: {}, phase: 'late' })!
    expect(exercise).toEqual(asked(turns))
  })
  test('a number that is none is no answer', () => {
    expect(read({ reply: { kind: 'number', value: '12' } })?.exercise.reply).toBeNull()
  })
})
