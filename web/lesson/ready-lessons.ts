/** The lessons that come with the program. The tests read their files with every check, so that the page need not. */
import bootCleaner from '../../assets/lessons/boot-cleaner.json?raw'
import choosingCounts from '../../assets/lessons/choosing-counts.json?raw'
import type { Lesson } from '../store/lesson.ts'

export const READY_LESSONS: readonly Lesson[] = [bootCleaner, choosingCounts].map(
  (text) => JSON.parse(text) as Lesson,
)
