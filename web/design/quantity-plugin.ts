/** Our kind of leva input: a number of the field table, without leva's own guess at types, limits or labels. */
import type { Field } from '../../sim/machine/field.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Problem } from '../../sim/machine/problem.ts'
import { fieldText } from '../instrument/field-text.ts'

export interface QuantitySettings {
  readonly field: Field
  /** Stands above the first field of each setting or load; null above all others. */
  readonly heading: string | null
  /** The words for the path of any field */
  readonly labelOf: (path: string) => string
  /** What would be wrong with this field's machine if the field had that value. */
  readonly judge: (value: number) => readonly Problem[]
  /** This machine with that value and its axes given by profile shift; null when that has errors too. */
  readonly freed: (value: number) => Machine | null
}

/** leva takes a key called 'value' for the whole input, so the first number has another name. */
export interface QuantityInput extends QuantitySettings {
  readonly first: number
}

export const normalize = ({
  first,
  ...settings
}: QuantityInput): { value: number; settings: QuantitySettings } => ({
  value: first,
  settings,
})

/** leva drops an update whose sanitizer throws and keeps the last value. */
export function sanitize(value: unknown): number {
  if (typeof value !== 'number' || !Number.isFinite(value)) throw new Error('a field holds a finite number')
  return value
}

export const format = (value: number): string => fieldText(value)

/** Why a value is not used. */
export interface Refusal {
  readonly words: string
  /** Where only a given centre distance is in its way: the machine that takes the value, with the axes to follow. */
  readonly freed: Machine | null
}

const AXES = 'gearing.centres.centreDistance'

/**
 * The first thing that forbids a value; null when the machine can take it. What stands against another field says
 * which, so that its limits are not read as those of this one.
 */
export function refusal({ field, labelOf, judge, freed }: QuantitySettings, value: number): Refusal | null {
  const errors = judge(value).filter(({ severity }) => severity === 'error')
  const own = errors.find(({ path }) => path === field.path)
  if (own) return { words: own.message, freed: null }
  const [other] = errors
  if (!other) return null
  const words = `${labelOf(other.path)} ${other.message}`
  return { words, freed: errors.every(({ path }) => path === AXES) ? freed(value) : null }
}
