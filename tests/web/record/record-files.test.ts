import fc from 'fast-check'
import { expect, test } from 'vitest'
import { recordCsv } from '../../../web/record/record-csv.ts'
import { type Recorded, merged, printRecords, readRecords } from '../../../web/record/records-file.ts'
import type { Answered } from '../../../web/store/records.ts'
import { RUN, answer, bankQuestion, familyOfKind, workshopWith } from './answers.ts'

const SECOND = '22222222-2222-4222-8222-222222222222'

/** Of answers alone */
const recorded = (answered: readonly Answered[]): Recorded => ({ answered, passed: [] })

function three(): readonly Answered[] {
  const workshop = workshopWith()
  answer(workshop, bankQuestion('turns-worm'), { text: '20', sureness: 3 })
  answer(workshop, bankQuestion(familyOfKind('choice')), { reply: null })
  answer(workshop, bankQuestion(familyOfKind('order')), { sureness: 1 })
  return workshop.records.store.getState().answered
}

/** Reads RFC 4180 by its grammar: fields between commas, a quoted one holds anything. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [[]]
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/y
  while (field.lastIndex < text.length) {
    const found = field.exec(text)
    if (!found) throw new Error(`no field at ${field.lastIndex}`)
    rows.at(-1)!.push(found[1] === undefined ? found[2]! : found[1].replaceAll('""', '"'))
    if (found[3] === '\r\n' && field.lastIndex < text.length) rows.push([])
  }
  return rows
}

const cell = (rows: readonly string[][], row: number, heading: string): string | undefined =>
  rows[row]?.[rows[0]!.indexOf(heading)]

test('a file that is exported is read back equal, without a problem', () => {
  const passage = { id: RUN, time: '2026-05-04T09:30:00.000Z', run: RUN, lesson: 'a', beat: 'b', title: 'B' }
  const all = { answered: three(), passed: [passage, { ...passage, id: SECOND, beat: '' }] }
  const read = readRecords(printRecords(all))
  expect(read).toEqual({ ...all, settings: null, problems: [] })
  expect(printRecords(read)).toBe(printRecords(all))
  const { passed, problems } = readRecords(printRecords({ ...all, passed: [{ ...passage, run: '1' }] }))
  expect(passed).toEqual([])
  expect(problems[0]?.path).toBe('passed.0.run')
})

test('no export holds the nickname', () => {
  const workshop = workshopWith()
  workshop.records.store.setState({ nickname: 'Kim of row three' })
  const { answered } = workshop.records.store.getState()
  expect(printRecords(recorded(answered)) + recordCsv(answered)).not.toContain('Kim')
})

test('an answer that is taken in twice is there once', () => {
  const all = recorded(three())
  expect(merged(all, readRecords(printRecords(all)))).toEqual(all)
  const twice = recorded([...all.answered, ...all.answered])
  expect(merged(recorded([]), twice).answered).toHaveLength(3)
})

test.each<[string, string, RegExp]>([
  ['', '', /must be JSON/],
  ['{"schema":"other"}', 'schema', /must be 'counterturn-records', got the text 'other'/],
  ['{"schema":"counterturn-records","version":9,"answered":[]}', 'version', /must be 1, got 9/],
  ['{"schema":"counterturn-records","version":1}', 'answered', /must be a list of answers, got nothing/],
  ['[1]', '', /must be records/],
])('%j is refused by path', (text, path, message) => {
  const { answered, problems } = readRecords(text)
  expect(answered).toEqual([])
  expect(problems).toHaveLength(1)
  expect(problems[0]?.path).toBe(path)
  expect(problems[0]?.message).toMatch(message)
})

const tooLong = 'x'.repeat(5000)

test.each<[keyof Answered, unknown, RegExp]>([
  ['id', '12', /answered\.0\.id/],
  ['time', '2026-02-30', /time such as/],
  ['time', '2026-13-01T00:00:00Z', /time such as/],
  ['asker', 'somebody', /one of practice, machine, set, lesson/],
  ['level', 4, /1, 2 or 3/],
  ['right', 'yes', /true, false or null/],
  ['value', '20', /a number or null for number/],
  ['answer', '20', /a number for number/],
  ['seconds', -1, /a number from 0/],
  ['given', [1], /by name/],
  ['given', { z1: null }, /by name/],
  ['unit', 'parsec', /a unit of the bank/],
  ['unit', 'toString', /a unit of the bank/],
  ['text', tooLong, /at most 4000 characters/],
])('an answer whose %s is wrong is left out and told', (field, value, words) => {
  const [first, second] = three()
  const text = printRecords(recorded([{ ...first!, [field]: value }, second!]))
  const { answered, problems } = readRecords(text)
  expect(answered).toEqual([second])
  expect(problems.map(({ path, message }) => `${path} ${message}`).join()).toMatch(words)
})

test('no text makes the reader throw', () => {
  const whole = printRecords(recorded(three()))
  fc.assert(
    fc.property(fc.nat(whole.length), fc.string({ maxLength: 5 }), fc.nat(20), (at, put, cut) => {
      readRecords(whole.slice(0, at) + put + whole.slice(at + cut))
    }),
    { numRuns: 300 },
  )
})

test('the table has a header, one row for each answer and every number in full', () => {
  const [first] = three()
  const rows = readCsv(recordCsv(three()))
  expect(rows).toHaveLength(4)
  for (const row of rows) expect(row).toHaveLength(rows[0]!.length)
  expect(cell(rows, 1, 'question')).toBe(first!.text)
  expect(Number(cell(rows, 1, 'allowed off'))).toBe(first!.allowed)
  expect(cell(rows, 1, 'parameters')).toBe(
    `z1=${first!.given['z1']} z2=${first!.given['z2']} N=${first!.given['N']}`,
  )
  expect(cell(rows, 2, 'verdict')).toBe('no prediction')
  expect(cell(rows, 2, 'read as')).toBe('')
})

test.each([
  ['=1+1', "'=1+1"],
  ['+cmd|x', "'+cmd|x"],
  ['-2+3', "'-2+3"],
  ['@sum', "'@sum"],
  ['\tx', "'\tx"],
  ['-5', '-5'],
  ['+1.5e3', '+1.5e3'],
  ['say "20", or\r\nmore', 'say "20", or\r\nmore'],
  ['½ turn', '½ turn'],
])('the cell %j is written as %j', (raw, expected) => {
  const rows = readCsv(recordCsv([{ ...three()[0]!, raw }]))
  expect(cell(rows, 1, 'answered')).toBe(expected)
})

test('any text comes back from the table as it was, but for the apostrophe', () => {
  const [first] = three()
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      const rows = readCsv(recordCsv([{ ...first!, text }]))
      expect(rows).toHaveLength(2)
      expect([text, `'${text}`]).toContain(cell(rows, 1, 'question'))
    }),
  )
})
