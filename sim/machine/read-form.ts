/** Reads any value against a form: a clean copy in the order of the form, and every problem on the way. */
import type { Field } from './field.ts'
import type { ChoiceForm, FixedForm, Form, GroupForm, KindsForm, ListForm, Parts, TextForm } from './form.ts'
import { ownValue } from './path.ts'
import type { Problem } from './problem.ts'
import { keptText, told, toldNumber, withUnit } from './told.ts'

/** Unknown fields told one by one; more than these are only counted. */
const MOST_UNKNOWN = 20
/** A name that can be part of a path. */
const PLAIN_NAME = /^[\w-]{1,60}$/

/** Reads one part; undefined when it cannot be used, with the problems saying why. */
export function readForm(form: Form, value: unknown, path: string, problems: Problem[]): unknown {
  switch (form.is) {
    case 'number':
      return readNumber(form.field, value, path, problems)
    case 'text':
      return readText(form, value, path, problems)
    case 'choice':
      return readChoice(form, value, path, problems)
    case 'fixed':
      return readFixed(form, value, path, problems)
    case 'group':
      return readGroup(form, value, path, problems)
    case 'kinds':
      return readKinds(form, value, path, problems)
    case 'list':
      return readList(form, value, path, problems)
  }
}

function wrong(problems: Problem[], path: string, requirement: string, got: string): undefined {
  problems.push({ path, severity: 'error', message: `must be ${requirement}, got ${got}` })
}

const range = (least: number, most: number, unit: string): string =>
  withUnit(`${toldNumber(least)} to ${toldNumber(most)}`, unit)

function readNumber(field: Field, value: unknown, path: string, problems: Problem[]): number | undefined {
  const { min, max, unit, whole, typical } = field
  const requirement = `a ${whole ? 'whole ' : ''}number, ${range(min, max, unit)}`
  if (typeof value === 'string') {
    const hint =
      value.trim() !== '' && Number.isFinite(Number(value)) ? '; leave out the quotation marks' : ''
    return wrong(problems, path, requirement, told(value) + hint)
  }
  if (typeof value !== 'number') return wrong(problems, path, requirement, told(value))
  const fits = Number.isFinite(value) && value >= min && value <= max && (!whole || Number.isInteger(value))
  if (!fits) return wrong(problems, path, requirement, withUnit(toldNumber(value), unit))
  if (typical && (value < typical[0] || value > typical[1])) {
    const message = `is usually ${range(...typical, unit)}, got ${withUnit(toldNumber(value), unit)}`
    problems.push({ path, severity: 'warning', message })
  }
  // a negative zero would not come back from a file
  return value === 0 ? 0 : value
}

const CONTROL_CHARACTER = /\p{Cc}/u
const CONTROL_BUT_LINE_END = /[^\P{Cc}\n]/u

function readText(form: TextForm, value: unknown, path: string, problems: Problem[]): string | undefined {
  const requirement = `${form.lines ? 'text' : 'a line of text'} of ${form.least} to ${form.most} characters`
  if (typeof value !== 'string') return wrong(problems, path, requirement, told(value))
  if (value.length > form.most) return wrong(problems, path, requirement, `${value.length} characters`)
  if (value.trim().length < form.least) return wrong(problems, path, requirement, 'nothing to read')
  if ((form.lines ? CONTROL_BUT_LINE_END : CONTROL_CHARACTER).test(value)) {
    return wrong(problems, path, requirement, 'a control character in it')
  }
  return value
}

const anyOf = (names: readonly string[]): string => names.map((name) => `'${name}'`).join(' or ')

function readChoice(form: ChoiceForm, value: unknown, path: string, problems: Problem[]): string | undefined {
  if (typeof value === 'string' && form.among.includes(value)) return value
  return wrong(problems, path, anyOf(form.among), told(value))
}

function readFixed(form: FixedForm, value: unknown, path: string, problems: Problem[]): unknown {
  if (value === form.value) return value
  return wrong(
    problems,
    path,
    typeof form.value === 'string' ? `'${form.value}'` : String(form.value),
    told(value),
  )
}

const within = (path: string, key: string): string => (path === '' ? key : `${path}.${key}`)

const isGroup = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** The parts of a group, or undefined when one of them cannot be used. */
function readParts(parts: Parts, group: object, path: string, problems: Problem[]): object | undefined {
  const read = Object.entries(parts).map(([key, part]) => {
    return [key, readForm(part, ownValue(group, key), within(path, key), problems)] as const
  })
  reportUnknown(parts, group, path, problems)
  return read.every(([, value]) => value !== undefined) ? Object.fromEntries(read) : undefined
}

/**
 * Fields that a machine does not have are left out, and written into the message so that they can be kept.
 */
function reportUnknown(parts: Parts, group: object, path: string, problems: Problem[]): void {
  const unknown = Object.keys(group).filter((key) => !Object.hasOwn(parts, key))
  for (const key of unknown.slice(0, MOST_UNKNOWN)) {
    const leftOut = `not a field here and is left out; it was ${keptText(ownValue(group, key))}`
    problems.push(
      PLAIN_NAME.test(key)
        ? { path: within(path, key), severity: 'warning', message: `is ${leftOut}` }
        : { path, severity: 'warning', message: `has ${keptText(key)}, which is ${leftOut}` },
    )
  }
  if (unknown.length > MOST_UNKNOWN) {
    const message = `has ${unknown.length - MOST_UNKNOWN} more fields that are not of a machine and are left out`
    problems.push({ path, severity: 'warning', message })
  }
}

function readGroup(
  form: GroupForm,
  value: unknown,
  path: string,
  problems: Problem[],
): object | null | undefined {
  if (value === null && form.optional) return null
  if (isGroup(value)) return readParts(form.parts, value, path, problems)
  const names = `a group of the fields ${Object.keys(form.parts).join(', ')}`
  return wrong(problems, path, form.optional ? `${names}, or null for none` : names, told(value))
}

function readKinds(
  form: KindsForm,
  value: unknown,
  path: string,
  problems: Problem[],
): object | null | undefined {
  if (value === null && form.optional) return null
  const known = anyOf(Object.keys(form.kinds))
  if (!isGroup(value)) {
    const requirement = `a group of fields with the kind ${known}`
    return wrong(
      problems,
      path,
      form.optional ? `${requirement}, or null for none` : requirement,
      told(value),
    )
  }
  const kind = ownValue(value, 'kind')
  const parts = typeof kind === 'string' && Object.hasOwn(form.kinds, kind) ? form.kinds[kind] : undefined
  if (parts === undefined) return wrong(problems, within(path, 'kind'), known, told(kind))
  return readParts(parts, value, path, problems)
}

function readList(form: ListForm, value: unknown, path: string, problems: Problem[]): unknown {
  const requirement = `a list of 1 to ${form.most} ${form.items}`
  if (!Array.isArray(value)) return wrong(problems, path, requirement, told(value))
  const countFits = value.length >= 1 && value.length <= form.most
  if (!countFits) wrong(problems, path, requirement, String(value.length))
  const group: GroupForm = { is: 'group', parts: form.item, optional: false }
  const read = Array.from({ length: Math.min(value.length, form.most) }, (_, i) =>
    readForm(group, ownValue(value, String(i)), `${path}[${i}]`, problems),
  )
  return countFits && read.every((item) => item !== undefined) ? read : undefined
}
