/** A group of settings read from outside: each setting that is not in order is named, and keeps its plain value. */
import type { Problem } from '../../sim/machine/problem.ts'
import { keptText, told } from '../../sim/machine/told.ts'
import { isBranch } from './difference.ts'

export interface Rule {
  readonly accepts: (value: unknown) => boolean
  /** Completes 'must be ...' */
  readonly requirement: string
}
export type Rules<T> = Readonly<Record<keyof T, Rule>>

export const unknownPart = (path: string, value: unknown): Problem => ({
  path,
  severity: 'warning',
  message: `is not known here and is left out; it was ${keptText(value)}`,
})

/** Reads `given`, which may be anything, over the plain values, and adds what is wrong with it to `problems`. */
export function readPart<T extends object>(
  problems: Problem[],
  path: string,
  given: unknown,
  { plain, rules }: { readonly plain: T; readonly rules: Rules<T> },
): T {
  if (!isBranch(given) || Array.isArray(given)) {
    problems.push({ path, severity: 'warning', message: `must be a group of settings, got ${told(given)}` })
    return plain
  }
  const part = { ...plain } as Record<string, unknown>
  for (const [key, value] of Object.entries(given)) {
    const at = path ? `${path}.${key}` : key
    if (!Object.hasOwn(rules, key)) problems.push(unknownPart(at, value))
    else if (rules[key as keyof T].accepts(value)) part[key] = value
    else {
      const message = `must be ${rules[key as keyof T].requirement}, got ${told(value)}`
      problems.push({ path: at, severity: 'warning', message })
    }
  }
  return part as T
}
