/**
 * A sheet in a few characters, printed on it and on its answers: what it was made of, and a check. Signs and readings
 * after D. Crockford, Base 32, from memory: no I, L, O, U; O is read as 0, I and L as 1. The check is a CRC of ten
 * bits, polynomial 0x233, which finds every single wrong character and every swap of two neighbours.
 */
import { FAMILIES } from '../../sim/question/bank.ts'
import { hash32 } from '../../sim/question/draw.ts'
import type { Level } from '../../sim/question/family.ts'
import type { Wanted } from './wanted.ts'

const SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'
const SIGN_BITS = 5
const CHECK_BITS = 10
const VERSION_BITS = 6
const POLYNOMIAL = 0x233
/** Of the form of the code itself */
const FORM = 1
const LETTERS = 'abcdefghijklmnopqrstuvwxyz-'
const WIDE = `${LETTERS}0123456789`
export const LONGEST_SEED = 15
/** Of one family in a row */
const LONGEST_RUN = 8
export const MOST_SHEETS = 40

/** A seed that a code can carry: short, and the same to everybody who hears it. */
export const isSeed = (seed: string): boolean =>
  seed.length > 0 && seed.length <= LONGEST_SEED && [...seed].every((sign) => WIDE.includes(sign))

export type CodedFrom =
  | {
      readonly kind: 'lesson'
      readonly id: number
      /** With the lesson's own numbers, else with others by the seed */
      readonly own: boolean
      readonly print: number
    }
  | { readonly kind: 'families'; readonly wanted: readonly Wanted[] }
  | {
      readonly kind: 'machine'
      readonly starts: number
      readonly teeth: number
      readonly right: boolean
      readonly wanted: readonly Wanted[]
    }

export interface Coded {
  readonly bank: number
  /** Without the number of the version */
  readonly seed: string
  /** 0 is a sheet that has no versions. */
  readonly version: number
  readonly from: CodedFrom
}

const KINDS = ['families', 'lesson', 'machine'] as const
const ID_BITS = 15
const PRINT_BITS = 10

export const lessonId = (id: string): number => hash32(id) >>> (32 - ID_BITS)
/** Tells a lesson from the same one with other questions, should it be changed one day. */
export const printOf = (lines: readonly string[]): number => hash32(lines.join('\n')) >>> (32 - PRINT_BITS)

type Bits = number[]

function put(bits: Bits, value: number, width: number): void {
  for (let i = width - 1; i >= 0; i--) bits.push(Math.floor(value / 2 ** i) % 2)
}

function check(bits: readonly number[]): number {
  let rest = 0
  for (const bit of bits) {
    const high = (rest >> (CHECK_BITS - 1)) & 1
    rest = (rest << 1) & (2 ** CHECK_BITS - 1)
    if (high !== bit) rest ^= POLYNOMIAL
  }
  return rest
}

interface Run extends Wanted {
  readonly length: number
}

function runsOf(all: readonly Wanted[]): readonly Run[] {
  const runs: Run[] = []
  for (const { family, level } of all) {
    const last = runs.at(-1)
    if (last?.family === family && last.level === level && last.length < LONGEST_RUN)
      runs[runs.length - 1] = { ...last, length: last.length + 1 }
    else runs.push({ family, level, length: 1 })
  }
  return runs
}

const FAMILY_BITS = 6
const LEVEL_BITS = 2
const LENGTH_BITS = 3
const END_OF_RUNS = 63

/** One level for all, or 0 and a level for each run; a run of one takes a bit instead of its length. */
function putWanted(bits: Bits, all: readonly Wanted[]): void {
  const levels = new Set(all.map(({ level }) => level))
  const common = levels.size === 1 ? [...levels][0]! : 0
  put(bits, common, LEVEL_BITS)
  for (const { family, level, length } of runsOf(all)) {
    const place = FAMILIES.findIndex(({ name }) => name === family)
    put(bits, place, FAMILY_BITS)
    if (common === 0) put(bits, level, LEVEL_BITS)
    put(bits, length > 1 ? 1 : 0, 1)
    if (length > 1) put(bits, length - 1, LENGTH_BITS)
  }
  put(bits, END_OF_RUNS, FAMILY_BITS)
}

function putSeed(bits: Bits, seed: string): void {
  const narrow = [...seed].every((sign) => LETTERS.includes(sign))
  put(bits, narrow ? 0 : 1, 1)
  put(bits, seed.length, 4)
  for (const sign of seed) put(bits, WIDE.indexOf(sign), narrow ? 5 : 6)
}

function putFrom(bits: Bits, from: CodedFrom): void {
  if (from.kind === 'lesson') {
    put(bits, from.id, ID_BITS)
    put(bits, from.own ? 1 : 0, 1)
    put(bits, from.print, PRINT_BITS)
    return
  }
  if (from.kind === 'machine') {
    put(bits, from.starts, 4)
    put(bits, from.teeth, 9)
    put(bits, from.right ? 1 : 0, 1)
  }
  putWanted(bits, from.wanted)
}

/** In groups that the eye can hold */
const grouped = (signs: string): string => signs.replaceAll(/.{4}(?=.)/g, '$&-')

export function writeSheetCode({ bank, seed, version, from }: Coded): string {
  const bits: Bits = []
  put(bits, FORM, 2)
  put(bits, KINDS.indexOf(from.kind), 2)
  put(bits, bank, 5)
  put(bits, version > 0 ? 1 : 0, 1)
  if (version > 0) put(bits, version, VERSION_BITS)
  putSeed(bits, seed)
  putFrom(bits, from)
  while ((bits.length + CHECK_BITS) % SIGN_BITS > 0) bits.push(0)
  put(bits, check(bits), CHECK_BITS)
  let signs = ''
  for (let i = 0; i < bits.length; i += SIGN_BITS)
    signs += SIGNS[bits.slice(i, i + SIGN_BITS).reduce((sum, bit) => 2 * sum + bit, 0)]!
  return grouped(signs)
}

/** Takes numbers from a row of bits; what is past its end reads as null. */
function taker(bits: readonly number[]): (width: number) => number {
  let at = 0
  return (width) => {
    const piece = bits.slice(at, at + width)
    at += width
    return piece.length < width ? Number.NaN : piece.reduce((sum, bit) => 2 * sum + bit, 0)
  }
}

function takeSeed(take: (width: number) => number): string {
  const width = take(1) === 0 ? 5 : 6
  const length = take(4)
  return Array.from({ length }, () => WIDE[take(width)] ?? '?').join('')
}

function takeWanted(take: (width: number) => number): readonly Wanted[] | null {
  const common = take(LEVEL_BITS)
  const all: Wanted[] = []
  for (;;) {
    const place = take(FAMILY_BITS)
    if (place === END_OF_RUNS) return all
    const level = common === 0 ? take(LEVEL_BITS) : common
    const length = take(1) === 0 ? 1 : take(LENGTH_BITS) + 1
    const family = FAMILIES[place]?.name
    if (family === undefined || !(level >= 1 && level <= 3) || !(length >= 1)) return null
    all.push(...Array.from({ length }, () => ({ family, level: level as Level })))
  }
}

function takeFrom(take: (width: number) => number, kind: (typeof KINDS)[number]): CodedFrom | null {
  if (kind === 'lesson') return { kind, id: take(ID_BITS), own: take(1) === 1, print: take(PRINT_BITS) }
  const machine = kind === 'machine' ? { starts: take(4), teeth: take(9), right: take(1) === 1 } : null
  const wanted = takeWanted(take)
  if (!wanted) return null
  return machine ? { kind: 'machine', ...machine, wanted } : { kind: 'families', wanted }
}

const DAMAGED = 'This sheet code is not whole: look at each character once more.'
const OTHER =
  'This sheet code was made by another version of the program. Open the link of the sheet instead.'

/** Read as it is typed: any case, any gaps, letters that look like digits. */
function bitsOf(text: string): number[] | null {
  const signs = text.toUpperCase().replace(/[\s-]/g, '').replaceAll('O', '0').replace(/[IL]/g, '1')
  const bits: Bits = []
  for (const sign of signs) {
    const value = SIGNS.indexOf(sign)
    if (value < 0) return null
    put(bits, value, SIGN_BITS)
  }
  return bits
}

export type ReadCode = { readonly coded: Coded } | { readonly problem: string }

/** `bank` - the version of the bank that this program has; codes of other ones are not read. */
export function readSheetCode(text: string, bank: number): ReadCode {
  const bits = bitsOf(text.slice(0, 400))
  if (!bits || bits.length <= CHECK_BITS) return { problem: DAMAGED }
  const content = bits.slice(0, -CHECK_BITS)
  if (check(content) !== taker(bits.slice(-CHECK_BITS))(CHECK_BITS)) return { problem: DAMAGED }
  const take = taker(content)
  const form = take(2)
  const kind = KINDS[take(2)]
  const coded = { bank: take(5), version: take(1) === 0 ? 0 : take(VERSION_BITS), seed: takeSeed(take) }
  if (form !== FORM || !kind || coded.bank !== bank) return { problem: OTHER }
  const from = takeFrom(take, kind)
  if (!from || !isSeed(coded.seed) || coded.version > MOST_SHEETS) return { problem: DAMAGED }
  return { coded: { ...coded, from } }
}
