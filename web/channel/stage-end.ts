/**
 * The stage's end of the line: it has the machine and the lesson, tells the presenter window what they do, and does
 * what is commanded there. Of two stages on one line one leads; the newer asks which.
 */
import { type StoreApi, createStore } from 'zustand/vanilla'
import type { Workshop } from '../frame/workshop.ts'
import { type Home, type OtherWindow, openLine } from './line.ts'
import type { Body, Message, Sound } from './message.ts'
import { OBEY, resume } from './obey.ts'
import { randomName } from './room.ts'
import { createTeller } from './stage-teller.ts'
import { playTick } from '../frame/tick.ts'

/** Between two signs of life [ms] */
export const BEAT_EVERY = 1000
/** Without a sign of life for this long the other end is gone [ms] */
export const GONE_AFTER = 3000

export interface StageEndState {
  /** A presenter window is there. */
  readonly presenter: boolean
  /** Commands are for this stage. */
  readonly leads: boolean
  /** Another stage leads, and it is asked here which of the two shall. */
  readonly asks: boolean
  /** The room check covers the stage. */
  readonly checks: boolean
  /** How often its mark was set turning */
  readonly spins: number
  readonly sound: Sound
}
type Store = StoreApi<StageEndState>

const begun: StageEndState = {
  presenter: false,
  leads: true,
  asks: false,
  checks: false,
  spins: 0,
  sound: 'untried',
}

function command(workshop: Workshop, store: Store, body: Body<'command'>): void {
  const { command: name, value } = body
  if (name === 'check') store.setState({ checks: value === 1 })
  else if (name === 'spin') store.setState(({ spins }) => ({ spins: spins + 1 }))
  else if (name === 'tick') void playTick().then((sound) => store.setState({ sound }))
  else OBEY[name](workshop, value)
}

/** Which stage leads: the one that was there first, until another takes the lead or this one has gone. */
function createLead(store: Store, from: string, tell: (body: Body<'stage'>) => void) {
  let since = Date.now()
  let otherAt = 0
  const signOfLife = (takes = false) => tell({ from, since, leads: store.getState().leads, takes })
  const take = () => {
    since = Date.now()
    store.setState({ leads: true, asks: false })
    signOfLife(true)
  }
  return {
    take,
    signOfLife,
    hear(other: Body<'stage'>): void {
      const wasFirst = other.since < since || (other.since === since && other.from < from)
      if (!other.leads || !(other.takes || wasFirst)) return
      otherAt = Date.now()
      if (store.getState().leads) store.setState({ leads: false, asks: true })
    },
    /** Takes the lead once whoever had it is gone; true where it did. */
    takeIfGone(now: number): boolean {
      if (store.getState().leads || now - otherAt <= GONE_AFTER) return false
      take()
      return true
    },
  }
}

export function startStageEnd(workshop: Workshop, room: string, home?: Home) {
  const store = createStore<StageEndState>(() => begun)
  const from = randomName()
  let presenterAt = 0
  const line = openLine(room, (message) => hear(message), home)
  const lead = createLead(store, from, (body) => line.post('stage', body))
  const teller = createTeller({
    workshop,
    line,
    from,
    isHeard: () => store.getState().presenter && store.getState().leads,
    seen: () => {
      const { checks, sound } = store.getState()
      return { checks, sound }
    },
  })
  const isForMe = ({ to }: { readonly to: string }) => to === from && store.getState().leads
  const hearPresenter = ({ asks }: Body<'presenter'>) => {
    presenterAt = Date.now()
    const isNew = !store.getState().presenter
    if (isNew) store.setState({ presenter: true })
    // An answer comes at once, also from a page whose own clock the browser slows down because it is hidden.
    lead.signOfLife()
    if (isNew || asks) teller.all()
  }
  const hear = (message: Message): void => {
    if (message.kind === 'presenter') hearPresenter(message.body)
    else if (message.kind === 'stage') lead.hear(message.body)
    else if (message.kind === 'command' && isForMe(message.body)) command(workshop, store, message.body)
    else if (message.kind === 'resume' && isForMe(message.body))
      resume(workshop, message.body.place, message.body.moment)
  }
  const takeLead = () => {
    lead.take()
    teller.all()
  }
  const beat = setInterval(() => {
    const now = Date.now()
    if (store.getState().presenter && now - presenterAt > GONE_AFTER)
      store.setState({ presenter: false, checks: false })
    if (lead.takeIfGone(now)) teller.all()
    else lead.signOfLife()
  }, BEAT_EVERY)
  const unsubscribe = store.subscribe(teller.soon)
  lead.signOfLife()
  return {
    store,
    lead: takeLead,
    /** Leaves it to the other stage. */
    leave: (): void => store.setState({ asks: false }),
    endCheck: (): void => store.setState({ checks: false }),
    reach: (other: OtherWindow): void => line.reach(other),
    /** The page goes, and may come again. */
    leaving: (): void => line.post('away', { from, closed: false }),
    stop(): void {
      line.post('away', { from, closed: true })
      clearInterval(beat)
      unsubscribe()
      teller.stop()
      line.close()
    },
  }
}

export type StageEnd = ReturnType<typeof startStageEnd>
