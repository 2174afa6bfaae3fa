/** A group of settings read from outside: each setting that is not in order is named, and keeps its plain value. */
import type { Problem } from '../../sim/machine/problem.ts'
import { type Json, isBranch, jsonText } from './difference.ts'

export interface Rule {
  readonly accepts: (value: unknown) => boolean
  /** Completes 'must be ...' */
  readonly requirement: string
}
export type Rules<T> = Readonly<Record<keyof T, Rule>>

const MOST_SHOWN = 40

/** What came, short enough to stand in a sentence. */
export function shown(value: unknown): string {
  const text = jsonText(value as Json)
  return text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text
}

export const unknownPart = (path: string, value: unknown): Problem => ({
  path,
  severity: 'warning',
  message: `must be a setting that this version knows, and was kept aside: ${shown(value)}`,
})

/** Reads `given`, which may be anything, over the plain values, and adds what is wrong with it to `problems`. */
export function readPart<T extends object>(
  problems: Problem[],
  path: string,
  given: unknown,
  { plain, rules }: { readonly plain: T; readonly rules: Rules<T> },
): T {
  if (given === undefined) return plain
  if (!isBranch(given) || Array.isArray(given)) {
    problems.push({ path, severity: 'warning', message: `must be a group of settings, got ${shown(given)}` })
    return plain
  }
  const part: Record<string, unknown> = { ...plain }
  for (const [key, value] of Object.entries(given)) {
    const at = path ? `${path}.${key}` : key
    if (!Object.hasOwn(rules, key)) problems.push(unknownPart(at, value))
    else if (rules[key as keyof T].accepts(value)) part[key] = value
    else {
      const message = `must be ${rules[key as keyof T].requirement}, got ${shown(value)}`
      problems.push({ path: at, severity: 'warning', message })
    }
  }
  return part as T
}
