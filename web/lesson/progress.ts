/**
 * Through a lesson, step by step: every change is a lesson's state in, a lesson's state out, the same one where there
 * is nowhere to go. A question goes from Ask over Count, where there is something to count, to Reveal; going back
 * finds it as it was left.
 */
import type { Question } from '../../sim/question/question.ts'
import { type Exercise, type Phase, asked } from '../store/exercise.ts'
import type { Beat, BeatStage, LessonState, LessonStep } from '../store/lesson.ts'
import type { PowerStop } from '../store/view.ts'
import { questionAt } from './question-of.ts'

const STEP_OF: Readonly<Record<Phase, LessonStep>> = { predict: 'ask', count: 'count', compare: 'reveal' }
const PHASE_OF: Readonly<Record<LessonStep, Phase>> = {
  show: 'compare',
  ask: 'predict',
  count: 'count',
  reveal: 'compare',
}

export const beatOf = ({ lesson, beat }: LessonState): Beat | null => lesson?.beats[beat] ?? null

/** What stands on the stage now: what is asked may have one of its own. */
export const stageAt = (state: LessonState): BeatStage | null =>
  beatOf(state)?.questions[state.question]?.stage ?? beatOf(state)?.stage ?? null

export const askedNow = ({ lesson, beat, question }: LessonState): Question | null =>
  lesson && questionAt(lesson, beat, question)

const exerciseKey = (beat: Beat, question: number): string => `${beat.id}/${question}`

/** The question's exercise as it was left; a new one where it was not asked yet; null where nothing is asked. */
export function exerciseOf(state: LessonState): Exercise | null {
  const beat = beatOf(state)
  const question = askedNow(state)
  if (!beat || !question) return null
  return state.exercises[exerciseKey(beat, state.question)] ?? asked(question)
}

/** Keeps what became of the question that stands on the stage. */
export function withExercise(state: LessonState, exercise: Exercise): LessonState {
  const beat = beatOf(state)
  if (!beat || !exercise.question) return state
  const key = exerciseKey(beat, state.question)
  return {
    ...state,
    step: STEP_OF[exercise.phase],
    exercises: { ...state.exercises, [key]: exercise },
  }
}

/** The same beat or another, at one of its questions, as it was left. */
function at(state: LessonState, beat: number, question: number): LessonState {
  const there = state.lesson?.beats[beat]
  if (!there) return state
  const seen = state.seen.includes(there.id) ? state.seen : [...state.seen, there.id]
  const moved = { ...state, beat, question: Math.max(0, question), seen }
  const exercise = exerciseOf(moved)
  return { ...moved, step: exercise ? STEP_OF[exercise.phase] : 'show' }
}

export const goTo = (state: LessonState, beat: number): LessonState => at(state, beat, 0)

/** As the lesson is opened */
export const begun = (state: LessonState): LessonState => at(state, state.beat, state.question)

function toStep(state: LessonState, step: LessonStep): LessonState {
  const exercise = exerciseOf(state)
  return exercise ? withExercise(state, { ...exercise, phase: PHASE_OF[step] }) : state
}

/** Uncovers the question that is asked; without one there is nothing to reveal. */
export const reveal = (state: LessonState): LessonState =>
  state.step === 'ask' || state.step === 'count' ? toStep(state, 'reveal') : state

/** What the next press of the one button does. */
export type Coming =
  | { readonly kind: 'count' | 'reveal' | 'end' }
  /** By its place in the beat */
  | { readonly kind: 'question'; readonly question: number }
  | { readonly kind: 'light'; readonly stop: PowerStop }
  | { readonly kind: 'topic'; readonly beat: number }

/** Where the light stands, and where it can stand on this machine. */
export interface Lights {
  readonly lit: PowerStop | null
  readonly stops: readonly PowerStop[]
}

function nextStop({ lit, stops }: Lights, by: 1 | -1): PowerStop | null {
  if (lit === null) return by > 0 ? (stops[0] ?? null) : null
  return stops[stops.indexOf(lit) + by] ?? null
}

/** The light walks once all that is asked is revealed. */
export function coming(state: LessonState, lights: Lights): Coming {
  const beat = beatOf(state)
  if (!beat || !state.lesson) return { kind: 'end' }
  if (state.step === 'ask') return { kind: askedNow(state)?.trial ? 'count' : 'reveal' }
  if (state.step === 'count') return { kind: 'reveal' }
  if (state.question + 1 < beat.questions.length) return { kind: 'question', question: state.question + 1 }
  const stop = beat.stage.walk ? nextStop(lights, 1) : null
  if (stop) return { kind: 'light', stop }
  const last = state.beat + 1 >= state.lesson.beats.length
  return last ? { kind: 'end' } : { kind: 'topic', beat: state.beat + 1 }
}

/** One press on; where the light walks, the lesson itself stays. */
export function next(state: LessonState, lights: Lights): LessonState {
  const then = coming(state, lights)
  if (then.kind === 'count' || then.kind === 'reveal') return toStep(state, then.kind)
  if (then.kind === 'question') return at(state, state.beat, then.question)
  return then.kind === 'topic' ? goTo(state, then.beat) : state
}

/** The light's place one back; null where the light does not walk or stands at its beginning. */
export const lightBack = (state: LessonState, lights: Lights): PowerStop | null =>
  beatOf(state)?.stage.walk && state.step !== 'ask' && state.step !== 'count' ? nextStop(lights, -1) : null

/** To the question or beat before, as it was left; nothing that was committed or revealed is taken back. */
export function back(state: LessonState): LessonState {
  if (state.question > 0) return at(state, state.beat, state.question - 1)
  const before = state.lesson?.beats[state.beat - 1]
  return before ? at(state, state.beat - 1, before.questions.length - 1) : state
}
