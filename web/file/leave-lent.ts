import { bringBack } from '../frame/borrow.ts'
import type { Workshop } from '../frame/workshop.ts'
import { noExercise } from '../store/exercise.ts'
import { noLesson } from '../store/lesson.ts'

/** Something else is opened: the lesson ends, the question goes, and what the person had on the stage comes back first. */
export function leaveLent(workshop: Workshop): void {
  workshop.lesson.setState(noLesson, true)
  workshop.exercise.setState(noExercise, true)
  bringBack(workshop)
}
