/** Whether any value is a lesson: a clean copy in the order of the file, or every problem with it. */
import type { Problem } from '../../sim/machine/problem.ts'
import { hasErrors } from '../../sim/machine/problem.ts'
import { told } from '../../sim/machine/told.ts'
import { type Beat, LESSON_VERSION, type Lesson } from '../store/lesson.ts'
import { checkQuestion } from './check-question.ts'
import { checkStage } from './check-stage.ts'
import {
  type Group,
  type Reading,
  inside,
  listIn,
  numberIn,
  readGroup,
  refuse,
  textIn,
  textItem,
  valueIn,
  yesNoIn,
} from './read-parts.ts'

export interface CheckedLesson {
  /** Null when a problem is an error. */
  readonly lesson: Lesson | null
  readonly problems: readonly Problem[]
}

const LONGEST_NAME = 80
const LONGEST_WORDS = 160
const LONGEST_NOTE = 600
const MOST_BEATS = 60

const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/

/** Ids stand in links and in what the browser keeps. */
function idIn(group: Group): string {
  const id = textIn(group, 'id', { most: 40 })
  if (id !== '' && !ID.test(id))
    refuse(
      group.reading,
      inside(group.path, 'id'),
      `must be small letters, digits and single hyphens, got ${told(id)}`,
    )
  return id
}

function factItem(reading: Reading, path: string, value: unknown): Beat['facts'][number] {
  const group = readGroup(reading, path, value, ['name', 'value'])
  return { name: textIn(group, 'name', { most: 40 }), value: textIn(group, 'value', { most: 40 }) }
}

const BEAT_KEYS = [
  'id',
  'title',
  'words',
  'facts',
  'notes',
  'minutes',
  'extra',
  'safety',
  'stage',
  'questions',
]

function beatItem(reading: Reading, path: string, value: unknown, seed: string): Beat {
  const group = readGroup(reading, path, value, BEAT_KEYS)
  const { stage, machine } = checkStage(reading, inside(path, 'stage'), valueIn(group, 'stage'))
  const note = (inner: Reading, at: string, each: unknown) => textItem(inner, at, each, LONGEST_NOTE)
  const question = (inner: Reading, at: string, each: unknown) =>
    checkQuestion(inner, at, each, { seed, machine })
  return {
    id: idIn(group),
    title: textIn(group, 'title', { most: LONGEST_NAME }),
    words: textIn(group, 'words', { least: 0, most: LONGEST_WORDS }),
    facts: listIn(group, 'facts', { most: 6, items: 'facts' }, factItem),
    notes: listIn(group, 'notes', { most: 12, items: 'notes' }, note),
    minutes: numberIn(group, 'minutes', { least: 0.5, most: 240 }),
    extra: yesNoIn(group, 'extra'),
    safety: yesNoIn(group, 'safety'),
    stage,
    questions: listIn(group, 'questions', { most: 6, items: 'questions' }, question),
  }
}

/** What was committed is kept by the ids of beats, so none may come twice. */
function checkIds(reading: Reading, beats: readonly Beat[]): void {
  for (const [place, { id }] of beats.entries()) {
    const earlier = beats.findIndex((each) => each.id === id)
    if (earlier < place && id !== '')
      refuse(reading, `beats.${place}.id`, `must be another than that of beat ${earlier}, got ${told(id)}`)
  }
}

export function checkLesson(value: unknown): CheckedLesson {
  const reading: Reading = { problems: [] }
  const group = readGroup(reading, '', value, ['counterturnLesson', 'id', 'name', 'summary', 'seed', 'beats'])
  const seed = textIn(group, 'seed', { most: 40 })
  const beat = (inner: Reading, path: string, each: unknown) => beatItem(inner, path, each, seed)
  const lesson: Lesson = {
    counterturnLesson: LESSON_VERSION,
    id: idIn(group),
    name: textIn(group, 'name', { most: LONGEST_NAME }),
    summary: textIn(group, 'summary', { least: 0, most: 300 }),
    seed,
    beats: listIn(group, 'beats', { least: 1, most: MOST_BEATS, items: 'beats' }, beat),
  }
  checkIds(reading, lesson.beats)
  return { lesson: hasErrors(reading.problems) ? null : lesson, problems: reading.problems }
}
