/** A lesson as text: JSON, indented, in the order of its fields. What it prints, it reads back equal. */
import { readJson } from '../../sim/machine/json.ts'
import { ownValue } from '../../sim/machine/path.ts'
import type { Problem } from '../../sim/machine/problem.ts'
import { told, toldNumber } from '../../sim/machine/told.ts'
import { LESSON_VERSION, type Lesson } from '../store/lesson.ts'
import { type CheckedLesson, checkLesson } from './check-lesson.ts'

/** A lesson of 14 beats takes about 20 kB. [characters] */
export const LONGEST_LESSON = 400_000

/** From one version of the file to the next. */
export interface LessonMigration {
  readonly from: number
  /** What is different since, for the reader of the file. */
  readonly name: string
  apply(file: object): object
}

/** None yet: this is the first version. */
const MIGRATIONS: readonly LessonMigration[] = []

const refused = (path: string, message: string): CheckedLesson => ({
  lesson: null,
  problems: [{ path, severity: 'error', message }],
})

/** Takes the steps one after the other up to `newest`; undefined where a step is missing. */
function migrated(file: object, version: number, migrations: readonly LessonMigration[], newest: number) {
  const notes: Problem[] = []
  let current = file
  for (let at = version; at < newest; at++) {
    const migration = migrations.find(({ from }) => from === at)
    if (!migration) return undefined
    current = { ...migration.apply(current), counterturnLesson: at + 1 }
    const message = `was brought from ${toldNumber(at)} to ${toldNumber(at + 1)}: ${migration.name}`
    notes.push({ path: 'counterturnLesson', severity: 'note', message })
  }
  return { file: current, notes }
}

/** The lesson in data of any version of the file, or every problem with it. */
export function checkLessonFile(
  file: object,
  migrations: readonly LessonMigration[] = MIGRATIONS,
  newest: number = LESSON_VERSION,
): CheckedLesson {
  const version = ownValue(file, 'counterturnLesson')
  const path = 'counterturnLesson'
  if (typeof version !== 'number' || !Number.isSafeInteger(version))
    return refused(
      path,
      `must be the version of a lesson, a whole number up to ${newest}, got ${told(version)}`,
    )
  if (version > newest)
    return refused(
      path,
      `must be at most ${newest}, got ${version}; open it with a newer copy of this program`,
    )
  const result = migrated(file, version, migrations, newest)
  if (!result)
    return refused(path, `must be one that can still be read, up to ${newest}, got ${told(version)}`)
  const { lesson, problems } = checkLesson(result.file)
  return { lesson, problems: [...result.notes, ...problems] }
}

/** The lesson in a text, or every problem with it. Never throws on the text. */
export function parseLesson(text: string): CheckedLesson {
  if (text.length > LONGEST_LESSON)
    return refused('', `must be at most ${LONGEST_LESSON} characters, got ${text.length}`)
  const json = readJson(text)
  if ('fault' in json) {
    const { line, column, message } = json.fault
    return refused('', `must be JSON; line ${line}, column ${column}: ${message}`)
  }
  const { value } = json
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) return checkLessonFile(value)
  return refused('', `must be a lesson, a group of fields between { and }, got ${told(value)}`)
}

export const printLesson = (lesson: Lesson): string => `${JSON.stringify(lesson, null, 2)}\n`
