import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { FAMILIES } from '../../../sim/question/bank.ts'
import { type Workshop, WorkshopProvider } from '../../../web/frame/workshop.ts'
import { Summary } from '../../../web/record/PrintedRecord.tsx'
import { RecordSheet } from '../../../web/record/RecordSheet.tsx'
import { askAgain } from '../../../web/record/ask-again.ts'
import { lookAgain } from '../../../web/record/progress.ts'
import { takeInFile } from '../../../web/record/record-files.ts'
import { printRecords } from '../../../web/record/records-file.ts'
import { asked } from '../../../web/store/exercise.ts'
import { answer, bankQuestion, rightReply, workshopWith } from './answers.ts'
import { forbidding, memory } from './storages.ts'

const textOf = (html: string): string =>
  html
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&#x27;', '’')
    .replaceAll(/\s+/g, ' ')

/** As it is now: without a browser a store gives its first state. */
const pageOf = (workshop: Workshop, page = <RecordSheet />): string => {
  workshop.view.setState({ sheet: 'record' })
  for (const store of [workshop.view, workshop.records.store, workshop.exercise])
    Object.assign(store, { getInitialState: store.getState })
  return renderToStaticMarkup(<WorkshopProvider value={workshop}>{page}</WorkshopProvider>)
}

const wrong = { kind: 'number', value: 1e6 } as const

function practised(): Workshop {
  const workshop = workshopWith()
  const turns = (index: number) => bankQuestion('turns-worm', index)
  for (const index of [0, 1, 2]) answer(workshop, turns(index), { sureness: 2 })
  answer(workshop, bankQuestion('turns-wheel'), { reply: wrong, sureness: 3 })
  answer(workshop, bankQuestion('torque-total'), { reply: wrong, sureness: 1 })
  answer(workshop, bankQuestion('power-shaft'), { reply: null })
  return workshop
}

test('an empty record says so and leads to Predict', () => {
  const text = textOf(pageOf(workshopWith()))
  expect(text).toContain('Nothing is recorded yet.')
  expect(text).toContain('Take in a file')
  expect(text).not.toContain('Erase all')
})

test('what was put aside can be saved and erased where nothing else is there', () => {
  const text = textOf(pageOf(workshopWith(memory({ 'counterturn.records': '{' }))))
  expect(text).toContain('could not be read')
  expect(text).toContain('Save it to a file')
  expect(text).toContain('Erase all')
})

test('a browser that keeps nothing is told of above the answers', () => {
  const workshop = workshopWith(forbidding())
  answer(workshop, bankQuestion('turns-worm'))
  const text = textOf(pageOf(workshop))
  expect(text).toContain('does not let this page keep your record')
  expect(text.indexOf('does not let')).toBeLessThan(text.indexOf('Look at again'))
})

test('sure and wrong stands first, with what was said, what it is, and a way to be asked again', () => {
  const workshop = practised()
  const text = textOf(pageOf(workshop))
  const [first, second] = lookAgain(workshop.records.store.getState().answered)
  expect(first!.family).toBe('turns-wheel')
  expect(second!.family).toBe('torque-total')
  const title = (name: string) => FAMILIES.find((family) => family.name === name)!.title
  expect(text.indexOf(title('turns-wheel'))).toBeLessThan(text.indexOf(title('torque-total')))
  expect(text).toContain('sure 3, not yet')
  expect(text).toContain('You said 1000000 turns; it is')
  expect(text).toContain(`Ask me again : ${title('turns-wheel')}`)
})

test('what is asked just now is not told by what was answered before', () => {
  const workshop = practised()
  const question = bankQuestion('turns-wheel')
  const told = /You said 1000000 turns; it is/
  expect(textOf(pageOf(workshop))).toMatch(told)
  workshop.exercise.setState(asked(question), true)
  expect(textOf(pageOf(workshop))).not.toMatch(told)
  expect(textOf(pageOf(workshop))).toContain('You said 1000000 turns.')
})

test('every kind has its standing in words, and its last answers', () => {
  const text = textOf(pageOf(practised()))
  expect(text).toContain('Last answers: right, right, right settled')
  expect(text).toContain('Last answers: no prediction open')
  expect(text).toContain(`${FAMILIES.length - 4} not met yet`)
})

test('each level says how often it was right, where it pays best and what it pays', () => {
  const text = textOf(pageOf(practised())).replaceAll('\u00a0', ' ')
  expect(text).toContain('1 0 of 1, 0 % below 67 % 1 0')
  expect(text).toContain('2 3 of 3, 100 % 67 to 80 % 2 −2')
  expect(text).toContain('3 0 of 1, 0 % above 80 % 3 −6')
})

test('marks are off until somebody turns them on', () => {
  expect(pageOf(practised())).not.toContain('checked')
  const workshop = practised()
  workshop.records.store.setState({ marksOn: true })
  expect(pageOf(workshop)).toContain('checked')
})

test('neither sheet nor print ranks, adds up, praises or certifies, and no number is NaN', () => {
  const workshop = practised()
  workshop.records.store.setState({ nickname: 'Kim' })
  for (const html of [pageOf(workshop), summaryOf(workshop)]) {
    expect(html).not.toMatch(/NaN|Infinity|undefined|null/)
    expect(textOf(html)).not.toMatch(/certificate|score|total:|well done|!|streak|level up|badge/i)
  }
  expect(textOf(summaryOf(workshop))).toContain('My record, Kim')
})

const summaryOf = (workshop: Workshop): string => pageOf(workshop, <Summary />)

test('the print has what is settled, what is open, calibration and what to look at again', () => {
  const text = textOf(summaryOf(practised()))
  expect(text).toContain('settled')
  expect(text).toContain('open')
  expect(text).not.toContain('not met yet')
  expect(text).toContain('above 80')
  expect(text).toMatch(/\(sure 3\)/)
})

test('asking again puts the same kinds into Predict as a set, with numbers of its own', () => {
  const workshop = practised()
  const again = lookAgain(workshop.records.store.getState().answered)
  askAgain(workshop, again)
  const { source, set } = workshop.predict.getState()
  expect(workshop.view.getState()).toMatchObject({ way: 'predict', sheet: 'none' })
  expect(source).toBe('set')
  expect(set?.items.map(({ family }) => family)).toEqual(['turns-wheel', 'torque-total'])
  expect(set?.seed).toMatch(/^[0-9a-f]{8}$/)
  askAgain(workshop, again)
  expect(workshop.predict.getState().set?.seed).not.toBe(set?.seed)
})

const fileOf = (text: string, size = text.length) => ({
  name: 'my-record.json',
  size,
  text: () => Promise.resolve(text),
})

test('a file is taken in, added to what is there, and kept', async () => {
  const all = practised().records.store.getState()
  const keeper = memory()
  const workshop = workshopWith(keeper)
  answer(workshop, bankQuestion('turns-worm', 5), { reply: rightReply(bankQuestion('turns-worm', 5)) })
  const { records } = workshop
  expect((await takeInFile(records, fileOf(printRecords(all)))).outcome).toBe(
    '6 answers taken in from my-record.json.',
  )
  expect(records.store.getState().answered).toHaveLength(7)
  expect(workshopWith(keeper).records.store.getState().answered).toHaveLength(7)
  const twice = await takeInFile(records, fileOf(printRecords(all)))
  expect(twice.outcome).toContain('0 answers taken in')
  expect(twice.outcome).toContain('6 of them were there already')
  expect(records.store.getState().answered).toHaveLength(7)
})

test.each([
  ['no record', fileOf('[]'), /must be records/],
  ['too large', fileOf('', 7e6), /at most 6 MB, got 7 MB/],
  [
    'unreadable',
    { name: 'my-record.json', size: 1, text: () => Promise.reject(new Error('gone')) },
    /did not let itself be read/,
  ],
])('a file that is %s is refused in words, and the record stays', async (_, file, words) => {
  const { records } = practised()
  const { outcome, problems } = await takeInFile(records, file)
  expect(outcome).toBe('my-record.json was not taken in. The record is as it was.')
  expect(problems[0]?.message).toMatch(words)
  expect(records.store.getState().answered).toHaveLength(6)
})
