/** Changes of a lesson as it is written: a lesson in, a lesson out, and no beat is lost but the one that is taken out. */
import { FAMILIES } from '../../sim/question/bank.ts'
import { moved } from '../question/moved.ts'
import {
  type AskedQuestion,
  type Beat,
  type BeatQuestion,
  type BeatStage,
  LESSON_VERSION,
  type Lesson,
} from '../store/lesson.ts'

export type Change = (lesson: Lesson) => Lesson

/** A stage on which nothing differs from the first demo machine. */
export const plainBeatStage = (machine: string): BeatStage => ({
  machine,
  set: {},
  panel: 'none',
  signs: [],
  lit: null,
  walk: false,
  motion: 'still',
})

export const emptyBeat = (id: string, stage: BeatStage): Beat => ({
  id,
  title: 'New topic',
  words: '',
  facts: [],
  notes: [],
  minutes: 3,
  extra: false,
  safety: false,
  stage,
  questions: [],
})

export const emptyLesson = (stage: BeatStage, seed: string): Lesson => ({
  counterturnLesson: LESSON_VERSION,
  id: 'my-lesson',
  name: 'My lesson',
  summary: '',
  seed,
  beats: [emptyBeat('topic-1', stage)],
})

/** 'My first lesson' to 'my-first-lesson', as ids in files are written. */
export function idFrom(name: string): string {
  const id = name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, 40)
    .replaceAll(/^-|-$/g, '')
  return id === '' ? 'my-lesson' : id
}

/** The id of a lesson of one's own, which is none of those that come with the program. */
export function ownId(name: string, ready: readonly Lesson[]): string {
  const id = idFrom(name)
  return ready.some((each) => each.id === id) ? `${id.slice(0, 36)}-own` : id
}

/** A lesson of one's own that begins as another one. */
export const copyOf = (lesson: Lesson, seed: string): Lesson => {
  const name = `${lesson.name.slice(0, 60)}, copy`
  return { ...lesson, id: idFrom(name), name, seed }
}

const newId = (beats: readonly Beat[]): string => {
  let number = beats.length + 1
  while (beats.some(({ id }) => id === `topic-${number}`)) number += 1
  return `topic-${number}`
}

/** Behind the beat at a place; its id is the last of the answer. */
function withBeatAfter(lesson: Lesson, place: number, beat: (id: string) => Beat): [Lesson, string] {
  const id = newId(lesson.beats)
  const beats = [...lesson.beats]
  beats.splice(place + 1, 0, beat(id))
  return [{ ...lesson, beats }, id]
}

export const withNewBeat = (lesson: Lesson, place: number, stage: BeatStage): [Lesson, string] =>
  withBeatAfter(lesson, place, (id) => emptyBeat(id, stage))

/** The same beat once more, behind it. */
export function withCopiedBeat(lesson: Lesson, place: number): [Lesson, string] {
  const beat = lesson.beats[place]
  if (!beat) throw new Error(`the lesson has no beat ${place}`)
  return withBeatAfter(lesson, place, (id) => ({ ...beat, id }))
}

/** A lesson has one beat at least. */
export const withoutBeat =
  (place: number): Change =>
  (lesson) =>
    lesson.beats.length > 1 ? { ...lesson, beats: lesson.beats.filter((_, i) => i !== place) } : lesson

export const withBeatMoved =
  (from: number, to: number): Change =>
  (lesson) => {
    const beats = moved(lesson.beats, from, to)
    return beats === lesson.beats ? lesson : { ...lesson, beats }
  }

export const withBeat =
  (place: number, change: Partial<Beat>): Change =>
  (lesson) => ({
    ...lesson,
    beats: lesson.beats.map((beat, i) => (i === place ? { ...beat, ...change } : beat)),
  })

/** The same list with another thing at a place. */
export const replaced = <T>(list: readonly T[], place: number, item: T): readonly T[] =>
  list.map((each, i) => (i === place ? item : each))

export const without = <T>(list: readonly T[], place: number): readonly T[] =>
  list.filter((_, i) => i !== place)

export const totalMinutes = (beats: readonly Beat[]): number =>
  beats.reduce((sum, { minutes }) => sum + minutes, 0)

export type QuestionKind = 'bank' | 'number' | 'choice' | 'words'

export function questionKind(question: BeatQuestion): QuestionKind {
  if ('family' in question) return 'bank'
  if ('answer' in question) return 'number'
  return 'options' in question ? 'choice' : 'words'
}

/** What a question begins as. What was asked goes along from one kind of one's own to another. */
export function newQuestion(kind: QuestionKind, text: string): AskedQuestion {
  if (kind === 'bank') {
    const first = FAMILIES[0]!
    return { family: first.name, given: first.example }
  }
  if (kind === 'number') return { text, unit: 'turn', answer: 1, tolerance: 'r1', working: '', slips: [] }
  if (kind === 'words') return { text }
  const options = ['First', 'Second'].map((each) => ({ text: each, sentence: '' }))
  return { text, options, right: 0, working: '' }
}

/** On a stage of its own; null: on that of its topic. */
export function withStage(question: BeatQuestion, stage: BeatStage | null): BeatQuestion {
  if (stage) return { ...question, stage }
  const { stage: _, ...asked } = question
  return asked
}

/** A beat with another stage, or with another one for one of its questions. */
export const withStageOf =
  (place: number, question: number | null, stage: BeatStage): Change =>
  (lesson) => {
    const beat = lesson.beats[place]
    if (!beat) return lesson
    const asked = question === null ? undefined : beat.questions[question]
    if (question === null || !asked) return withBeat(place, { stage })(lesson)
    return withBeat(place, { questions: replaced(beat.questions, question, withStage(asked, stage)) })(lesson)
  }

/** One paragraph a line, as the notes are typed; empty lines only part them. */
export const notesFrom = (text: string): readonly string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
