/**
 * The stage's end of the line: it has the machine and the lesson, tells the presenter window what they do, at most ten
 * times a second, and does what is commanded there. Of two stages on one line one leads; the newer asks which.
 */
import { createStore } from 'zustand/vanilla'
import { printMachine } from '../../sim/machine/file.ts'
import type { Workshop } from '../frame/workshop.ts'
import { type Home, type OtherWindow, openLine } from './line.ts'
import type { Body, Message, Sound } from './message.ts'
import { OBEY, resume } from './obey.ts'
import { randomName } from './room.ts'
import { snapshotOf } from './snapshot.ts'
import { playTick } from './tick.ts'

/** Between two signs of life [ms] */
export const BEAT_EVERY = 1000
/** Without a sign of life for this long the other end is gone [ms] */
export const GONE_AFTER = 3000
/** Between two snapshots [ms] */
const SNAPSHOT_EVERY = 100

export interface StageEndState {
  /** A presenter window is there. */
  readonly presenter: boolean
  /** Commands are for this stage. */
  readonly leads: boolean
  /** Another stage leads, and this one has to ask, or has asked and left it there. */
  readonly asks: boolean
  /** The room check covers the stage. */
  readonly checks: boolean
  /** How often its mark was set turning */
  readonly spins: number
  readonly sound: Sound
}

const begun: StageEndState = {
  presenter: false,
  leads: true,
  asks: false,
  checks: false,
  spins: 0,
  sound: 'untried',
}

export function startStageEnd(workshop: Workshop, room: string, home?: Home) {
  const store = createStore<StageEndState>(() => begun)
  const from = randomName()
  let since = Date.now()
  let stamp = 0
  let presenterAt = 0
  let otherAt = 0
  const line = openLine(room, (message) => hear(message), home)

  const snapshot = () => {
    const { checks, sound } = store.getState()
    return snapshotOf(workshop, { from, stamp, checks, sound })
  }
  const tellLesson = () => {
    const { lesson, run, builtIn } = workshop.lesson.getState()
    if (lesson) line.post('lesson', { from, run, builtIn, text: JSON.stringify(lesson) })
  }
  const tellMachine = () => {
    const { machine } = workshop.document.store.getState()
    line.post('machine', { from, stamp, text: printMachine(machine) })
  }
  const signOfLife = (takes = false) =>
    line.post('stage', { from, since, leads: store.getState().leads, takes })
  const isHeard = () => store.getState().presenter && store.getState().leads
  const tellSoon = atMostEvery(SNAPSHOT_EVERY, () => {
    if (isHeard() && workshop.lesson.getState().lesson) line.post('snapshot', snapshot())
  })
  const tellAll = () => {
    if (!isHeard()) return
    tellLesson()
    tellMachine()
    tellSoon.now()
  }

  const setSound = (sound: Sound) => store.setState({ sound })
  const checkRoom = ({ command, value }: Body<'command'>) => {
    if (command === 'check') store.setState({ checks: value === 1 })
    else if (command === 'spin') store.setState(({ spins }) => ({ spins: spins + 1 }))
    else void playTick().then(setSound)
  }
  const isForMe = ({ to }: { readonly to: string }) => to === from && store.getState().leads
  const hear = (message: Message): void => {
    if (message.kind === 'presenter') {
      presenterAt = Date.now()
      const isNew = !store.getState().presenter
      if (isNew) store.setState({ presenter: true })
      if (isNew || message.body.asks) {
        signOfLife()
        tellAll()
      }
    } else if (message.kind === 'stage') hearStage(message.body)
    else if (message.kind === 'command' && isForMe(message.body)) {
      const { command, value } = message.body
      if (command === 'check' || command === 'spin' || command === 'tick') checkRoom(message.body)
      else OBEY[command](workshop, value)
    } else if (message.kind === 'resume' && isForMe(message.body))
      resume(workshop, message.body.place, message.body.moment)
  }
  const hearStage = (other: Body<'stage'>) => {
    if (!other.leads) return
    const { leads } = store.getState()
    const wasFirst = other.since < since || (other.since === since && other.from < from)
    if (other.takes || wasFirst) {
      otherAt = Date.now()
      if (leads) store.setState({ leads: false, asks: true })
    }
  }
  const lead = () => {
    since = Date.now()
    store.setState({ leads: true, asks: false })
    signOfLife(true)
    tellAll()
  }

  const beat = setInterval(() => {
    const now = Date.now()
    const { leads, presenter } = store.getState()
    if (presenter && now - presenterAt > GONE_AFTER) store.setState({ presenter: false, checks: false })
    if (!leads && now - otherAt > GONE_AFTER) lead()
    else signOfLife()
  }, BEAT_EVERY)
  const unsubscribe = [
    workshop.lesson.subscribe((state, before) => {
      if (state.lesson && state.run !== before.run && isHeard()) tellLesson()
      tellSoon()
    }),
    workshop.document.store.subscribe((state, before) => {
      if (state.machine === before.machine) return
      stamp++
      if (isHeard()) tellMachine()
      tellSoon()
    }),
    ...[workshop.exercise, workshop.bench, workshop.readout, store].map((each) => each.subscribe(tellSoon)),
    workshop.view.subscribe((now, before) => {
      if (now.lit !== before.lit || now.large !== before.large || now.withoutLosses !== before.withoutLosses)
        tellSoon()
    }),
  ]
  signOfLife()
  return {
    store,
    lead,
    /** Leaves it to the other stage. */
    leave: (): void => store.setState({ asks: false }),
    endCheck: (): void => store.setState({ checks: false }),
    reach: (other: OtherWindow): void => line.reach(other),
    /** The page goes, and may come again. */
    leaving: (): void => line.post('away', { from, closed: false }),
    stop(): void {
      line.post('away', { from, closed: true })
      clearInterval(beat)
      tellSoon.stop()
      for (const each of unsubscribe) each()
      line.close()
    },
  }
}

export type StageEnd = ReturnType<typeof startStageEnd>

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
  return Object.assign(soon, { now, stop: () => clearTimeout(waiting) })
}
