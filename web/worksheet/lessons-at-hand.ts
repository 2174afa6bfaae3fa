/** Lessons that a sheet can be made of: those that come with the program, and one of somebody's own that is open. */
import { READY_LESSONS } from '../lesson/ready-lessons.ts'
import type { LessonState } from '../store/lesson.ts'
import type { AtHand } from './order.ts'

export function lessonsAtHand({ lesson, builtIn }: LessonState): AtHand['lessons'] {
  const own = lesson && !builtIn ? [{ lesson, builtIn: false }] : []
  return [...READY_LESSONS.map((each) => ({ lesson: each, builtIn: true })), ...own]
}
