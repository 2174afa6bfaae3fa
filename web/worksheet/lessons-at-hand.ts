/** Lessons that a sheet can be made of: those that come with the program, and one of somebody's own that is open. */
import bootCleaner from '../../assets/lessons/boot-cleaner.json?raw'
import choosingCounts from '../../assets/lessons/choosing-counts.json?raw'
import type { Lesson, LessonState } from '../store/lesson.ts'
import type { AtHand } from './order.ts'

const BUILT_IN = [bootCleaner, choosingCounts].map((text) => JSON.parse(text) as Lesson)

export function lessonsAtHand({ lesson, builtIn }: LessonState): AtHand['lessons'] {
  const own = lesson && !builtIn ? [{ lesson, builtIn: false }] : []
  return [...BUILT_IN.map((each) => ({ lesson: each, builtIn: true })), ...own]
}
