/** The words for the path of a field, as the controls have them. */
import { fieldsOf } from '../../sim/machine/fields.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { CHOICES } from './choices.ts'

export function labelOfPath(machine: Machine): (path: string) => string {
  const labels = new Map([...fieldsOf(machine), ...CHOICES].map(({ path, label }) => [path, label]))
  return (path) => labels.get(path) ?? path
}
