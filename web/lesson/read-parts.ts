/**
 * Reading the parts of a lesson file, which anybody may have written: whatever is wrong becomes a problem with its
 * path, and a value to go on with.
 */
import { ownValue } from '../../sim/machine/path.ts'
import type { Problem } from '../../sim/machine/problem.ts'
import { keptText, told } from '../../sim/machine/told.ts'

export interface Reading {
  readonly problems: Problem[]
}

export function refuse({ problems }: Reading, path: string, message: string): void {
  problems.push({ path, severity: 'error', message })
}

const expected = (reading: Reading, path: string, requirement: string, value: unknown): void =>
  refuse(reading, path, `must be ${requirement}, got ${told(value)}`)

/** A group of fields at a path, with those of it that are known; the others are named and left out. */
export interface Group {
  readonly reading: Reading
  readonly path: string
  readonly value: unknown
}

export function readGroup(
  reading: Reading,
  path: string,
  value: unknown,
  known: readonly string[] | null,
): Group {
  const isGroup = typeof value === 'object' && value !== null && !Array.isArray(value)
  if (!isGroup) expected(reading, path, 'a group of fields', value)
  else if (known)
    for (const key of Object.keys(value).filter((each) => !known.includes(each)))
      reading.problems.push({
        path: inside(path, key),
        severity: 'warning',
        message: `is not known here and is left out; it was ${keptText(ownValue(value, key))}`,
      })
  return { reading, path, value: isGroup ? value : {} }
}

export const inside = (path: string, key: string | number): string =>
  path === '' ? String(key) : `${path}.${key}`

export const has = ({ value }: Group, key: string): boolean => ownValue(value, key) !== undefined

export const valueIn = ({ value }: Group, key: string): unknown => ownValue(value, key)

export function textIn(
  group: Group,
  key: string,
  { least = 1, most, plain }: { least?: number; most: number; plain?: string },
): string {
  const value = valueIn(group, key)
  if (value === undefined && plain !== undefined) return plain
  if (typeof value === 'string' && value.length >= least && value.length <= most) return value
  const requirement = least === 0 ? `a text of at most ${most}` : `a text of ${least} to ${most}`
  const came = typeof value === 'string' ? `one of ${value.length}` : told(value)
  refuse(group.reading, inside(group.path, key), `must be ${requirement} characters, got ${came}`)
  return ''
}

export function numberIn(
  group: Group,
  key: string,
  { least, most, whole = false }: { least: number; most: number; whole?: boolean },
): number {
  const value = valueIn(group, key)
  const fits = typeof value === 'number' && value >= least && value <= most
  if (fits && (!whole || Number.isInteger(value))) return value
  const kind = whole ? 'a whole number' : 'a number'
  expected(group.reading, inside(group.path, key), `${kind} from ${least} to ${most}`, value)
  return least
}

export function yesNoIn(group: Group, key: string): boolean {
  const value = valueIn(group, key) ?? false
  if (typeof value !== 'boolean') expected(group.reading, inside(group.path, key), 'true or false', value)
  return value === true
}

export function oneIn<T>(group: Group, key: string, among: readonly T[], plain?: T): T {
  const value = valueIn(group, key)
  if (value === undefined && plain !== undefined) return plain
  const found = among.find((each) => each === value)
  if (found === undefined)
    expected(group.reading, inside(group.path, key), `one of ${among.map(String).join(', ')}`, value)
  return found ?? among[0]!
}

/** Each item read by itself; a list that is left out is an empty one. */
export function listIn<T>(
  group: Group,
  key: string,
  { least = 0, most, items }: { least?: number; most: number; items: string },
  item: (reading: Reading, path: string, value: unknown) => T,
): readonly T[] {
  const { reading, path } = group
  const value = valueIn(group, key) ?? []
  const at = inside(path, key)
  if (Array.isArray(value) && value.length >= least && value.length <= most)
    return value.map((each: unknown, place) => item(reading, inside(at, place), each))
  const requirement = least === 0 ? `a list of at most ${most}` : `a list of ${least} to ${most}`
  expected(reading, at, `${requirement} ${items}`, value)
  return []
}

/** A text that stands in a list by itself. */
export function textItem(reading: Reading, path: string, value: unknown, most: number): string {
  if (typeof value === 'string' && value.length > 0 && value.length <= most) return value
  expected(reading, path, `a text of 1 to ${most} characters`, value)
  return ''
}
