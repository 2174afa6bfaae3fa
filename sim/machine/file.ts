/** A machine as text: JSON, indented, in the order of the form. What it prints, it reads back equal. */
import { checkValue } from './check.ts'
import type { CheckedMachine } from './check.ts'
import { MACHINE_FORM, MACHINE_FORMAT, MACHINE_VERSION } from './form.ts'
import type { Form, Parts } from './form.ts'
import { readJson } from './json.ts'
import { HEAT_AND_PROTECTION, type Migration, TEETH_AND_ROWS } from './migrations.ts'
import type { Machine } from './machine.ts'
import { ownValue } from './path.ts'
import type { Problem } from './problem.ts'
import { told, toldNumber } from './told.ts'

/** A machine is about 2 kB. [characters] */
const LONGEST_FILE = 200_000

const MIGRATIONS: readonly Migration[] = [TEETH_AND_ROWS, HEAT_AND_PROTECTION]

const refused = (path: string, message: string): CheckedMachine => ({
  machine: null,
  problems: [{ path, severity: 'error', message }],
})

interface Migrated {
  readonly file: object
  readonly notes: readonly Problem[]
}

/** Takes the steps one after the other up to this version; undefined where a step is missing. */
function migrated(file: object, version: number, migrations: readonly Migration[]): Migrated | undefined {
  const notes: Problem[] = []
  let current = file
  for (let at = version; at < MACHINE_VERSION; at++) {
    const migration = migrations.find(({ from }) => from === at)
    if (!migration) return undefined
    current = { ...migration.apply(current), version: at + 1 }
    const message = `was brought from ${toldNumber(at)} to ${toldNumber(at + 1)}: ${migration.name}`
    notes.push({ path: 'version', severity: 'note', message })
  }
  return { file: current, notes }
}

/** The machine in data of any version of the file, or every problem with it. */
export function checkFile(file: object, migrations: readonly Migration[] = MIGRATIONS): CheckedMachine {
  const format = ownValue(file, 'format')
  if (format !== MACHINE_FORMAT) return refused('format', `must be '${MACHINE_FORMAT}', got ${told(format)}`)
  const version = ownValue(file, 'version')
  if (typeof version !== 'number' || !Number.isSafeInteger(version)) {
    return refused('version', `must be a whole number up to ${MACHINE_VERSION}, got ${told(version)}`)
  }
  if (version > MACHINE_VERSION) {
    const message = `must be at most ${MACHINE_VERSION}, got ${version}; open it with a newer copy of this program`
    return refused('version', message)
  }
  const result = migrated(file, version, migrations)
  if (!result) {
    return refused(
      'version',
      `must be one that can still be read, up to ${MACHINE_VERSION}, got ${told(version)}`,
    )
  }
  const checked = checkValue(result.file)
  return { machine: checked.machine, problems: [...result.notes, ...checked.problems] }
}

/** The machine in a text, or every problem with it. Never throws on the text. */
export function parseMachine(text: string, migrations: readonly Migration[] = MIGRATIONS): CheckedMachine {
  if (text.length > LONGEST_FILE) {
    return refused('', `must be at most ${LONGEST_FILE} characters, got ${text.length}`)
  }
  const json = readJson(text)
  if ('fault' in json) {
    const { line, column, message } = json.fault
    return refused('', `must be JSON; line ${line}, column ${column}: ${message}`)
  }
  const file = json.value
  if (typeof file === 'object' && file !== null && !Array.isArray(file)) return checkFile(file, migrations)
  return refused('', `must be a machine, a group of fields between { and }, got ${told(file)}`)
}

function partsInOrder(parts: Parts, value: unknown): object {
  return Object.fromEntries(
    Object.entries(parts).map(([key, form]) => [key, inOrder(form, ownValue(value, key))]),
  )
}

function inOrder(form: Form, value: unknown): unknown {
  if (value === null) return null
  if (form.is === 'group') return partsInOrder(form.parts, value)
  if (form.is === 'kinds') return partsInOrder(form.kinds[String(ownValue(value, 'kind'))] ?? {}, value)
  if (form.is === 'list' && Array.isArray(value)) return value.map((item) => partsInOrder(form.item, item))
  return value
}

export const printMachine = (machine: Machine): string =>
  `${JSON.stringify(inOrder(MACHINE_FORM, machine), null, 2)}\n`
