/**
 * What a press of Next, Back or Reveal does to the page, from whichever window it comes: the lesson's state, the
 * question, the stage, and what is spoken.
 */
import { hold } from '../frame/frame.ts'
import { bringBack } from '../frame/borrow.ts'
import type { Workshop } from '../frame/workshop.ts'
import { light } from '../drive/use-walking-keys.ts'
import { powersWay, stopsOf } from '../drive/powers-way.ts'
import { finishTrial } from '../question/trial-run.ts'
import { keepRecords } from '../record/keep-records.ts'
import { randomId } from '../record/random-id.ts'
import { recordAnswer } from '../record/record-answer.ts'
import { committed, noExercise, skipped } from '../store/exercise.ts'
import type { Lesson, LessonState } from '../store/lesson.ts'
import { noLesson } from '../store/lesson.ts'
import type { PowerStop } from '../store/view.ts'
import { putStage, runSteadily } from './beat-stage.ts'
import { keepPlace } from './keep-place.ts'
import { placeWords, spokenAnswer } from './lesson-words.ts'
import * as progress from './progress.ts'

/** Where the light stands, and where it can. */
const lightsOf = ({ document, view }: Workshop): progress.Lights => ({
  lit: view.getState().lit,
  stops: stopsOf(document.store.getState().machine),
})

/** What the next press does. */
export const comingNext = (workshop: Workshop): progress.Coming =>
  progress.coming(workshop.lesson.getState(), lightsOf(workshop))

/** A question that turns with the machine is asked with the machine at rest, however the beat runs. */
function mayMove(state: LessonState): boolean {
  const question = progress.askedNow(state)
  return state.step !== 'ask' || !(question?.gearing || question?.trial)
}

const runs = (state: LessonState): boolean => progress.stageAt(state)?.motion === 'running'

function putBeat(workshop: Workshop, state: LessonState): void {
  const stage = progress.stageAt(state)
  if (!stage) return
  const gearing = progress.askedNow(state)?.gearing ?? null
  putStage(workshop, stage, { gearing, moves: mayMove(state) })
}

function spokenPlace(state: LessonState): string {
  const question = state.step === 'reveal' ? progress.askedNow(state) : null
  const answer = question && spokenAnswer(question)
  return answer === null ? placeWords(state) : `${placeWords(state)} ${answer}.`
}

/** What runs goes on running; what is counted stands where the count ends, so that tape and counters bear it out. */
function showAnswer(workshop: Workshop, state: LessonState): void {
  const { frame } = workshop
  const question = progress.askedNow(state)
  if (runs(state)) {
    if (frame.motion !== 'running') runSteadily(workshop)
  } else if (question?.trial) finishTrial(frame, question)
}

/** Makes the page follow the lesson from one state to the next. */
function follow(workshop: Workshop, before: LessonState, now: LessonState): void {
  const { lesson, exercise, announcer } = workshop
  if (now === before) return
  const elsewhere =
    now.lesson !== before.lesson || now.beat !== before.beat || now.question !== before.question
  const state = elsewhere ? { ...now, began: Date.now(), blank: false } : now
  // Covered before the stage turns into what is asked about, so that nothing shows through in between.
  lesson.setState(state, true)
  exercise.setState(progress.exerciseOf(state) ?? noExercise, true)
  if (elsewhere) putBeat(workshop, state)
  else if (state.step === 'reveal') showAnswer(workshop, state)
  announcer.say(spokenPlace(state))
  if (state.step === 'reveal' && state.mode === 'alone') record(workshop)
}

function record(workshop: Workshop): void {
  const { lesson, run, began } = workshop.lesson.getState()
  recordAnswer(workshop, { asker: 'lesson', run, lesson: lesson?.id ?? '', why: '', began })
}

/** The lesson's state with what has become of the question on the page meanwhile. */
function current({ lesson, exercise }: Workshop): LessonState {
  const state = lesson.getState()
  return progress.withExercise(state, exercise.getState())
}

const change = (workshop: Workshop, to: (state: LessonState) => LessonState): void => {
  const state = current(workshop)
  const before = workshop.lesson.getState()
  const now = to(state)
  if (now !== state) follow(workshop, before, now)
}

function lightUp(workshop: Workshop, stop: PowerStop | null): void {
  light(workshop, stop)
  const way = powersWay(workshop.document.store.getState().machine)
  const place = way.findIndex((each) => each.stop === stop)
  if (way[place]) workshop.announcer.say(`${place + 1} of ${way.length}: ${way[place].name}.`)
}

/** Alone, an answer that was begun is neither committed nor lost by a press of Next. */
const isHalfAnswered = ({ lesson, exercise }: Workshop): boolean => {
  const { mode, step } = lesson.getState()
  return mode === 'alone' && step === 'ask' && exercise.getState().text !== ''
}

export function next(workshop: Workshop): void {
  const { lesson, announcer } = workshop
  const state = lesson.getState()
  if (!state.lesson) return
  if (isHalfAnswered(workshop)) {
    announcer.say('Commit your answer, or empty the field to go on without one.')
    return
  }
  if (state.mode === 'alone' && state.step === 'ask') {
    skip(workshop)
    return
  }
  const then = comingNext(workshop)
  if (then.kind === 'light') lightUp(workshop, then.stop)
  else if (then.kind === 'end') announcer.say('This is the last topic.')
  else change(workshop, (now) => progress.next(now, lightsOf(workshop)))
}

export function back(workshop: Workshop): void {
  const lit = progress.lightBack(workshop.lesson.getState(), lightsOf(workshop))
  if (lit) lightUp(workshop, lit)
  else change(workshop, progress.back)
}

export const goTo = (workshop: Workshop, beat: number): void =>
  change(workshop, (state) => progress.goTo(state, beat))

export const first = (workshop: Workshop): void => goTo(workshop, 0)

/** Uncovers what is asked, without a count. */
export const reveal = (workshop: Workshop): void => change(workshop, progress.reveal)

/** Past the question without a prediction, to the count or, where there is nothing to count, to the answer. */
export function skip(workshop: Workshop): void {
  workshop.exercise.setState(skipped, true)
  afterCommitting(workshop)
}

/** Commits the answer that stands in the field; nothing happens while it does not read as one. */
export function commit(workshop: Workshop): void {
  const { exercise } = workshop
  const before = exercise.getState()
  exercise.setState(committed, true)
  if (exercise.getState() !== before) afterCommitting(workshop)
}

function afterCommitting(workshop: Workshop): void {
  const before = workshop.lesson.getState()
  const state = current(workshop)
  follow(workshop, before, progress.askedNow(state)?.trial ? state : progress.reveal(state))
}

/** Covers or uncovers the stage on purpose. */
export function setBlank({ lesson, announcer }: Workshop, blank: boolean): void {
  lesson.setState({ blank })
  announcer.say(blank ? 'The stage is covered.' : 'The stage is uncovered.')
}

interface Opening {
  readonly builtIn: boolean
  readonly mode: LessonState['mode']
  readonly beat?: number
  readonly seen?: readonly string[]
}

/** Calls `stop` when the lesson that is open is closed. */
function untilClosed({ lesson }: Workshop, stop: () => void): void {
  const unsubscribe = lesson.subscribe(({ lesson: open }) => {
    if (open) return
    stop()
    unsubscribe()
  })
}

/** Predict asks a question of its own, so a lesson ends where Predict begins; it can be gone on with. */
function endInPredict(workshop: Workshop): () => void {
  return workshop.view.subscribe(({ way }) => {
    if (way === 'predict') closeLesson(workshop)
  })
}

/** Opens a lesson over what is on the stage, which comes back when it is closed. */
export function openLesson(
  workshop: Workshop,
  lesson: Lesson,
  { builtIn, mode, beat = 0, seen = [] }: Opening,
): void {
  const { view } = workshop
  closeLesson(workshop)
  bringBack(workshop)
  if (mode === 'alone') keepRecords(workshop)
  if (view.getState().way !== 'demonstrate') location.hash = '#/demonstrate'
  view.setState({ way: 'demonstrate', sheet: 'none' })
  const state = { ...noLesson, lesson, builtIn, mode, beat, seen, run: randomId() }
  follow(workshop, noLesson, progress.begun(state))
  untilClosed(workshop, endInPredict(workshop))
  untilClosed(workshop, keepPlace(workshop))
}

export function closeLesson(workshop: Workshop): void {
  const { lesson, exercise, frame, announcer } = workshop
  if (!lesson.getState().lesson) return
  hold(frame)
  lesson.setState(noLesson, true)
  exercise.setState(noExercise, true)
  bringBack(workshop)
  announcer.say('Lesson closed.')
}
