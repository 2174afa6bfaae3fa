/** Answers as a table: comma-separated values after RFC 4180, UTF-8, numbers with a point and in full precision. */
import type { Answered } from '../store/records.ts'
import { verdictOf } from './progress.ts'

type Cell = string | number | null

const COLUMNS: readonly (readonly [heading: string, cell: (answered: Answered) => Cell])[] = [
  ['time', ({ time }) => time],
  ['asked by', ({ asker }) => asker],
  ['lesson', ({ lesson }) => lesson],
  ['family', ({ family }) => family],
  ['level', ({ level }) => level],
  ['question', ({ text }) => text],
  [
    'parameters',
    ({ given }) =>
      Object.entries(given)
        .map((each) => each.join('='))
        .join(' '),
  ],
  ['kind', ({ kind }) => kind],
  ['unit', ({ unit }) => unit],
  ['answered', ({ raw }) => raw],
  ['read as', ({ value }) => value],
  ['right answer', ({ answer }) => answer],
  ['allowed off', ({ allowed }) => allowed],
  ['verdict', verdictOf],
  ['slip', ({ cause }) => cause],
  ['how sure', ({ sureness }) => sureness],
  ['own count', ({ ownCount }) => ownCount],
  ['seconds', ({ seconds }) => seconds],
  ['why asked', ({ why }) => why],
  ['bank', ({ bank }) => bank],
  ['seed', ({ seed }) => seed],
  ['index', ({ index }) => index],
  ['run', ({ run }) => run],
  ['id', ({ id }) => id],
]

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i

/** A text that a table program would take for a formula is told to be a text, by an apostrophe. */
const harmless = (text: string): string =>
  /^[=+\-@\t\r]/.test(text) && !NUMBER.test(text) ? `'${text}` : text

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

const written = (cell: Cell): string => quoted(harmless(cell === null ? '' : String(cell)))

export function recordCsv(answered: readonly Answered[]): string {
  const lines = [
    COLUMNS.map(([heading]) => written(heading)),
    ...answered.map((each) => COLUMNS.map(([, cell]) => written(cell(each)))),
  ]
  return lines.map((cells) => `${cells.join(',')}\r\n`).join('')
}
