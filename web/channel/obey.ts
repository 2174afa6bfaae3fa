/** What a command from the presenter window does on the stage: the same as the stage's own buttons and keys. */
import { light } from '../drive/use-walking-keys.ts'
import type { Workshop } from '../frame/workshop.ts'
import { back, closeLesson, goTo, next, reveal, setBlank } from '../lesson/play.ts'
import { beatOf } from '../lesson/progress.ts'
import { questionAt } from '../lesson/question-of.ts'
import { type Exercise, asked } from '../store/exercise.ts'
import type { LessonState } from '../store/lesson.ts'
import type { Command, Moment, Place } from './message.ts'
import { placeMoment } from './snapshot.ts'
import { handTurn, turnOrStop, zeroCounts } from '../frame/turning.ts'

/** Commands about the machine and the lesson; the others are the room check's. */
export type StageCommand = Exclude<Command, 'check' | 'spin' | 'tick'>

export const OBEY: Readonly<Record<StageCommand, (workshop: Workshop, value: number) => void>> = {
  next,
  back,
  goTo,
  reveal,
  // Each press turns it over, so that two in quick succession do so twice.
  cover: (workshop) => setBlank(workshop, !workshop.lesson.getState().blank),
  large: ({ view }, value) => view.setState({ large: value === 1 }),
  turn: turnOrStop,
  wormTurn: (workshop) => handTurn(workshop, 'turn', 1),
  wheelTurn: (workshop) => handTurn(workshop, 'wheel', 1),
  zero: zeroCounts,
  close: closeLesson,
}

/** Questions as they were left, from how far each had come. */
function exercisesAt({ lesson }: LessonState, { phases }: Place): Record<string, Exercise> {
  const found: Record<string, Exercise> = {}
  for (const [beat, { id, questions }] of (lesson?.beats ?? []).entries())
    for (const which of questions.keys()) {
      const key = `${id}/${which}`
      const phase = Object.hasOwn(phases, key) ? phases[key] : undefined
      const question = lesson && phase && questionAt(lesson, beat, which)
      if (phase && question) found[key] = { ...asked(question), phase }
    }
  return found
}

/** Takes a lesson that was opened again to where it had come. */
export function resume(workshop: Workshop, place: Place, moment: Moment): void {
  const { lesson, exercise, frame } = workshop
  const state = lesson.getState()
  if (!state.lesson?.beats[place.beat]) return
  const exercises = exercisesAt(state, place)
  const seen = state.lesson.beats.map(({ id }) => id).filter((id) => place.seen.includes(id))
  // What is asked now would be kept as it is on the page when the lesson goes elsewhere.
  const now = beatOf(state)
  const open = now && exercises[`${now.id}/${state.question}`]
  lesson.setState({ exercises, seen })
  if (open) exercise.setState(open, true)
  goTo(workshop, place.beat)
  for (let which = 0; which < place.question; which++) next(workshop)
  if (place.lit !== null) light(workshop, place.lit)
  placeMoment(frame, { ...moment, speed: 0, acceleration: 0 })
  workshop.copyReading()
}
