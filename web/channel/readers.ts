/**
 * Readers of values that anybody may have sent: what is right comes back as a clean copy, anything else as undefined.
 * Fields that are not asked for are left out.
 */
import { ownValue } from '../../sim/machine/path.ts'

export type Read<T> = (value: unknown) => T | undefined

export const oneOf =
  <T>(all: readonly T[]): Read<T> =>
  (value) =>
    all.find((each) => each === value)

export const yesNo: Read<boolean> = oneOf([true, false])

export const number =
  (least: number, most: number): Read<number> =>
  (value) =>
    typeof value === 'number' && value >= least && value <= most ? value : undefined

export const whole =
  (least: number, most: number): Read<number> =>
  (value) =>
    typeof value === 'number' && Number.isSafeInteger(value) && value >= least && value <= most
      ? value
      : undefined

/** A text of at least one and at most so many characters */
export const text =
  (most: number): Read<string> =>
  (value) =>
    typeof value === 'string' && value.length > 0 && value.length <= most ? value : undefined

export const orNull =
  <T>(read: Read<T>): Read<T | null> =>
  (value) =>
    value === null ? null : read(value)

function readAll<T>(values: readonly unknown[], read: Read<T>): readonly T[] | undefined {
  const found: T[] = []
  for (const value of values) {
    const item = read(value)
    if (item === undefined) return undefined
    found.push(item)
  }
  return found
}

export const listOf =
  <T>(item: Read<T>, most: number): Read<readonly T[]> =>
  (value) =>
    Array.isArray(value) && value.length <= most ? readAll(value, item) : undefined

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Values by name, of any names up to a length. */
export function tableOf<T>(
  item: Read<T>,
  limits: { most: number; longest: number },
): Read<Record<string, T>> {
  return (value) => {
    if (!isObject(value)) return undefined
    const names = Object.keys(value)
    if (names.length > limits.most || names.some((name) => name.length > limits.longest)) return undefined
    const items = readAll(
      names.map((name) => ownValue(value, name)),
      item,
    )
    return items && Object.fromEntries(names.map((name, place) => [name, items[place]!]))
  }
}

/** A group of fields, all of which have to be there and right. */
export function group<T extends object>(fields: { readonly [K in keyof T]: Read<T[K]> }): Read<T> {
  const names = Object.keys(fields) as (keyof T & string)[]
  return (value) => {
    if (!isObject(value)) return undefined
    const entries = names.map((name) => [name, fields[name](ownValue(value, name))] as const)
    return entries.some(([, read]) => read === undefined) ? undefined : (Object.fromEntries(entries) as T)
  }
}
