/** One section of the field table as a leva schema. leva splits keys at points, so its keys have none. */
import type { Field, SectionName } from '../../sim/machine/field.ts'
import { fieldsOf, valueAt, withValue } from '../../sim/machine/fields.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { DocumentStore } from '../store/document.ts'
import { choiceInput } from './ChoiceInput.tsx'
import type { Choice } from '../instrument/choice.ts'
import { CHOICES } from '../instrument/choices.ts'
import { fieldSettings } from './field-settings.ts'
import { itemOf } from '../instrument/field-text.ts'
import { quantityInput } from './QuantityInput.tsx'

export interface SectionFields {
  readonly fields: readonly Field[]
  readonly choices: readonly Choice[]
}

/** Numbers that one choice leaves without any use are not shown while it stands. */
function isUsed(path: string, { profile, depthRule }: Machine['gearing']): boolean {
  if (path === 'gearing.discDiameter') return profile === 'ZK'
  if (path === 'gearing.addendum' || path === 'gearing.clearance') return depthRule !== 'mixed'
  return true
}

/** A number that comes with a choice stands at once below it. */
const byChoice = ({ path }: Field): boolean => path.startsWith('gearing.centres.')

export function sectionFieldsOf(machine: Machine, section: SectionName): SectionFields {
  const fields = fieldsOf(machine).filter(
    (field) => field.section === section && isUsed(field.path, machine.gearing),
  )
  return {
    fields: [...fields.filter(byChoice), ...fields.filter((field) => !byChoice(field))],
    choices: CHOICES.filter((choice) => choice.section === section && choice.options(machine).length > 0),
  }
}

export const levaKey = (path: string): string => path.replaceAll('.', '/')

interface ChangeContext {
  readonly initial: boolean
  readonly fromPanel: boolean
}

/** leva also reports its first value and what the document tells it: only what a person did is an edit. */
const editBy =
  <Value>(document: DocumentStore, edited: (machine: Machine, value: Value) => Machine) =>
  (value: Value, _key: string, { initial, fromPanel }: ChangeContext) => {
    if (!initial && fromPanel) document.edit((machine) => edited(machine, value))
  }

export function sectionSchema(document: DocumentStore, { fields, choices }: SectionFields) {
  const { machine } = document.store.getState()
  const now = () => document.store.getState().machine
  const gesture = { onEditStart: () => document.beginGesture(), onEditEnd: () => document.endGesture() }
  const numbers = fields.map((field, place) => [
    levaKey(field.path),
    quantityInput({
      first: valueAt(machine, field.path),
      ...fieldSettings(now, field, itemOf(field) === itemOf(fields[place - 1]) ? null : itemOf(field)),
      label: field.label,
      onChange: editBy<number>(document, (before, value) => withValue(before, field.path, value)),
      ...gesture,
    }),
  ])
  const chosen = (place: Choice['place']) =>
    choices
      .filter((choice) => choice.place === place)
      .map((choice) => [
        levaKey(choice.path),
        choiceInput({
          first: choice.chosen(machine),
          choice,
          label: choice.label,
          onChange: editBy(document, choice.choose),
        }),
      ])
  return Object.fromEntries([...chosen('above'), ...numbers, ...chosen('below')])
}

/** What leva is told when the document has changed; fields that the new machine does not have are left out. */
export function sectionValues(machine: Machine, section: SectionName): Record<string, number | string> {
  const { fields, choices } = sectionFieldsOf(machine, section)
  return Object.fromEntries([
    ...fields.map(({ path }) => [levaKey(path), valueAt(machine, path)]),
    ...choices.map((choice) => [levaKey(choice.path), choice.chosen(machine)]),
  ])
}
