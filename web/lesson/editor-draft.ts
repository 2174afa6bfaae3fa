/** The lesson that is being written, with everything that can be taken back; it is kept in this browser at each change. */
import { createStore } from 'zustand/vanilla'
import { type Keeper, keep, kept } from '../file/storage.ts'
import type { BeatStage, Lesson } from '../store/lesson.ts'
import type { Change } from './edit-lesson.ts'
import { restored } from './editor-restored.ts'
import { printLesson } from './lesson-file.ts'

export const DRAFT_KEY = 'counterturn.lesson-draft'
const MOST_STEPS = 200

export interface Draft {
  /** Null before one was begun. */
  readonly lesson: Lesson | null
  readonly past: readonly Lesson[]
  readonly future: readonly Lesson[]
  /** id of the beat that is written */
  readonly selected: string
  /** The field that is typed in: all that is typed into it is one step. */
  readonly field: string
  /** Whether the browser keeps it */
  readonly isKept: boolean
}

const firstId = (lesson: Lesson | null): string => lesson?.beats[0]?.id ?? ''

/** A beat that is there: the one that was selected, or the first. */
const selectedIn = (lesson: Lesson, selected: string): string =>
  lesson.beats.some(({ id }) => id === selected) ? selected : firstId(lesson)

/** What comes back is looked at: a beat that was not there before, else the one that was selected. */
function selectedBack(back: Lesson, from: Lesson, selected: string): string {
  const came = back.beats.find(({ id }) => !from.beats.some((beat) => beat.id === id))
  return came?.id ?? selectedIn(back, selected)
}

/** A step back or on: the lesson that comes, and the one that is left. */
const stepped = (last: Draft, came: Lesson, left: Lesson): Partial<Draft> => ({
  lesson: came,
  field: '',
  selected: selectedBack(came, left, last.selected),
})

function undone(last: Draft): Partial<Draft> {
  const { lesson, past, future } = last
  const came = past.at(-1)
  if (!came || !lesson) return last
  return { ...stepped(last, came, lesson), past: past.slice(0, -1), future: [lesson, ...future] }
}

function redone(last: Draft): Partial<Draft> {
  const { lesson, past } = last
  const [came, ...future] = last.future
  if (!came || !lesson) return last
  return { ...stepped(last, came, lesson), past: [...past, lesson], future }
}

function edited(last: Draft, change: Change, field: string): Partial<Draft> {
  if (!last.lesson) return last
  const lesson = change(last.lesson)
  if (lesson === last.lesson) return last
  const joins = field !== '' && field === last.field
  const past = joins ? last.past : [...last.past, last.lesson].slice(-MOST_STEPS)
  return { lesson, past, future: [], field, selected: selectedIn(lesson, last.selected) }
}

function replacedBy(lesson: Lesson, { lesson: was, past }: Draft): Partial<Draft> {
  return { lesson, past: was ? [...past, was] : past, future: [], field: '', selected: firstId(lesson) }
}

export function createDraft(keeper: Keeper | null, stage: BeatStage) {
  const text = kept(keeper, DRAFT_KEY)
  const lesson = text === null ? null : restored(text, stage)
  const store = createStore<Draft>(() => ({
    lesson,
    past: [],
    future: [],
    selected: firstId(lesson),
    field: '',
    isKept: true,
  }))
  store.subscribe((now, before) => {
    if (now.lesson === before.lesson || !now.lesson) return
    const isKept = keep(keeper, DRAFT_KEY, printLesson(now.lesson)).ok
    if (isKept !== now.isKept) store.setState({ isKept })
  })
  return {
    store,
    /** `field` names what is typed in, so that its letters are taken back together; '' is a step of its own. */
    edit: (change: Change, field = '') => store.setState((last) => edited(last, change, field)),
    select: (id: string) => store.setState({ selected: id, field: '' }),
    /** Another lesson in its place; the one that was there can be brought back. */
    replace: (next: Lesson) => store.setState((last) => replacedBy(next, last)),
    undo: () => store.setState(undone),
    redo: () => store.setState(redone),
  }
}

export type DraftStore = ReturnType<typeof createDraft>
