import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { DAMAGED_KEY, RECORDS_KEY, eraseRecords } from '../../../web/record/keep-records.ts'
import { readRecords } from '../../../web/record/records-file.ts'
import { type Lesson, type LessonState, noLesson } from '../../../web/store/lesson.ts'
import { RUN, answer as answerNow, bankQuestion, workshopWith } from './answers.ts'
import { forbidding, memory, refusing } from './storages.ts'

beforeEach(() => vi.useFakeTimers({ now: Date.parse('2026-05-04T09:30:00Z') }))
afterEach(() => vi.useRealTimers())

/** Nobody answers twice in the same moment. */
const answer: typeof answerNow = (...given) => {
  vi.advanceTimersByTime(1000)
  return answerNow(...given)
}

const question = (index: number) => bankQuestion('turns-worm', index)
const answeredIn = (workshop: ReturnType<typeof workshopWith>) => workshop.records.store.getState().answered

function storageEvent(key: string | null): Event {
  return Object.assign(new Event('storage'), { key })
}

test('what is answered is there when the page is opened again, with what was set', () => {
  const keeper = memory()
  const workshop = workshopWith(keeper)
  const first = answer(workshop, question(0), { sureness: 3 })
  workshop.records.store.setState({ nickname: 'Kim', marksOn: true })
  const again = workshopWith(keeper)
  expect(answeredIn(again)).toEqual([first])
  expect(again.records.store.getState()).toMatchObject({
    nickname: 'Kim',
    marksOn: true,
    notKept: '',
    damaged: '',
  })
})

test('topics of a lesson that is gone through alone are noted once in a run, and the lesson at its end', () => {
  const keeper = memory()
  const workshop = workshopWith(keeper)
  const beats = ['one', 'two'].map((id) => ({ id, title: `Topic ${id}` }))
  const lesson = { id: 'short', name: 'A short one', beats } as unknown as Lesson
  const at = (beat: number, seen: readonly string[], part: Partial<LessonState> = {}) =>
    workshop.lesson.setState({ ...noLesson, lesson, mode: 'alone', run: RUN, beat, seen, ...part })
  at(0, ['one'], { mode: 'lead' })
  expect(workshop.records.store.getState().passed).toEqual([])
  at(0, ['one'])
  at(0, ['one'], { step: 'ask' })
  at(1, ['one', 'two'])
  at(0, ['one', 'two'])
  at(1, ['one', 'two'])
  const { passed } = workshopWith(keeper).records.store.getState()
  expect(passed.map(({ beat, title, run }) => [beat, title, run])).toEqual([
    ['one', 'Topic one', RUN],
    ['two', 'Topic two', RUN],
    ['', 'A short one', RUN],
  ])
})

test('nothing is written before there is something to keep', () => {
  const keeper = memory()
  workshopWith(keeper)
  expect(keeper.kept.size).toBe(0)
})

test('two open pages keep the answers of both, each once', () => {
  const keeper = memory()
  const [hereEvents, thereEvents] = [new EventTarget(), new EventTarget()]
  const here = workshopWith(keeper, hereEvents)
  const there = workshopWith(keeper, thereEvents)
  answer(here, question(0))
  answer(there, question(1))
  hereEvents.dispatchEvent(storageEvent(RECORDS_KEY))
  answer(here, question(2))
  thereEvents.dispatchEvent(storageEvent(RECORDS_KEY))
  expect(answeredIn(here)).toHaveLength(3)
  expect(answeredIn(there)).toEqual(answeredIn(here))
  expect(readRecords(keeper.kept.get(RECORDS_KEY)!).answered).toEqual(answeredIn(here))
})

test('erasing leaves nothing in the storage, nor in another open page, which does not write it back', () => {
  const keeper = memory({ [DAMAGED_KEY]: 'damaged', 'counterturn.bench': 'the bench' })
  const thereEvents = new EventTarget()
  const here = workshopWith(keeper)
  const there = workshopWith(keeper, thereEvents)
  answer(here, question(0))
  here.records.store.setState({ nickname: 'Kim', account: 'some name' })
  thereEvents.dispatchEvent(storageEvent(RECORDS_KEY))
  expect(eraseRecords(here, keeper)).toBe(true)
  thereEvents.dispatchEvent(storageEvent(RECORDS_KEY))
  expect([...keeper.kept.keys()]).toEqual(['counterturn.bench'])
  for (const workshop of [here, there]) {
    expect(answeredIn(workshop)).toEqual([])
    expect(workshop.records.store.getState()).toMatchObject({ nickname: '', account: '', damaged: '' })
  }
})

test.each(['', '{', 'null', '[]', '{"schema":"counterturn-records","version":2,"answered":[]}', '\u0000'])(
  'a damaged text %j is put aside as it is, said, and not overwritten',
  (text) => {
    const keeper = memory({ [RECORDS_KEY]: text })
    const workshop = workshopWith(keeper)
    expect(workshop.records.store.getState().damaged).toMatch(/could not be read/)
    expect(keeper.kept.get(DAMAGED_KEY)).toBe(text)
    const first = answer(workshop, question(0))
    const again = workshopWith(keeper)
    expect(answeredIn(again)).toEqual([first])
    expect(again.records.store.getState().damaged).toMatch(/put aside/)
    expect(keeper.kept.get(DAMAGED_KEY)).toBe(text)
  },
)

test('one damaged answer among good ones costs only itself, and is put aside', () => {
  const keeper = memory()
  const first = answer(workshopWith(keeper), question(0))
  const text = keeper.kept.get(RECORDS_KEY)!.replace('"answered":[', '"answered":[{"id":"odd"},')
  const damaged = memory({ [RECORDS_KEY]: text })
  const workshop = workshopWith(damaged)
  expect(answeredIn(workshop)).toEqual([first])
  expect(damaged.kept.get(DAMAGED_KEY)).toBe(text)
})

test('what is damaged is not overwritten where there is no room to put it aside', () => {
  const keeper = refusing('QuotaExceededError', { [RECORDS_KEY]: 'damaged' })
  const workshop = workshopWith(keeper)
  answer(workshop, question(0))
  expect(keeper.kept.get(RECORDS_KEY)).toBe('damaged')
  expect(workshop.records.store.getState().notKept).toMatch(/no room to put it aside/)
  expect(answeredIn(workshop)).toHaveLength(1)
})

test.each([
  ['full', refusing('QuotaExceededError'), /no room left/],
  ['refusing', refusing('SecurityError'), /does not let this page keep/],
  ['forbidding', forbidding(), /does not let this page keep/],
  ['missing', null, /keeps nothing/],
])('a storage that is %s is said, once, and the answer is still in the page', (_, keeper, words) => {
  const workshop = workshopWith(keeper)
  const said: string[] = []
  workshop.announcer.store.subscribe(({ text }) => said.push(text))
  answer(workshop, question(0))
  answer(workshop, question(1))
  expect(workshop.records.store.getState().notKept).toMatch(words)
  expect(said.filter((text) => words.test(text))).toHaveLength(1)
  expect(answeredIn(workshop)).toHaveLength(2)
})

test('a storage that keeps again takes in what was answered meanwhile', () => {
  const keeper = memory()
  let full = true
  const filling = {
    ...keeper,
    setItem: (key: string, value: string) => {
      if (full) throw new DOMException('full', 'QuotaExceededError')
      keeper.setItem(key, value)
    },
  }
  const workshop = workshopWith(filling)
  answer(workshop, question(0))
  full = false
  answer(workshop, question(1))
  expect(workshop.records.store.getState().notKept).toBe('')
  expect(answeredIn(workshopWith(keeper))).toHaveLength(2)
})
