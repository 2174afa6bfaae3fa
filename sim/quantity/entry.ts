/**
 * Reads an answer as it is typed: '13.333', '10 1/3 turns', '20*2/3', '1/4 turn + 90 deg'. It is fetched with the
 * first question. Units are taken off before the sum is looked at, and nothing is evaluated but arithmetic.
 */
import { type EntryFault, Unreadable } from './entry-fault.ts'
import { plainEntry } from './entry-spelling.ts'
import { sumValue } from './entry-sum.ts'
import { type Unit, splitUnit, unitNamed } from './entry-units.ts'

export type Entry = { readonly value: number } | { readonly code: EntryFault; readonly message: string }

const LARGEST_VALUE = 1e12

const EXAMPLES: Readonly<Record<string, string>> = {
  angle: 'a number such as 12, 13.5 or 10 1/3',
  temperature: 'a temperature such as 30 or 30.4',
  part: 'a number such as 62 or 0.62',
}
const exampleFor = ({ kind }: Unit): string => EXAMPLES[kind] ?? 'a number such as 12, 0.39 or 5/6'

/** Ends of terms: + and - that join, outside brackets. Not the sign of a number, nor of an exponent of ten. */
function terms(text: string): string[] {
  const parts: string[] = []
  let depth = 0
  let from = 0
  for (let i = 0; i < text.length; i++) {
    const sign = text[i]!
    if (sign === '(') depth += 1
    else if (sign === ')') depth -= 1
    else if ((sign === '+' || sign === '-') && depth === 0) {
      const before = text.slice(from, i).trim()
      if (before === '' || /[-+*/^]$|\d[eE]$/.test(before)) continue
      parts.push(before)
      from = i
    }
  }
  return [...parts, text.slice(from).trim()]
}

/** '(20 turns)' without its brackets, where they hold all of it. */
function unbracketed(text: string): string {
  if (!/^\([^()]*\)$/.test(text)) return text
  return text.slice(1, -1).trim()
}

function unitFault(own: Unit, came: Unit): Unreadable {
  const asked = own.kind === 'plain' ? 'without a unit' : `in ${own.words}`
  const hint = own.kind === 'temperature' && came.kind === 'rise' ? '; kelvins are read for a rise only' : ''
  return new Unreadable('wrong-unit', `The answer is asked ${asked}; ${came.words} came${hint}.`)
}

/** A rise can be told in degrees Celsius too, a temperature in mere degrees, and a plain number in per cent. */
function factorTo(own: Unit, came: Unit): number | null {
  if (came.kind === own.kind) return came.size / own.size
  if (own.kind === 'rise' && came.kind === 'temperature') return 1
  if (own.kind === 'temperature' && came.words === 'degrees') return 1
  if (own.kind === 'plain' && came.kind === 'part') return 0.01
  if (own.kind === 'part' && came.kind === 'plain') return 1
  return null
}

function inOwnUnit(value: number, came: Unit | null, own: Unit): number {
  if (came === null) return own.kind === 'part' && Math.abs(value) <= 1 ? value * 100 : value
  if (came.kind === own.kind && came.size === own.size) return value
  const factor = factorTo(own, came)
  if (factor === null) throw unitFault(own, came)
  return value * factor
}

function termValue(sum: string, came: Unit | null, own: Unit): number {
  if (sum === '' && came) throw new Unreadable('empty', `Write a number before the unit; ${came.words} came.`)
  return inOwnUnit(sumValue(sum), came, own)
}

function valueOf(text: string, own: Unit): number {
  const plain = unbracketed(text)
  const parts = terms(plain).map(splitUnit)
  const named = parts.flatMap(({ unit }) => unit ?? [])
  if (named.length === 0 || (named.length === 1 && parts.at(-1)!.unit)) {
    const { sum, unit } = splitUnit(plain)
    return termValue(sum, unit, own)
  }
  const [first] = named
  const other = named.find(({ kind }) => kind !== first!.kind)
  if (other) {
    throw new Unreadable('mixed-units', `Write one kind of unit; ${first!.words} and ${other.words} came.`)
  }
  return parts.reduce((total, { sum, unit }) => total + termValue(sum, unit ?? own, own), 0)
}

/**
 * The number that a text means in the unit of its question; a number without a unit is taken to be in it.
 * unit - base unit of the answer: 'turn', 'deg', 'r/min', 'N m', '1' ...
 * Nothing is thrown for any text; a unit that is not in the table is a mistake of the program.
 */
export function readEntry(text: string, unit: string): Entry {
  const own = unitNamed(unit)
  try {
    const value = valueOf(plainEntry(text, exampleFor(own)), own)
    if (Math.abs(value) <= LARGEST_VALUE) return { value: value === 0 ? 0 : value }
    return { code: 'too-large', message: 'Write a smaller number; this one is above a million million.' }
  } catch (error) {
    if (error instanceof Unreadable) return { code: error.code, message: error.message }
    throw error
  }
}
