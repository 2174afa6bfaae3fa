/** Places in a machine by their path, as in 'gearing.wheelTeeth' or 'control.steps[2].voltage'. */
import type { Machine } from './machine.ts'

export const pathKeys = (path: string): readonly string[] => path.split(/[.[\]]/).filter((key) => key !== '')

/** An own, plain value; inherited ones and getters are not part of any data. */
export const ownValue = (holder: unknown, key: string): unknown =>
  typeof holder === 'object' && holder !== null
    ? Object.getOwnPropertyDescriptor(holder, key)?.value
    : undefined

/** The number at a path of the field table. Throws where there is none. */
export function valueAt(machine: Machine, path: string): number {
  const value = pathKeys(path).reduce<unknown>(ownValue, machine)
  if (typeof value !== 'number') throw new Error(`path of a number: got '${path}'`)
  return value
}

function replaced(holder: unknown, keys: readonly string[], value: number | string): unknown {
  const [key, ...rest] = keys
  if (key === undefined) return Object.is(holder, value) ? holder : value
  const old = ownValue(holder, key)
  if (typeof holder !== 'object' || holder === null || old === undefined) {
    throw new Error(`path of a machine: nothing at '${key}'`)
  }
  const next = replaced(old, rest, value)
  if (next === old) return holder
  if (Array.isArray(holder)) return holder.map((item: unknown, i) => (i === Number(key) ? next : item))
  return { ...holder, [key]: next }
}

/** The machine with one number, choice or name changed; the same object when that changes nothing. */
export const withValue = (machine: Machine, path: string, value: number | string): Machine =>
  // Only a leaf is put in the place of a leaf, so the parts stay what they were; check.ts judges the value.
  replaced(machine, pathKeys(path), value) as Machine
