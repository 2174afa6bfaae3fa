/** What the presenter window says: what a press of Next does, and what goes on between the two windows. */
import { powersWay } from '../drive/powers-way.ts'
import type { Workshop } from '../frame/workshop.ts'
import { comingNext } from '../lesson/play.ts'
import { STEP_NAMES } from '../lesson/lesson-words.ts'
import { beatOf } from '../lesson/progress.ts'
import type { PresenterState } from '../channel/presenter-end.ts'

/** 'Next uncovers the answer.' */
export function nextWords(mirror: Workshop): string {
  const state = mirror.lesson.getState()
  const then = comingNext(mirror)
  if (then.kind === 'count') return 'Next lets the machine turn, so that the room can count.'
  if (then.kind === 'reveal') return 'Next uncovers the answer on the stage.'
  if (then.kind === 'question')
    return `Next asks question ${state.question + 2} of ${beatOf(state)?.questions.length ?? 0}.`
  if (then.kind === 'light') {
    const way = powersWay(mirror.document.store.getState().machine)
    const name = way.find(({ stop }) => stop === then.stop)?.name ?? then.stop
    return `Next lights the next place: ${name}.`
  }
  return then.kind === 'topic' ? `Next goes to topic ${then.beat + 1}.` : 'This is the last topic.'
}

/** 'Topic 5 of 14, Ask, question 1 of 2' */
export function whereWords(mirror: Workshop): string {
  const { lesson, beat, question, step } = mirror.lesson.getState()
  const questions = lesson?.beats[beat]?.questions.length ?? 0
  const asked = step === 'show' ? '' : `, ${STEP_NAMES[step]}`
  const several = questions > 1 ? `, question ${question + 1} of ${questions}` : ''
  return `Topic ${beat + 1} of ${lesson?.beats.length ?? 0}${asked}${several}`
}

export const CONNECTION: Readonly<Record<PresenterState['stage'], string>> = {
  looking: 'Looking for the stage',
  connected: 'Stage connected',
  lost: 'Stage not connected',
  closed: 'The lesson is closed on the stage',
}

export const minutesText = (minutes: number): string => `${minutes} min`
