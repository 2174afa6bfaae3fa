/** A row of the data sheet in letters: the decimals that it is worth, and its unit. */
import type { SheetRow } from '../../sim/gear/data-sheet.ts'

const UNITS: Readonly<Record<string, string>> = { deg: '°' }

export function rowText({ value, unit, digits }: SheetRow): string {
  if (typeof value === 'string') return value
  const number = value.toFixed(digits).replace('-', '\u2212')
  if (unit === '') return number
  return unit in UNITS ? number + UNITS[unit]! : `${number}\u202f${unit}`
}
