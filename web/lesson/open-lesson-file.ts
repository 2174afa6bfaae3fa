/** A lesson from a file that somebody chose. */
import type { ReadableFile } from '../file/open-save.ts'
import type { CheckedLesson } from './check-lesson.ts'
import { LONGEST_LESSON, parseLesson } from './lesson-file.ts'

/** A character takes at most three bytes. [byte] */
const MOST_BYTES = 3 * LONGEST_LESSON

const refused = (message: string): CheckedLesson => ({
  lesson: null,
  problems: [{ path: '', severity: 'error', message }],
})

export async function readLessonFile(file: ReadableFile): Promise<CheckedLesson> {
  if (file.size > MOST_BYTES)
    return refused(`must be a file of at most ${MOST_BYTES / 1000} kB, got ${Math.ceil(file.size / 1000)} kB`)
  let text: string
  try {
    text = await file.text()
  } catch {
    return refused('must be a file that this browser may read, and it did not let itself be read')
  }
  return parseLesson(text)
}
