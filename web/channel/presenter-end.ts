/**
 * The presenter window's end of the line. It keeps a workshop of its own that stands as the stage does, without a
 * picture and without a clock, and sends commands. When the stage comes back it is told how far its lesson had come.
 */
import { createStore } from 'zustand/vanilla'
import { parseMachine } from '../../sim/machine/file.ts'
import type { Workshop } from '../frame/workshop.ts'
import { parseLesson } from '../lesson/lesson-file.ts'
import { isSame } from '../file/difference.ts'
import type { Lesson } from '../store/lesson.ts'
import { noLesson } from '../store/lesson.ts'
import { type Home, type OtherWindow, openLine } from './line.ts'
import type { Body, Command, Message, Snapshot, Sound } from './message.ts'
import { randomName } from './room.ts'
import { followSnapshot } from './snapshot.ts'
import { BEAT_EVERY, GONE_AFTER } from './stage-end.ts'

export interface PresenterState {
  /** looking: no stage yet; lost: it went with its page; closed: its lesson was closed. */
  readonly stage: 'looking' | 'connected' | 'lost' | 'closed'
  readonly checks: boolean
  readonly sound: Sound
}

/** How far the lesson had come on a stage that went. */
interface Left {
  readonly lesson: Lesson
  readonly snapshot: Snapshot
}

export function startPresenterEnd(mirror: Workshop, room: string, opener: OtherWindow | null, home?: Home) {
  const store = createStore<PresenterState>(() => ({ stage: 'looking', checks: false, sound: 'untried' }))
  const from = randomName()
  let stage = ''
  let heardAt = 0
  let stamp = -1
  let left: Left | null = null
  let snapshot: Snapshot | null = null
  const line = openLine(room, (message) => hear(message), home)
  if (opener) line.reach(opener)
  const ask = () => line.post('presenter', { from, asks: true })

  const take = (id: string) => {
    const { lesson } = mirror.lesson.getState()
    if (lesson && snapshot && snapshot.from !== id) left = { lesson, snapshot }
    stage = id
    stamp = -1
    ask()
  }
  const lose = (how: 'lost' | 'closed') => {
    const { lesson } = mirror.lesson.getState()
    left = how === 'lost' && lesson && snapshot ? { lesson, snapshot } : null
    snapshot = null
    stage = ''
    store.setState({ stage: how, checks: false })
  }
  const hearStage = ({ from: id, leads, takes }: Body<'stage'>) => {
    if (id === stage && !leads) stage = ''
    else if (leads && (takes || stage === '') && id !== stage) take(id)
  }
  const hearLesson = ({ run, builtIn, text }: Body<'lesson'>) => {
    const { lesson } = parseLesson(text)
    if (lesson) mirror.lesson.setState({ ...noLesson, lesson, builtIn, run }, true)
  }
  const hearMachine = ({ stamp: now, text }: Body<'machine'>) => {
    const { machine } = parseMachine(text)
    if (!machine) return
    stamp = now
    mirror.document.store.setState({ machine, past: [], future: [], gestureStart: null })
  }
  /** A stage that was opened again at the topic where it was lost goes on from there. */
  const goOn = (now: Snapshot) => {
    const { lesson } = mirror.lesson.getState()
    const before = left
    left = null
    if (!before || before.snapshot.from === now.from || before.snapshot.place.beat !== now.place.beat) return
    if (!isSame(before.lesson, lesson)) return
    const { place, moment } = before.snapshot
    line.post('resume', { from, to: now.from, place, moment })
  }
  const hearSnapshot = (now: Snapshot) => {
    if (now.run !== mirror.lesson.getState().run || now.stamp !== stamp) return
    if (!followSnapshot(mirror, now)) return
    snapshot = now
    store.setState({ stage: 'connected', checks: now.checks, sound: now.sound })
    goOn(now)
  }
  const hear = (message: Message): void => {
    if (message.kind === 'stage') hearStage(message.body)
    if (message.body.from !== stage) return
    heardAt = Date.now()
    if (message.kind === 'lesson') hearLesson(message.body)
    else if (message.kind === 'machine') hearMachine(message.body)
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
