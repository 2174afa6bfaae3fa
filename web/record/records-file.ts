/** Records as text: JSON with its schema and version. What it prints, it reads back equal. */
import { readJson } from '../../sim/machine/json.ts'
import type { Problem } from '../../sim/machine/problem.ts'
import { told } from '../../sim/machine/told.ts'
import type { Answered, Passage, Records } from '../store/records.ts'
import { answeredProblems, isGroup, passageProblems } from './check-answered.ts'

const RECORDS_SCHEMA = 'counterturn-records'
const RECORDS_VERSION = 1
/** Browsers keep about this much for a page [characters] */
export const LONGEST_RECORDS = 6_000_000

export type RecordSettings = Pick<Records, 'nickname' | 'marksOn' | 'homePage' | 'account'>

/** What is recorded, without what the learner has set */
export type Recorded = Pick<Records, 'answered' | 'passed'>

export interface ReadRecords extends Recorded {
  /** Null where the text has none: exports do not. */
  readonly settings: RecordSettings | null
  readonly problems: readonly Problem[]
}

/** By id and in the order of time; what is in both is taken once. */
function mergedLists<Entry extends { readonly id: string; readonly time: string }>(
  some: readonly Entry[],
  more: readonly Entry[],
): readonly Entry[] {
  const known = new Set(some.map(({ id }) => id))
  const added: Entry[] = []
  for (const each of more) {
    if (known.has(each.id)) continue
    known.add(each.id)
    added.push(each)
  }
  if (added.length === 0) return some
  return [...some, ...added].toSorted((a, b) => (a.time < b.time ? -1 : a.time > b.time ? 1 : 0))
}

export const merged = (some: Recorded, more: Recorded): Recorded => ({
  answered: mergedLists(some.answered, more.answered),
  passed: mergedLists(some.passed, more.passed),
})

const NOTHING: Recorded = { answered: [], passed: [] }

const refused = (path: string, message: string): ReadRecords => ({
  ...NOTHING,
  settings: null,
  problems: [{ path, severity: 'error', message }],
})

const TOP = ['schema', 'version', 'answered', 'passed', 'settings']

function settingsFrom(value: unknown): RecordSettings | null {
  if (!isGroup(value)) return null
  const { nickname, marksOn, homePage, account } = value
  const texts = [nickname, homePage, account].map((text) =>
    typeof text === 'string' ? text.slice(0, 400) : '',
  )
  return { nickname: texts[0]!, marksOn: marksOn === true, homePage: texts[1]!, account: texts[2]! }
}

/** The entries that are what they should be; what the others fall short of goes to `problems`. */
function sound<Entry>(
  name: string,
  entries: readonly unknown[],
  faults: (path: string, entry: unknown) => Problem[],
  problems: Problem[],
): Entry[] {
  return entries.filter((entry, place): entry is Entry => {
    const wrong = faults(`${name}.${place}`, entry)
    problems.push(...wrong)
    return wrong.length === 0
  })
}

function recordsFrom(file: Readonly<Record<string, unknown>>): ReadRecords {
  const { schema, version, answered, passed = [], settings } = file
  if (schema !== RECORDS_SCHEMA) return refused('schema', `must be '${RECORDS_SCHEMA}', got ${told(schema)}`)
  if (version !== RECORDS_VERSION)
    return refused(
      'version',
      `must be ${RECORDS_VERSION}, got ${told(version)}; a newer copy of this program reads more`,
    )
  if (!Array.isArray(answered)) return refused('answered', `must be a list of answers, got ${told(answered)}`)
  if (!Array.isArray(passed)) return refused('passed', `must be a list of topics, got ${told(passed)}`)
  const problems: Problem[] = []
  const good = {
    answered: sound<Answered>('answered', answered, answeredProblems, problems),
    passed: sound<Passage>('passed', passed, passageProblems, problems),
  }
  for (const name of Object.keys(file).filter((each) => !TOP.includes(each)))
    problems.push({
      path: name,
      severity: 'warning',
      message: 'must be a field that is known here, and is not',
    })
  return { ...merged(NOTHING, good), settings: settingsFrom(settings), problems }
}

/** What a text says, as far as it is records; everything else by path. Never throws on the text. */
export function readRecords(text: string): ReadRecords {
  if (text.length > LONGEST_RECORDS)
    return refused('', `must be at most ${LONGEST_RECORDS} characters, got ${text.length}`)
  const json = readJson(text)
  if ('fault' in json) {
    const { line, column, message } = json.fault
    return refused('', `must be JSON; line ${line}, column ${column}: ${message}`)
  }
  if (!isGroup(json.value))
    return refused('', `must be records, a group of fields between { and }, got ${told(json.value)}`)
  return recordsFrom(json.value)
}

/** For the browser's own storage: in one line, with what the learner has set. */
export function keptText({ answered, passed, nickname, marksOn, homePage, account }: Records): string {
  const settings = { nickname, marksOn, homePage, account }
  return JSON.stringify({ schema: RECORDS_SCHEMA, version: RECORDS_VERSION, settings, answered, passed })
}

/** For a file: indented, without the nickname. */
export const printRecords = ({ answered, passed }: Recorded): string =>
  `${JSON.stringify({ schema: RECORDS_SCHEMA, version: RECORDS_VERSION, answered, passed }, null, 2)}\n`
