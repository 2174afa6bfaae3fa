/** Where somebody was in a lesson, kept in this browser, so that it can be gone on with another day. */
import { readJson } from '../../sim/machine/json.ts'
import { ownValue } from '../../sim/machine/path.ts'
import type { Workshop } from '../frame/workshop.ts'
import { type Keeper, browserKeeper, keep, kept } from '../file/storage.ts'
import type { Lesson, LessonState } from '../store/lesson.ts'
import { parseLesson, printLesson } from './lesson-file.ts'
import { READY_LESSONS } from './ready-lessons.ts'

export const PLACE_KEY = 'counterturn.lesson'
/** A lesson of one's own is kept with its text up to this length [characters] */
const LONGEST_KEPT = 200_000

export interface KeptPlace {
  readonly lesson: Lesson
  readonly builtIn: boolean
  readonly mode: LessonState['mode']
  readonly beat: number
  readonly seen: readonly string[]
}

function textOf({ lesson, builtIn, mode, beat, seen }: LessonState): string | null {
  if (!lesson) return null
  if (builtIn) return JSON.stringify({ id: lesson.id, mode, beat, seen })
  const text = JSON.stringify({ file: printLesson(lesson), mode, beat, seen })
  return text.length > LONGEST_KEPT ? null : text
}

/** Follows the lesson that is open; returns what stops it. What cannot be kept is simply not gone on with. */
export function keepPlace({ lesson }: Workshop, keeper: Keeper | null = browserKeeper()): () => void {
  const write = (state: LessonState) => {
    const text = textOf(state)
    if (text !== null) keep(keeper, PLACE_KEY, text)
  }
  write(lesson.getState())
  return lesson.subscribe((state, before) => {
    if (state.beat !== before.beat || state.lesson !== before.lesson || state.seen !== before.seen)
      write(state)
  })
}

function lessonIn(value: unknown): Pick<KeptPlace, 'lesson' | 'builtIn'> | null {
  const id = ownValue(value, 'id')
  const ready = READY_LESSONS.find((each) => each.id === id)
  if (ready) return { lesson: ready, builtIn: true }
  const file = ownValue(value, 'file')
  const own = typeof file === 'string' ? parseLesson(file).lesson : null
  return own && { lesson: own, builtIn: false }
}

/** Null when nothing is kept, or nothing that can be gone on with. */
export function keptPlace(keeper: Keeper | null = browserKeeper()): KeptPlace | null {
  const text = kept(keeper, PLACE_KEY)
  const json = text === null ? null : readJson(text)
  if (!json || 'fault' in json) return null
  const found = lessonIn(json.value)
  if (!found) return null
  const { beats } = found.lesson
  const beat = ownValue(json.value, 'beat')
  const seen = ownValue(json.value, 'seen')
  return {
    ...found,
    mode: ownValue(json.value, 'mode') === 'lead' ? 'lead' : 'alone',
    beat: Number.isInteger(beat) && beats[Number(beat)] ? Number(beat) : 0,
    seen: Array.isArray(seen) ? beats.map(({ id }) => id).filter((id) => seen.includes(id)) : [],
  }
}
