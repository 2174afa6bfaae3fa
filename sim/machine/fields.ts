/**
 * The one table of the numbers of a machine: the checks, the controls and the help all read it.
 * Its order is the order of machine.ts.
 */
import type { Field } from './field.ts'
import { SUPPLY_FIELDS } from './fields-electric.ts'
import { SETTING_FIELDS } from './fields-setting.ts'
import { GEARING_FIELDS, TEETH_FIELDS } from './fields-gearing.ts'
import { MOTOR_FIELDS, ROTOR_FIELDS } from './fields-motor.ts'
import { BRUSH_FIELDS } from './fields-brushes.ts'
import { OUTPUT_FIELDS } from './fields-outputs.ts'
import { PROTECTION_FIELDS, THERMAL_FIELDS } from './fields-thermal.ts'
import type { Machine } from './machine.ts'
import { ownValue, pathKeys } from './path.ts'

export const FIELDS: readonly Field[] = [
  ...SUPPLY_FIELDS,
  ...SETTING_FIELDS,
  ...MOTOR_FIELDS,
  ...ROTOR_FIELDS,
  ...GEARING_FIELDS,
  ...TEETH_FIELDS,
  ...OUTPUT_FIELDS,
  ...THERMAL_FIELDS,
  ...BRUSH_FIELDS,
  ...PROTECTION_FIELDS,
]

/** A field of one machine. Its path has the place in the list; its label says which setting or load. */
export type FieldInstance = Field

/** 'control.steps[2].voltage' to 'control.steps.*.voltage' */
const starred = (path: string): string => path.replace(/\[\d+\]/g, '.*')

/**
 * The row for a path, with stars or with places in lists. Where kinds share a path, as supply.voltage does,
 * the kind of the supply, control or motor tells them apart; without it the first row is meant.
 */
export function fieldAt(path: string, kind?: string): Field | undefined {
  const pattern = starred(path)
  return FIELDS.find(
    (field) => field.path === pattern && (kind === undefined || field.when === null || field.when === kind),
  )
}

const listOf = (field: Field): string | undefined => {
  const [list, item] = field.path.split('.*')
  return item === undefined ? undefined : list
}

function itemName(machine: Machine, list: string, place: number): string {
  return list === 'outputs.loads' ? (machine.outputs.loads[place]?.name ?? '') : `setting ${place + 1}`
}

function listInstances(machine: Machine, list: string, fields: readonly Field[]): FieldInstance[] {
  const items = pathKeys(list).reduce<unknown>(ownValue, machine)
  if (!Array.isArray(items)) return []
  return items.flatMap((_, place) =>
    fields.map((field) => ({
      ...field,
      path: field.path.replace('.*', `[${place}]`),
      label: `${field.label}, ${itemName(machine, list, place)}`,
    })),
  )
}

/** Kind of the innermost group on the way to a field that comes in kinds. */
function kindAlong(machine: Machine, path: string): unknown {
  let holder: unknown = machine
  let kind: unknown
  for (const key of pathKeys(path)) {
    holder = ownValue(holder, key)
    kind = ownValue(holder, 'kind') ?? kind
  }
  return kind
}

/** Every number that this machine has, item by item in its lists, in the order of the table. */
export function fieldsOf(machine: Machine): readonly FieldInstance[] {
  const present = FIELDS.filter(({ path, when }) => {
    const part = ownValue(machine, pathKeys(path)[0] ?? '')
    return part !== null && (when === null || kindAlong(machine, path) === when)
  })
  return present.flatMap((field) => {
    const list = listOf(field)
    if (list === undefined) return [field]
    const together = present.filter((other) => listOf(other) === list)
    return together[0] === field ? listInstances(machine, list, together) : []
  })
}

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
