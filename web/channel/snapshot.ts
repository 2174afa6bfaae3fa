/** Between a workshop and what is sent about it: the stage writes snapshots, the presenter window follows them. */
import { isSame } from '../file/difference.ts'
import { placeAt } from '../frame/frame.ts'
import type { Frame } from '../frame/frame-state.ts'
import type { Workshop } from '../frame/workshop.ts'
import { beatOf, withExercise } from '../lesson/progress.ts'
import type { Phase } from '../store/exercise.ts'
import { benchFor } from '../store/bench.ts'
import type { Moment, Place, Snapshot } from './message.ts'

export function momentOf({ state }: Frame): Moment {
  const { turns, speed, acceleration, capacitorVoltage, fuse, isOpen } = state
  return { ...turns, speed, acceleration, capacitorVoltage, fuse, isOpen }
}

/** Where the lesson is, with what has become of the question that is asked now. */
export function placeOf({ lesson, exercise, view }: Workshop): Place {
  const { beat, question, step, seen, exercises } = withExercise(lesson.getState(), exercise.getState())
  const phases = Object.entries(exercises).map(([key, { phase }]): [string, Phase] => [key, phase])
  return { beat, question, step, seen, phases: Object.fromEntries(phases), lit: view.getState().lit }
}

type Seen = Pick<Snapshot, 'from' | 'stamp' | 'checks' | 'sound'>

export function snapshotOf(workshop: Workshop, seen: Seen): Snapshot {
  const { lesson, view, frame, bench } = workshop
  const { run, mode, blank } = lesson.getState()
  const { large, withoutLosses } = view.getState()
  return {
    ...seen,
    run,
    mode,
    place: placeOf(workshop),
    blank,
    large,
    withoutLosses,
    motion: frame.motion,
    moment: momentOf(frame),
    bench: bench.getState(),
  }
}

/** Puts the worm and what turns it where the moment says. */
export function placeMoment(frame: Frame, moment: Moment): void {
  const { turns, ticks, rest, speed, acceleration, capacitorVoltage, fuse, isOpen } = moment
  Object.assign(frame.state, { speed, acceleration, capacitorVoltage, fuse, isOpen })
  placeAt(frame, turns, ticks, rest)
}

/** Lets the presenter window's own workshop stand as the stage does. False where the lesson has no such place. */
export function followSnapshot(mirror: Workshop, snapshot: Snapshot): boolean {
  const { lesson, view, bench, frame, document } = mirror
  const { place, mode, blank, large, withoutLosses, motion, moment } = snapshot
  const { beat, question, step, seen, lit } = place
  const there = beatOf({ ...lesson.getState(), beat })
  if (!there || question >= Math.max(1, there.questions.length)) return false
  const now = { mode, beat, question, step, seen, blank }
  if (!isSame({ ...lesson.getState(), ...now }, lesson.getState())) lesson.setState(now)
  const shown = { lit, large, withoutLosses }
  if (!isSame({ ...view.getState(), ...shown }, view.getState())) view.setState(shown)
  const set = benchFor(document.store.getState().machine, snapshot.bench)
  if (!isSame(set, bench.getState())) bench.setState(set)
  frame.motion = motion
  placeMoment(frame, moment)
  mirror.copyReading()
  return true
}
