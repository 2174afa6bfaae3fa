/** What a question keeps back: while it is asked the machine is held still and nothing tells how far anything turns. */
import { useStore } from 'zustand'
import type { LessonState } from '../store/lesson.ts'
import { type Workshop, useView, useWorkshop } from './workshop.ts'

const lessonAsks = ({ lesson, step }: LessonState, steps: readonly LessonState['step'][]): boolean =>
  lesson !== null && steps.includes(step)

/** Whether counts, ratio and readings are covered. */
export const isCovered = ({ view, exercise, lesson }: Workshop): boolean =>
  view.getState().way === 'predict'
    ? exercise.getState().phase !== 'compare'
    : lessonAsks(lesson.getState(), ['ask', 'count'])

/** Whether nothing may be turned yet. */
export const isHeld = ({ view, exercise, lesson }: Workshop): boolean =>
  view.getState().way === 'predict'
    ? exercise.getState().phase === 'predict'
    : lessonAsks(lesson.getState(), ['ask'])

export function useHeld(): boolean {
  const { exercise, lesson } = useWorkshop()
  const way = useView((view) => view.way)
  const predicts = useStore(exercise, (now) => now.phase === 'predict')
  const asks = useStore(lesson, (now) => lessonAsks(now, ['ask']))
  return way === 'predict' ? predicts : asks
}

export function useCovered(): boolean {
  const { exercise, lesson } = useWorkshop()
  const way = useView((view) => view.way)
  const phase = useStore(exercise, (now) => now.phase)
  const asks = useStore(lesson, (now) => lessonAsks(now, ['ask', 'count']))
  return way === 'predict' ? phase !== 'compare' : asks
}
