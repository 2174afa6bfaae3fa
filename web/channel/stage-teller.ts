/** Tells the presenter window about the stage: lesson and machine when they change, where all stands ten times a second. */
import { printMachine } from '../../sim/machine/file.ts'
import type { Workshop } from '../frame/workshop.ts'
import type { Line } from './line.ts'
import type { Snapshot } from './message.ts'
import { snapshotOf } from './snapshot.ts'

/** Between two snapshots [ms] */
const SNAPSHOT_EVERY = 100

/** Acts at once when it has not for a while, else as soon as that while is over; `now` acts without waiting. */
function atMostEvery(milliseconds: number, act: () => void) {
  let last = 0
  let waiting: ReturnType<typeof setTimeout> | undefined
  const now = () => {
    clearTimeout(waiting)
    waiting = undefined
    last = Date.now()
    act()
  }
  const soon = () => {
    if (waiting === undefined) waiting = setTimeout(now, Math.max(0, last + milliseconds - Date.now()))
  }
  return { now, soon, stop: () => clearTimeout(waiting) }
}

interface TellerParts {
  readonly workshop: Workshop
  readonly line: Line
  readonly from: string
  /** Whether anybody listens to this stage. */
  readonly isHeard: () => boolean
  readonly seen: () => Pick<Snapshot, 'checks' | 'sound'>
}

export function createTeller({ workshop, line, from, isHeard, seen }: TellerParts) {
  const { lesson, document, exercise, bench, readout, view } = workshop
  let stamp = 0
  const tellLesson = () => {
    const { lesson: open, run, builtIn } = lesson.getState()
    if (open && isHeard()) line.post('lesson', { from, run, builtIn, text: JSON.stringify(open) })
  }
  const tellMachine = () => {
    const { machine } = document.store.getState()
    if (isHeard()) line.post('machine', { from, stamp, text: printMachine(machine) })
  }
  const snapshots = atMostEvery(SNAPSHOT_EVERY, () => {
    if (isHeard() && lesson.getState().lesson)
      line.post('snapshot', snapshotOf(workshop, { from, stamp, ...seen() }))
  })
  const { soon } = snapshots
  const unsubscribe = [
    lesson.subscribe((state, before) => {
      if (state.run !== before.run) tellLesson()
      soon()
    }),
    document.store.subscribe((state, before) => {
      if (state.machine === before.machine) return
      stamp++
      tellMachine()
      soon()
    }),
    view.subscribe((now, before) => {
      if (now.lit !== before.lit || now.large !== before.large || now.withoutLosses !== before.withoutLosses)
        soon()
    }),
    ...[exercise, bench, readout].map((each) => each.subscribe(soon)),
  ]
  return {
    soon,
    all(): void {
      tellLesson()
      tellMachine()
      snapshots.now()
    },
    stop(): void {
      snapshots.stop()
      for (const each of unsubscribe) each()
    },
  }
}
