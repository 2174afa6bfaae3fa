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
  /** `field` names what is typed in, so that its letters are taken back together; '' is a step of its own. */
  const edit = (change: Change, field = '') =>
    store.setState((last) => {
      if (!last.lesson) return last
      const next = change(last.lesson)
      if (next === last.lesson) return last
      const joins = field !== '' && field === last.field
      const past = joins ? last.past : [...last.past, last.lesson].slice(-MOST_STEPS)
      return { lesson: next, past, future: [], field, selected: selectedIn(next, last.selected) }
    })
  return {
    store,
    edit,
    select: (id: string) => store.setState({ selected: id, field: '' }),
    /** Another lesson in its place; the one that was there can be brought back. */
    replace: (next: Lesson) =>
      store.setState(({ lesson: was, past }) => ({
        lesson: next,
        past: was ? [...past, was] : past,
        future: [],
        field: '',
        selected: firstId(next),
      })),
    undo: () =>
      store.setState((last) => {
        const back = last.past.at(-1)
        if (!back || !last.lesson) return last
        const future = [last.lesson, ...last.future]
        return {
          lesson: back,
          past: last.past.slice(0, -1),
          future,
          field: '',
          selected: selectedBack(back, last.lesson, last.selected),
        }
      }),
    redo: () =>
      store.setState((last) => {
        const [on, ...future] = last.future
        if (!on || !last.lesson) return last
        return {
          lesson: on,
          past: [...last.past, last.lesson],
          future,
          field: '',
          selected: selectedBack(on, last.lesson, last.selected),
        }
      }),
  }
}

export type DraftStore = ReturnType<typeof createDraft>
