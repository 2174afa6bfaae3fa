/** What is typed into a field, and how a field writes its number. */
import type { ReadQuantity } from '../../sim/quantity/quantity.ts'

/** Digits that are worth writing: the dust of binary fractions lies below them. */
const DIGITS = 12

export const fieldText = (value: number): string => String(Number(value.toPrecision(DIGITS)))

const PLAIN = /^\s*[-+−]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?\s*$/i

/** A plain number needs no units, and so none of the library that reads them. */
export const plainNumber = (text: string): number | null =>
  PLAIN.test(text) ? Number(text.replace('−', '-')) : null

/** The number that a text means in the field's unit: at once for a plain number, else when the units are loaded. */
export function readFieldText(text: string, unit: string, done: (read: ReadQuantity) => void): void {
  const plain = plainNumber(text)
  if (plain !== null) {
    done({ value: plain })
    return
  }
  import('../../sim/quantity/quantity.ts')
    .then(({ readQuantity }) => done(readQuantity(text, unit)))
    .catch(() => done({ problem: 'must be a plain number for now, as the units could not be loaded' }))
}

const decimalsOf = (step: number): number => {
  const [, exponent = '0'] = step.toExponential().split('e')
  const digits = step.toExponential().split('e')[0]?.replace('.', '').length ?? 1
  return Math.max(0, digits - 1 - Number(exponent))
}

/** One or more steps on from a value, without the dust that adding steps leaves, and inside the limits. */
export function stepped(
  value: number,
  steps: number,
  field: { step: number; min: number; max: number },
): number {
  const decimals = Math.max(decimalsOf(field.step), Math.min(DIGITS, decimalsOf(value || field.step)))
  const moved = Number((value + steps * field.step).toFixed(Math.min(decimals, 15)))
  return Math.min(field.max, Math.max(field.min, moved))
}

/** Units as they are read by people: 'kg cm2' is written kg cm². */
export const unitText = (unit: string): string =>
  unit
    .replace(/(?<=[a-z])2/g, '²')
    .replace(/\bkohm\b/, 'kΩ')
    .replace(/\bohm\b/, 'Ω')
    .replace(/^u(?=[FHW])/, 'µ')
    .replace(/^degC$/, '°C')
    .replace(/^deg$/, '°')

/** Which setting or load a field belongs to, as its label says after the comma; null where it is the only one. */
export const itemOf = (field: { path: string; label: string } | undefined): string | null =>
  field?.path.includes('[') ? field.label.slice(field.label.indexOf(', ') + 2) : null
