/** Notes the topics of a lesson that somebody goes through alone, once in each run, and when the last one was seen. */
import type { Workshop } from '../frame/workshop.ts'
import type { LessonState } from '../store/lesson.ts'
import type { Passage } from '../store/records.ts'
import { randomId } from './random-id.ts'

/** Topics and lesson that were reached in this state and are not noted for this run. */
function newPassages(
  { lesson, beat, seen, run }: LessonState,
  passed: readonly Passage[],
): readonly Passage[] {
  if (!lesson || run === '') return []
  const isNew = (id: string) => !passed.some((each) => each.run === run && each.beat === id)
  const now = new Date().toISOString()
  const passage = (id: string, title: string): readonly Passage[] =>
    isNew(id) ? [{ id: randomId(), time: now, run, lesson: lesson.id, beat: id, title }] : []
  const here = lesson.beats[beat]
  const isLast = beat === lesson.beats.length - 1
  const isDone = isLast && lesson.beats.every(({ id }) => seen.includes(id))
  return [...(here ? passage(here.id, here.title) : []), ...(isDone ? passage('', lesson.name) : [])]
}

export function followLesson({ lesson, records }: Workshop): void {
  const note = (state: LessonState) => {
    if (state.mode !== 'alone') return
    const found = newPassages(state, records.store.getState().passed)
    if (found.length > 0) records.store.setState(({ passed }) => ({ passed: [...passed, ...found] }))
  }
  lesson.subscribe(note)
  note(lesson.getState())
}
