/** The record as files, out and in. Nothing is sent: they go where the browser saves what it is given. */
import type { Problem } from '../../sim/machine/problem.ts'
import { saveFile } from '../file/save-file.ts'
import type { ReadableFile } from '../file/open-save.ts'
import type { RecordStore } from '../store/records.ts'
import { browserKeeper, kept } from '../file/storage.ts'
import { DAMAGED_KEY } from './keep-records.ts'
import { randomId } from './random-id.ts'
import { recordCsv } from './record-csv.ts'
import { LONGEST_RECORDS, merged, printRecords, readRecords } from './records-file.ts'
import { passageStatements } from './xapi-passages.ts'
import { statements } from './xapi.ts'

export type RecordFormat = 'csv' | 'json' | 'xapi'

const FILE_NAMES: Readonly<Record<RecordFormat, string>> = {
  csv: 'my-record.csv',
  json: 'my-record.json',
  xapi: 'my-record-xapi.json',
}

/** The random name under which these records stand in xAPI: the same in every file, until they are erased. */
function accountOf({ store }: RecordStore): string {
  const { account } = store.getState()
  if (account !== '') return account
  const drawn = randomId()
  store.setState({ account: drawn })
  return drawn
}

function contentOf(records: RecordStore, format: RecordFormat): string {
  const now = records.store.getState()
  const { answered, passed, homePage, marksOn } = now
  if (format === 'csv') return recordCsv(answered)
  if (format === 'json') return printRecords(now)
  const owner = { homePage, marksOn, account: accountOf(records) }
  return `${JSON.stringify([...statements(answered, owner), ...passageStatements(passed, owner)], null, 2)}\n`
}

export function saveRecord(records: RecordStore, format: RecordFormat): string {
  const type = format === 'csv' ? 'text/csv;charset=utf-8' : 'application/json'
  saveFile(FILE_NAMES[format], type, contentOf(records, format))
  return `Saved as ${FILE_NAMES[format]}.`
}

/** What could not be read back, as it was. */
export function saveDamaged(): void {
  saveFile('my-record-damaged.txt', 'text/plain;charset=utf-8', kept(browserKeeper(), DAMAGED_KEY) ?? '')
}

export interface TakenIn {
  readonly outcome: string
  readonly problems: readonly Problem[]
}

async function textOf(file: ReadableFile): Promise<string | null> {
  try {
    return await file.text()
  } catch {
    return null
  }
}

const counted = (count: number): string => (count === 1 ? '1 answer' : `${count} answers`)

/** Takes the answers of a file into the record; those that are there already are left as they are. */
export async function takeInFile({ store }: RecordStore, file: ReadableFile): Promise<TakenIn> {
  const refused = `${file.name} was not taken in. The record is as it was.`
  const problem = (message: string): TakenIn => ({
    outcome: refused,
    problems: [{ path: '', severity: 'error', message }],
  })
  if (file.size > LONGEST_RECORDS)
    return problem(
      `must be a file of at most ${LONGEST_RECORDS / 1e6} MB, got ${Math.ceil(file.size / 1e6)} MB`,
    )
  const text = await textOf(file)
  if (text === null)
    return problem('must be a file that this browser may read, and it did not let itself be read')
  const { problems, ...read } = readRecords(text)
  if (read.answered.length === 0 && problems.length > 0) return { outcome: refused, problems }
  const before = store.getState()
  const after = merged(before, read)
  store.setState(after)
  const added = after.answered.length - before.answered.length
  const known = read.answered.length - added
  const rest = known > 0 ? `; ${known} of them ${known === 1 ? 'was' : 'were'} there already` : ''
  return { outcome: `${counted(added)} taken in from ${file.name}${rest}.`, problems }
}
