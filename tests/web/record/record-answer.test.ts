import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { bankQuestion, answer, occasion, rightReply, workshopWith } from './answers.ts'
import { asked, committed, withAnswer } from '../../../web/store/exercise.ts'
import { recordAnswer } from '../../../web/record/record-answer.ts'

const question = bankQuestion('turns-worm')

beforeEach(() => vi.useFakeTimers({ now: Date.parse('2026-05-04T09:30:00Z') }))
afterEach(() => vi.useRealTimers())

test('a right answer is recorded with its question, its tolerance and its time', () => {
  const workshop = workshopWith()
  const answered = answer(workshop, question, { text: '20 turns', sureness: 2 })
  expect(workshop.records.store.getState().answered).toEqual([answered])
  expect(answered).toMatchObject({
    time: '2026-05-04T09:30:00.000Z',
    family: 'turns-worm',
    seed: 'demo',
    index: 0,
    level: 1,
    text: question.text,
    kind: 'number',
    unit: 'turn',
    raw: '20 turns',
    right: true,
    cause: '',
    sureness: 2,
    why: 'New.',
  })
  expect(answered.value).toBe(answered.answer)
})

test('a known slip is recorded with its cause', () => {
  const { ask } = question
  if (ask.kind !== 'number') throw new Error('turns-worm asks a number')
  const slip = ask.slips[0]!
  const answered = answer(workshopWith(), question, { reply: { kind: 'number', value: slip.value } })
  expect(answered.right).toBe(false)
  expect(answered.cause).toBe(slip.cause)
  expect(answered.value).toBe(slip.value)
})

test('no prediction is recorded as none, neither right nor wrong', () => {
  const answered = answer(workshopWith(), question, { reply: null })
  expect(answered).toMatchObject({ value: null, right: null, sureness: null, raw: '', cause: '' })
})

test('the seconds end at the commitment, not at the comparison', () => {
  const workshop = workshopWith()
  const began = Date.now()
  workshop.exercise.setState(asked(question))
  vi.advanceTimersByTime(12_300)
  workshop.exercise.setState((last) => committed(withAnswer(last, '20', rightReply(question))))
  vi.advanceTimersByTime(60_000)
  expect(recordAnswer(workshop, occasion({ began }))?.seconds).toBe(12.3)
})

test('the same answer is recorded once in a run, and again in another', () => {
  const workshop = workshopWith()
  answer(workshop, question)
  expect(recordAnswer(workshop, occasion())).toBeNull()
  expect(recordAnswer(workshop, occasion({ run: '00000000-0000-4000-8000-000000000000' }))).not.toBeNull()
  expect(workshop.records.store.getState().answered).toHaveLength(2)
})

test('nothing asked is nothing recorded', () => {
  expect(recordAnswer(workshopWith(), occasion())).toBeNull()
})

test('a choice and an order are recorded by their words and by their ids', () => {
  const option = { id: 'in', text: 'Towards the motor' }
  const other = { id: 'out', text: 'Away from the motor' }
  const choice = {
    ...question,
    ask: { kind: 'choice', options: [option, other], answer: 'in', slips: [] },
  } as const
  expect(answer(workshopWith(), choice, { reply: { kind: 'choice', option: 'out' } })).toMatchObject({
    raw: 'Away from the motor',
    value: 'out',
    answer: 'in',
    right: false,
    unit: '',
    allowed: 0,
  })
  const order = {
    ...question,
    ask: { kind: 'order', cards: [option, other], answer: ['in', 'out'], slips: [] },
  } as const
  expect(answer(workshopWith(), order)).toMatchObject({
    raw: 'Towards the motor → Away from the motor',
    value: 'in out',
    answer: 'in out',
    right: true,
  })
})

test('a question for words is recorded with the words, and is neither right nor wrong', () => {
  const words = { ...question, ask: { kind: 'words' } } as const
  expect(answer(workshopWith(), words, { reply: { kind: 'words', text: 'Two teeth pass.' } })).toMatchObject({
    raw: 'Two teeth pass.',
    value: 'Two teeth pass.',
    answer: '',
    right: null,
  })
})
