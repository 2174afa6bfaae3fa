/** What a question keeps back: while it is asked the machine is held still and nothing tells how far anything turns. */
import { useStore } from 'zustand'
import type { Question } from '../../sim/question/question.ts'
import type { LessonState } from '../store/lesson.ts'
import { type Workshop, useView, useWorkshop } from './workshop.ts'

const lessonAsks = ({ lesson, step }: LessonState, steps: readonly LessonState['step'][]): boolean =>
  lesson !== null && steps.includes(step)

/** Whether the machine of a topic runs while it is asked, since what is asked does not turn with it. */
export function runsWhileAsked({ lesson, beat, question }: LessonState, asked: Question | null): boolean {
  const there = lesson?.beats[beat]
  const stage = there?.questions[question]?.stage ?? there?.stage
  return stage?.motion === 'running' && !asked?.gearing && !asked?.trial
}

/** Whether counts, ratio and readings are covered. */
export const isCovered = ({ view, exercise, lesson }: Workshop): boolean =>
  view.getState().way === 'predict'
    ? exercise.getState().phase !== 'compare'
    : lessonAsks(lesson.getState(), ['ask', 'count'])

/** Whether nothing may be turned yet. */
export const isHeld = ({ view, exercise, lesson }: Workshop): boolean =>
  view.getState().way === 'predict'
    ? exercise.getState().phase === 'predict'
    : lessonAsks(lesson.getState(), ['ask']) &&
      !runsWhileAsked(lesson.getState(), exercise.getState().question)

export function useHeld(): boolean {
  const { exercise, lesson } = useWorkshop()
  const way = useView((view) => view.way)
  const { phase, question } = useStore(exercise)
  const asks = useStore(lesson, (now) => lessonAsks(now, ['ask']) && !runsWhileAsked(now, question))
  return way === 'predict' ? phase === 'predict' : asks
}

export function useCovered(): boolean {
  const { exercise, lesson } = useWorkshop()
  const way = useView((view) => view.way)
  const phase = useStore(exercise, (now) => now.phase)
  const asks = useStore(lesson, (now) => lessonAsks(now, ['ask', 'count']))
  return way === 'predict' ? phase !== 'compare' : asks
}
