/** Our kind of leva input: a number of the field table, without leva's own guess at types, limits or labels. */
import type { Field } from '../../sim/machine/field.ts'
import type { Problem } from '../../sim/machine/problem.ts'
import { fieldText } from './field-text.ts'

export interface QuantitySettings {
  readonly field: Field
  /** Stands above the first field of each setting or load; null above all others. */
  readonly heading: string | null
  /** What would be wrong with this field's machine if the field had that value. */
  readonly judge: (value: number) => readonly Problem[]
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

/** The first thing that forbids a value, in words; null when the machine can take it. */
export function refusal({ field, judge }: QuantitySettings, value: number): string | null {
  const errors = judge(value).filter(({ severity }) => severity === 'error')
  const own = errors.find(({ path }) => path === field.path)
  return (own ?? errors[0])?.message ?? null
}
