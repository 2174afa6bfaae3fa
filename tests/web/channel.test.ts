import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { type Message, readMessage } from '../../web/channel/message.ts'
import { momentOf, placeOf } from '../../web/channel/snapshot.ts'
import { runFrame } from '../../web/frame/frame.ts'
import { back, closeLesson, comingNext, goTo, next } from '../../web/lesson/play.ts'
import {
  DirectChannel,
  type PresenterPage,
  ROOM,
  type StagePage,
  closeChannels,
  lessonNamed,
  openPresenter,
  openStage,
} from '../support/channel-pages.ts'

beforeEach(() => {
  vi.useFakeTimers({ now: Date.parse('2026-05-04T09:30:00Z') })
  vi.stubGlobal('BroadcastChannel', DirectChannel)
})
afterEach(() => {
  closeChannels()
  vi.unstubAllGlobals()
  vi.useRealTimers()
})

const LESSONS = ['boot-cleaner', 'choosing-counts']
const wait = (milliseconds: number) => vi.advanceTimersByTime(milliseconds)

/** All that the two windows have in common. */
function state({ workshop }: Pick<StagePage, 'workshop'>) {
  workshop.copyReading()
  return {
    place: placeOf(workshop),
    moment: momentOf(workshop.frame),
    machine: workshop.document.store.getState().machine,
    bench: workshop.bench.getState(),
    motion: workshop.frame.motion,
    reading: workshop.readout.getState().reading,
    lesson: workshop.lesson.getState().lesson,
  }
}
const followed = ({ mirror }: PresenterPage) => {
  const { lesson, document, bench, frame, readout, view } = mirror
  const { beat, question, step, seen, lesson: open } = lesson.getState()
  return {
    place: { beat, question, step, seen, lit: view.getState().lit },
    moment: momentOf(frame),
    machine: document.store.getState().machine,
    bench: bench.getState(),
    motion: frame.motion,
    reading: readout.getState().reading,
    lesson: open,
  }
}
function expectSame(stage: StagePage, presenter: PresenterPage): void {
  const { place, ...rest } = state(stage)
  const { phases: _, ...shown } = place
  expect(followed(presenter)).toEqual({ place: shown, ...rest })
}

test.each(LESSONS)('%s goes from its first topic to its last by Next in the presenter window', (id) => {
  const lesson = lessonNamed(id)
  const stage = openStage(lesson)
  const presenter = openPresenter()
  wait(1000)
  expect(presenter.end.store.getState().stage).toBe('connected')
  let presses = 0
  while (comingNext(stage.workshop).kind !== 'end' && presses < 200) {
    expect(comingNext(presenter.mirror)).toEqual(comingNext(stage.workshop))
    presenter.end.send('next')
    runFrame(stage.workshop.frame, 0.1)
    wait(200)
    expectSame(stage, presenter)
    presses++
  }
  expect(stage.workshop.lesson.getState().beat).toBe(lesson.beats.length - 1)
  expect(presses).toBeGreaterThan(lesson.beats.length)
})

test('a presenter window that is opened later, or again, knows all', () => {
  const stage = openStage()
  for (let press = 0; press < 9; press++) next(stage.workshop)
  const first = openPresenter()
  wait(200)
  expectSame(stage, first)
  first.end.stop()
  next(stage.workshop)
  wait(200)
  const second = openPresenter()
  wait(200)
  expectSame(stage, second)
})

test('the stage runs on without its presenter window, and says so', () => {
  const stage = openStage()
  const presenter = openPresenter()
  wait(1000)
  expect(stage.end.store.getState().presenter).toBe(true)
  presenter.end.stop()
  wait(4100)
  expect(stage.end.store.getState().presenter).toBe(false)
  next(stage.workshop)
  expect(stage.workshop.lesson.getState().step).toBe('reveal')
})

test('without a sign of life for three seconds the stage is not connected', () => {
  const stage = openStage()
  const presenter = openPresenter()
  wait(1500)
  expect(presenter.end.store.getState().stage).toBe('connected')
  const now = followed(presenter)
  closeChannels()
  wait(2000)
  expect(presenter.end.store.getState().stage).toBe('connected')
  wait(2500)
  expect(presenter.end.store.getState().stage).toBe('lost')
  expect(followed(presenter)).toEqual(now)
  stage.end.stop()
})

const PLACES = LESSONS.flatMap((id) =>
  lessonNamed(id).beats.flatMap((beat, place) =>
    [0, 1, 2, 3].map((presses) => ({ id, title: beat.title, place, presses })),
  ),
)

test.each(PLACES)(
  '$id, $title, after $presses: a stage that is opened again goes on',
  ({ id, place, presses }) => {
    const lesson = lessonNamed(id)
    const stage = openStage(lesson)
    const presenter = openPresenter()
    wait(200)
    goTo(stage.workshop, place)
    for (let press = 0; press < presses; press++) next(stage.workshop)
    runFrame(stage.workshop.frame, 0.5)
    wait(200)
    const before = state(stage)
    stage.end.leaving()
    stage.end.stop()
    expect(presenter.end.store.getState().stage).not.toBe('connected')
    const again = openStage(lesson, before.place.beat)
    wait(2500)
    expect(presenter.end.store.getState().stage).toBe('connected')
    const after = state(again)
    expect(after.place).toEqual({ ...before.place, seen: after.place.seen })
    expect(new Set(after.place.seen)).toEqual(new Set(before.place.seen))
    expect({ machine: after.machine, bench: after.bench, motion: after.motion }).toEqual({
      machine: before.machine,
      bench: before.bench,
      motion: before.motion,
    })
    const { turns, ticks } = before.moment
    expect({ turns: after.moment.turns, ticks: after.moment.ticks }).toEqual({ turns, ticks })
    expectSame(again, presenter)
  },
)

test('a last sign of life that comes late does not forget where the lesson was', () => {
  const stage = openStage()
  const presenter = openPresenter()
  wait(1200)
  next(stage.workshop)
  wait(200)
  const alive = DirectChannel.sent.map(readMessage).findLast((each) => each?.kind === 'stage')!
  stage.end.leaving()
  stage.end.stop()
  new DirectChannel(`counterturn.${ROOM}`).postMessage({ ...alive, seq: 1e6 })
  wait(5000)
  expect(presenter.end.store.getState().stage).toBe('lost')
  const again = openStage()
  wait(2500)
  expect(again.workshop.lesson.getState().step).toBe('reveal')
  expectSame(again, presenter)
})

test('a lesson that was closed and opened anew begins anew', () => {
  const stage = openStage()
  const presenter = openPresenter()
  wait(200)
  next(stage.workshop)
  wait(200)
  closeLesson(stage.workshop)
  stage.end.stop()
  expect(presenter.end.store.getState().stage).toBe('closed')
  const again = openStage()
  wait(2500)
  expect(again.workshop.lesson.getState().step).toBe('ask')
  expectSame(again, presenter)
})

test('a running stage is told of at most ten times a second, and not to nobody', () => {
  const { workshop } = openStage()
  const count = () => DirectChannel.sent.filter((each) => (each as Message).kind === 'snapshot').length
  const run = () => {
    DirectChannel.sent = []
    for (let frame = 0; frame < 120; frame++) {
      workshop.copyReading()
      wait(1000 / 60)
    }
    return count()
  }
  expect(run()).toBe(0)
  const presenter = openPresenter()
  wait(100)
  const told = run()
  // The first of them comes at once.
  expect(told).toBeLessThanOrEqual(1 + 20)
  expect(told).toBeGreaterThan(15)
  presenter.end.stop()
})

test('of two stages on one line the newer asks which leads', () => {
  const older = openStage()
  const presenter = openPresenter()
  wait(1100)
  const newer = openStage(lessonNamed('choosing-counts'))
  wait(1100)
  expect(older.end.store.getState()).toMatchObject({ leads: true, asks: false })
  expect(newer.end.store.getState()).toMatchObject({ leads: false, asks: true })
  presenter.end.send('next')
  expect(newer.workshop.lesson.getState().beat).toBe(0)
  expect(older.workshop.lesson.getState().step).toBe('reveal')

  newer.end.lead()
  wait(1100)
  expect(newer.end.store.getState()).toMatchObject({ leads: true, asks: false })
  expect(older.end.store.getState().leads).toBe(false)
  expectSame(newer, presenter)
  presenter.end.send('next')
  expect(newer.workshop.lesson.getState().beat).toBe(1)

  newer.end.leaving()
  newer.end.stop()
  wait(5000)
  expect(older.end.store.getState().leads).toBe(true)
  expectSame(older, presenter)
})

test('back on the stage is followed as well', () => {
  const stage = openStage()
  const presenter = openPresenter()
  wait(1000)
  for (let press = 0; press < 4; press++) next(stage.workshop)
  back(stage.workshop)
  wait(200)
  expectSame(stage, presenter)
})
