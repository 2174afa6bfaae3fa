/** Leads to a field of the parameters: opens its section when that is closed, and puts the focus in it. */
import { fieldsOf } from '../../sim/machine/fields.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { CHOICES } from '../instrument/choices.ts'
import { fieldId, sectionId } from './ids.ts'

/** A section that opens has its fields after a few frames. */
const MOST_FRAMES = 30

export function goToField(machine: Machine, path: string): void {
  const { section } = [...fieldsOf(machine), ...CHOICES].find((each) => each.path === path) ?? {}
  const heading = section && document.getElementById(sectionId(section))
  if (heading?.getAttribute('aria-expanded') === 'false') heading.click()
  focusSoon(fieldId(path), MOST_FRAMES)
}

/** A choice can bring other fields, and with them its section anew: puts the focus back where it was. */
export function keepFocus(path: string): void {
  requestAnimationFrame(() => focusSoon(fieldId(path), MOST_FRAMES))
}

function focusSoon(id: string, frames: number): void {
  const field = document.getElementById(id)
  if (field) field.focus()
  else if (frames > 0) requestAnimationFrame(() => focusSoon(id, frames - 1))
}
