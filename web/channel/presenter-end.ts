/**
 * The presenter window's end of the line. It follows the stage that leads and sends it commands; a stage that was
 * opened again at its topic is told how far the lesson had come.
 */
import { createStore } from 'zustand/vanilla'
import type { Workshop } from '../frame/workshop.ts'
import { type Home, type OtherWindow, openLine } from './line.ts'
import type { Body, Command, Message, Snapshot, Sound } from './message.ts'
import { randomName } from './room.ts'
import { BEAT_EVERY, GONE_AFTER } from './stage-end.ts'
import { createFollower } from './stage-follower.ts'

export interface PresenterState {
  /** looking: no stage yet; lost: it went with its page; closed: its lesson was closed. */
  readonly stage: 'looking' | 'connected' | 'lost' | 'closed'
  readonly checks: boolean
  readonly sound: Sound
}

export function startPresenterEnd(mirror: Workshop, room: string, opener: OtherWindow | null, home?: Home) {
  const store = createStore<PresenterState>(() => ({ stage: 'looking', checks: false, sound: 'untried' }))
  const from = randomName()
  const follower = createFollower(mirror)
  let stage = ''
  let heardAt = 0
  const line = openLine(room, (message) => hear(message), home)
  if (opener) line.reach(opener)
  const ask = () => line.post('presenter', { from, asks: true })

  const lose = (how: 'lost' | 'closed') => {
    follower.leave(how)
    stage = ''
    store.setState({ stage: how, checks: false })
  }
  const hearStage = ({ from: id, leads, takes }: Body<'stage'>) => {
    if (id === stage && !leads) lose('lost')
    else if (leads && id !== stage && (takes || stage === '')) {
      if (stage !== '') lose('lost')
      stage = id
      ask()
    }
  }
  const hearSnapshot = (now: Snapshot) => {
    if (!follower.hearSnapshot(now)) return
    store.setState({ stage: 'connected', checks: now.checks, sound: now.sound })
    const before = follower.toGoOn(now)
    if (before) line.post('resume', { from, to: now.from, place: before.place, moment: before.moment })
  }
  const hear = (message: Message): void => {
    if (message.kind === 'stage') hearStage(message.body)
    if (message.body.from !== stage) return
    heardAt = Date.now()
    if (message.kind === 'lesson') follower.hearLesson(message.body)
    else if (message.kind === 'machine') follower.hearMachine(message.body)
    else if (message.kind === 'snapshot') hearSnapshot(message.body)
    else if (message.kind === 'away') lose(message.body.closed ? 'closed' : 'lost')
  }
  const beat = setInterval(() => {
    if (stage !== '' && Date.now() - heardAt > GONE_AFTER) lose('lost')
    const asks = stage !== '' && store.getState().stage !== 'connected'
    line.post('presenter', { from, asks })
  }, BEAT_EVERY)
  ask()
  return {
    store,
    send: (command: Command, value = 0): void => {
      if (stage !== '') line.post('command', { from, to: stage, command, value })
    },
    stop(): void {
      clearInterval(beat)
      line.close()
    },
  }
}

export type PresenterEnd = ReturnType<typeof startPresenterEnd>
