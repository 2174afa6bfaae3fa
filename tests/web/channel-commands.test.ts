/** What the presenter window commands, and what becomes of it on the stage. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { readMessage } from '../../web/channel/message.ts'
import { momentOf } from '../../web/channel/snapshot.ts'
import { goTo } from '../../web/lesson/play.ts'
import { DirectChannel, ROOM, closeChannels, openPresenter, openStage } from '../support/channel-pages.ts'

beforeEach(() => {
  vi.useFakeTimers({ now: Date.parse('2026-05-04T09:30:00Z') })
  vi.stubGlobal('BroadcastChannel', DirectChannel)
})
afterEach(() => {
  closeChannels()
  vi.unstubAllGlobals()
  vi.useRealTimers()
})

const wait = (milliseconds: number) => vi.advanceTimersByTime(milliseconds)

test('a command is done once, however often it comes, and only on the stage that it is for', () => {
  const stage = openStage()
  const presenter = openPresenter()
  wait(1000)
  DirectChannel.sent = []
  presenter.end.send('next')
  const command = DirectChannel.sent.map(readMessage).find((each) => each?.kind === 'command')!
  expect(stage.workshop.lesson.getState().step).toBe('reveal')
  const other = new DirectChannel(`counterturn.${ROOM}`)
  for (let time = 0; time < 3; time++) other.postMessage(command)
  other.postMessage({ ...command, seq: command.seq + 1, body: { ...command.body, to: 'another' } })
  expect(stage.workshop.lesson.getState()).toMatchObject({ beat: 0, step: 'reveal' })
  other.postMessage({ ...command, seq: command.seq + 2 })
  expect(stage.workshop.lesson.getState()).toMatchObject({ beat: 1, step: 'ask' })
})

test('what is asked is held still for the presenter window too', () => {
  const stage = openStage()
  const presenter = openPresenter()
  wait(1000)
  goTo(stage.workshop, 4)
  const before = momentOf(stage.workshop.frame)
  for (const command of ['turn', 'wormTurn', 'wheelTurn', 'zero'] as const) presenter.end.send(command)
  expect(momentOf(stage.workshop.frame)).toEqual(before)
  expect(stage.workshop.frame.motion).toBe('still')
  presenter.end.send('reveal')
  presenter.end.send('wheelTurn')
  expect(stage.workshop.frame.motion).toBe('hand')
})

test('nothing that is committed or revealed is taken back by Back', () => {
  const stage = openStage()
  const presenter = openPresenter()
  wait(1000)
  presenter.end.send('next')
  presenter.end.send('next')
  presenter.end.send('back')
  expect(stage.workshop.lesson.getState()).toMatchObject({ beat: 0, step: 'reveal' })
  presenter.end.send('goTo', 99)
  presenter.end.send('goTo', -1)
  presenter.end.send('goTo', 0.5)
  expect(stage.workshop.lesson.getState().beat).toBe(0)
})

test('cover, large and room check are on and off as commanded', () => {
  const { workshop, end } = openStage()
  const presenter = openPresenter()
  wait(1000)
  for (const value of [1, 0, 1, 0]) {
    presenter.end.send('large', value)
    presenter.end.send('cover')
    presenter.end.send('check', value)
    expect(workshop.view.getState().large).toBe(value === 1)
    expect(workshop.lesson.getState().blank).toBe(value === 1)
    expect(end.store.getState().checks).toBe(value === 1)
    wait(200)
    expect(presenter.end.store.getState().checks).toBe(value === 1)
    expect(presenter.mirror.lesson.getState().blank).toBe(value === 1)
  }
})
