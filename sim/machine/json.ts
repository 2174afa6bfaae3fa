/**
 * Reads JSON as JSON.parse does, but tells in plain words and by line and column what is wrong, and takes a
 * field that is written twice for a mistake, so that neither is lost silently.
 */

export interface JsonFault {
  /** From 1 */
  readonly line: number
  /** From 1, in characters */
  readonly column: number
  readonly message: string
}

export type ReadJson = { readonly value: unknown } | { readonly fault: JsonFault }

/** Far deeper than any machine, and shallow enough for any stack. */
const DEEPEST = 32

/** Thrown inside this file only. */
class Fault extends Error {
  readonly at: number
  constructor(at: number, message: string) {
    super(message)
    this.at = at
  }
}

interface Reader {
  readonly text: string
  at: number
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const WORD = /[A-Za-z_]+/y
const WORDS: ReadonlyMap<string, unknown> = new Map([
  ['true', true],
  ['false', false],
  ['null', null],
])

function skipSpace(reader: Reader): string {
  while (' \t\n\r'.includes(reader.text.charAt(reader.at)) && reader.at < reader.text.length) reader.at++
  return reader.text.charAt(reader.at)
}

const found = (reader: Reader): string => {
  const code = reader.text.codePointAt(reader.at)
  return code === undefined ? 'the end of the text' : `'${String.fromCodePoint(code)}'`
}

function matchHere(reader: Reader, pattern: RegExp): string {
  pattern.lastIndex = reader.at
  return pattern.exec(reader.text)?.[0] ?? ''
}

function readString(reader: Reader): string {
  const start = reader.at
  for (let at = start + 1; at < reader.text.length; at++) {
    const character = reader.text.charAt(at)
    if (character === '\\') at++
    else if (character < ' ') throw new Fault(at, 'a text must end with " on its own line')
    else if (character === '"') {
      reader.at = at + 1
      return unescaped(reader.text.slice(start, reader.at), start)
    }
  }
  throw new Fault(start, 'a text starts here and has no " at its end')
}

const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/g

function unescaped(quoted: string, start: number): string {
  if (quoted.replace(ESCAPE, '').includes('\\')) {
    throw new Fault(
      start,
      'a text has a \\ that is not one of \\" \\\\ \\/ \\b \\f \\n \\r \\t or \\u with four digits',
    )
  }
  return String(JSON.parse(quoted))
}

function readWord(reader: Reader): unknown {
  const word = matchHere(reader, WORD)
  if (!WORDS.has(word)) {
    throw new Fault(
      reader.at,
      `a value is needed: a number, a text in ", a list or a group; got ${word || found(reader)}`,
    )
  }
  reader.at += word.length
  return WORDS.get(word)
}

function readNumber(reader: Reader): number {
  const number = matchHere(reader, NUMBER)
  const end = reader.at + number.length
  if (number === '' || /[\d.+\w-]/.test(reader.text.charAt(end))) {
    throw new Fault(
      reader.at,
      'a number is written as 12, 0.5 or 2.2e-8, with a digit before and after the point',
    )
  }
  reader.at = end
  return Number(number)
}

/** Reads what stands between brackets, item by item, with the commas. */
function readItems(reader: Reader, close: string, readItem: () => void): void {
  reader.at++
  if (skipSpace(reader) === close) {
    reader.at++
    return
  }
  for (;;) {
    readItem()
    const next = skipSpace(reader)
    if (next !== ',' && next !== close) {
      throw new Fault(reader.at, `a comma or ${close} is needed here, got ${found(reader)}`)
    }
    reader.at++
    if (next === close) return
    if (skipSpace(reader) === close) throw new Fault(reader.at, `there must be no comma before ${close}`)
  }
}

function readList(reader: Reader, depth: number): unknown[] {
  const items: unknown[] = []
  readItems(reader, ']', () => items.push(readValue(reader, depth)))
  return items
}

function readGroup(reader: Reader, depth: number): object {
  const entries = new Map<string, unknown>()
  readItems(reader, '}', () => {
    const start = reader.at
    if (skipSpace(reader) !== '"') {
      throw new Fault(reader.at, `the name of a field in " is needed here, got ${found(reader)}`)
    }
    const name = readString(reader)
    if (entries.has(name)) throw new Fault(start, `the field "${name}" is written twice in one group`)
    if (skipSpace(reader) !== ':') {
      throw new Fault(reader.at, `a : is needed after the name of a field, got ${found(reader)}`)
    }
    reader.at++
    entries.set(name, readValue(reader, depth))
  })
  return Object.fromEntries(entries)
}

function readValue(reader: Reader, depth: number): unknown {
  const first = skipSpace(reader)
  if ((first === '{' || first === '[') && depth === DEEPEST) {
    throw new Fault(reader.at, `groups and lists must be at most ${DEEPEST} deep`)
  }
  if (first === '{') return readGroup(reader, depth + 1)
  if (first === '[') return readList(reader, depth + 1)
  if (first === '"') return readString(reader)
  return /[-\d.+]/.test(first) ? readNumber(reader) : readWord(reader)
}

function placeOf(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at).split('\n')
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 }
}

export function readJson(text: string): ReadJson {
  // a byte order mark at the start is common in files saved by other programs
  const reader: Reader = { text, at: text.startsWith('\ufeff') ? 1 : 0 }
  try {
    const value = readValue(reader, 0)
    skipSpace(reader)
    if (reader.at === text.length) return { value }
    throw new Fault(reader.at, `the text must end after the last bracket, got ${found(reader)}`)
  } catch (error) {
    if (!(error instanceof Fault)) throw error
    return { fault: { ...placeOf(text, error.at), message: error.message } }
  }
}
