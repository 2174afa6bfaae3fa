/** The open page as a link. Fetched after the first picture, since writing a link takes a packer and its words. */
import type { Workshop } from '../frame/workshop.ts'
import type { LessonPlace } from '../store/predict.ts'
import { FIRST_MACHINE } from './first-machine.ts'
import { plainState } from './link-state.ts'
import { ownState } from './workshop-state.ts'
import { writeLink } from './write-link.ts'

/** Where a lesson that comes with the program stands; null while none is open. */
function lessonPlace({ lesson: store }: Workshop): LessonPlace | null {
  const { lesson, builtIn, beat } = store.getState()
  const now = lesson?.beats[beat]
  return lesson && builtIn && now ? { id: lesson.id, beat: now.id } : null
}

/**
 * The link to hand on. What is asked in it is asked anew: with a question it holds the machine, the way and what asks,
 * and nothing that was turned. A lesson stands on machines of its own.
 */
export function linkFor(workshop: Workshop): string {
  const state = ownState(workshop)
  const { machine, way, asked } = state
  const lesson = lessonPlace(workshop)
  if (lesson) return writeLink({ ...plainState(FIRST_MACHINE.machine, way), lesson })
  return writeLink(way === 'predict' ? { ...plainState(machine, way), asked } : state)
}

/** All of it, to be kept in this browser. */
export const wholeLink = (workshop: Workshop): string => writeLink(ownState(workshop))
