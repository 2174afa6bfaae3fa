/** Lends the stage to a topic that is being written, and gives the person's own back. */
import { bringBack } from '../frame/borrow.ts'
import type { Workshop } from '../frame/workshop.ts'
import type { BeatStage } from '../store/lesson.ts'
import { putStage } from './beat-stage.ts'
import { closeLesson } from './play.ts'

/** Shows a stage with nothing asked, for looking at it and for changing it. */
export function arrange(workshop: Workshop, stage: BeatStage): void {
  const { view } = workshop
  closeLesson(workshop)
  if (view.getState().way !== 'demonstrate') location.hash = '#/demonstrate'
  view.setState({ way: 'demonstrate', sheet: 'none' })
  bringBack(workshop)
  putStage(workshop, stage)
}

/** Ends it; a question or a lesson that has taken the stage meanwhile keeps it. */
export function endArranging(workshop: Workshop): void {
  const { view, lesson } = workshop
  if (view.getState().way !== 'predict' && !lesson.getState().lesson) bringBack(workshop)
}
