/** The one end of the line that a page's stage has while a lesson is led; it ends with the lesson. */
import type { Workshop } from '../frame/workshop.ts'
import { roomOf } from './room.ts'
import { type StageEnd, startStageEnd } from './stage-end.ts'

const ENDS = new WeakMap<Workshop, StageEnd>()

export function stageEndOf(workshop: Workshop): StageEnd {
  const known = ENDS.get(workshop)
  if (known) return known
  const end = startStageEnd(workshop, roomOf())
  ENDS.set(workshop, end)
  const leaving = () => end.leaving()
  addEventListener('pagehide', leaving)
  const unsubscribe = workshop.lesson.subscribe(({ lesson, mode }) => {
    if (lesson && mode === 'lead') return
    unsubscribe()
    removeEventListener('pagehide', leaving)
    ENDS.delete(workshop)
    end.stop()
  })
  return end
}
