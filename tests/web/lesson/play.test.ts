import { beforeEach, describe, expect, test, vi } from 'vitest'
import { DEMO_MACHINES } from '../../../web/file/demo-machines.ts'
import { isCovered, isHeld } from '../../../web/frame/asking.ts'
import { turnByHand } from '../../../web/frame/frame.ts'
import { type Workshop, createWorkshop } from '../../../web/frame/workshop.ts'
import { putStage, stageOf, stageState } from '../../../web/lesson/beat-stage.ts'
import { PLACE_KEY, keepPlace, keptPlace } from '../../../web/lesson/keep-place.ts'
import { lengthWords, placeWords, spokenAnswer } from '../../../web/lesson/lesson-words.ts'
import * as play from '../../../web/lesson/play.ts'
import { askedNow } from '../../../web/lesson/progress.ts'
import { READY_LESSONS } from '../../../web/lesson/ready-lessons.ts'
import { withAnswer } from '../../../web/store/exercise.ts'
import type { BeatStage, Lesson } from '../../../web/store/lesson.ts'

const [BOOT] = READY_LESSONS as [Lesson, Lesson]
const A = DEMO_MACHINES[0].machine
const beatAt = (id: string): number => BOOT.beats.findIndex((beat) => beat.id === id)

let workshop: Workshop
beforeEach(() => {
  vi.stubGlobal('window', new EventTarget())
  workshop = createWorkshop(A, 'light')
})

const lead = (beat = 0): void => play.openLesson(workshop, BOOT, { builtIn: true, mode: 'lead', beat })
const alone = (beat: number): void => play.openLesson(workshop, BOOT, { builtIn: true, mode: 'alone', beat })
const spoken = (): string => workshop.announcer.store.getState().text
const step = () => workshop.lesson.getState().step

describe('leading a room', () => {
  test('in Ask all is covered and held, in Count covered, at Reveal neither', () => {
    lead(beatAt('one-wheel-turn'))
    expect([step(), isCovered(workshop), isHeld(workshop)]).toEqual(['ask', true, true])
    play.next(workshop)
    expect([step(), isCovered(workshop), isHeld(workshop)]).toEqual(['count', true, false])
    play.next(workshop)
    expect([step(), isCovered(workshop), isHeld(workshop)]).toEqual(['reveal', false, false])
  })

  test('at Reveal the machine stands where the count ends, however far it was turned', () => {
    lead(beatAt('one-wheel-turn'))
    play.next(workshop)
    expect(workshop.frame.state.turns).toMatchObject({ turns: 0, ticks: 0, rest: 0 })
    turnByHand(workshop.frame, 12_345)
    play.next(workshop)
    expect(workshop.frame.motion).toBe('still')
    expect(workshop.frame.state.turns).toMatchObject({ turns: 20, ticks: 0, rest: 0 })
  })

  test('it says where it is, and the answer only at Reveal', () => {
    lead(beatAt('one-wheel-turn'))
    expect(spoken()).toBe('Topic 5 of 14: One turn of the wheel. Ask.')
    play.next(workshop)
    expect(spoken()).toBe('Topic 5 of 14: One turn of the wheel. Count.')
    play.next(workshop)
    expect(spoken()).toBe('Topic 5 of 14: One turn of the wheel. Reveal. 20 turns.')
  })

  test('nothing is spoken before a reveal that tells the answer', () => {
    lead()
    for (let presses = 0; presses < 80; presses++) {
      const state = workshop.lesson.getState()
      const question = askedNow(state)
      const answer = question && spokenAnswer(question)
      const covered = state.step === 'ask' || state.step === 'count'
      // titles and places have numbers of their own; an answer with its unit, or in words, is in none of them
      if (covered && answer && answer.length > 3) expect(spoken()).not.toContain(answer)
      play.next(workshop)
    }
    expect(spoken()).toBe('This is the last topic.')
  })

  test('the second question stands on a worm of its own, and going back brings the first one', () => {
    lead(beatAt('parts-of-a-turn'))
    const starts = () => workshop.document.store.getState().machine.gearing.wormStarts
    expect(starts()).toBe(1)
    for (let presses = 0; presses < 3; presses++) play.next(workshop)
    expect(starts()).toBe(2)
    play.back(workshop)
    expect([starts(), step()]).toEqual([1, 'reveal'])
  })

  test('the light walks one place a press before the topic is left, and back again', () => {
    lead(beatAt('way-of-the-power'))
    const lit = () => workshop.view.getState().lit
    for (let presses = 0; presses < 4; presses++) play.next(workshop)
    const went = [lit()]
    while (workshop.lesson.getState().beat === beatAt('way-of-the-power')) {
      play.next(workshop)
      went.push(lit())
    }
    expect(went).toEqual([
      'socket',
      'transformer',
      'setting',
      'rectifier',
      'brushes',
      'commutator',
      'armature',
      'fan',
      'worm',
      'wheels',
      'outputs',
      null,
    ])
  })

  test('a beat that runs runs in Ask where nothing that turns is asked, and else from Reveal on, at its steady speed', () => {
    lead(beatAt('one-motor'))
    expect([step(), workshop.frame.motion]).toEqual(['ask', 'running'])
    lead(beatAt('five-settings'))
    expect([step(), workshop.frame.motion]).toEqual(['ask', 'still'])
    play.reveal(workshop)
    expect(workshop.frame.motion).toBe('running')
    expect((workshop.frame.state.speed * 30) / Math.PI).toBeCloseTo(5050.55, 1)
  })

  test('what was on the stage comes back with its undo when the lesson is closed', () => {
    workshop.document.edit((machine) => ({ ...machine, name: 'Mine' }))
    workshop.view.setState({ caseState: 'clear', panel: 'torque' })
    workshop.bench.setState({ setting: 2 })
    const { machine } = workshop.document.store.getState()
    lead(beatAt('second-design'))
    lead(beatAt('parts-of-a-turn'))
    play.next(workshop)
    play.closeLesson(workshop)
    expect(workshop.document.store.getState().machine).toBe(machine)
    expect(workshop.document.store.getState().past.length).toBe(1)
    expect(workshop.bench.getState().setting).toBe(2)
    expect(workshop.view.getState().panel).toBe('torque')
    expect(workshop.lesson.getState().lesson).toBeNull()
    expect(workshop.exercise.getState().question).toBeNull()
  })

  test('Predict ends the lesson', () => {
    lead(3)
    workshop.view.setState({ way: 'predict' })
    expect(workshop.lesson.getState().lesson).toBeNull()
    expect(workshop.aside.getState().held).toBeNull()
  })

  test('a covered stage is uncovered by the next topic', () => {
    lead(0)
    play.setBlank(workshop, true)
    expect(workshop.lesson.getState().blank).toBe(true)
    play.next(workshop)
    play.next(workshop)
    expect(workshop.lesson.getState().blank).toBe(false)
  })
})

describe('working alone', () => {
  const answer = (text: string, value: number): void =>
    workshop.exercise.setState((last) => withAnswer(last, text, { kind: 'number', value }), true)

  test('an answer is committed, counted, compared and recorded once, and stays as it was', () => {
    alone(beatAt('one-wheel-turn'))
    play.commit(workshop)
    expect(step()).toBe('ask')
    answer('40', 40)
    play.commit(workshop)
    expect(step()).toBe('count')
    play.reveal(workshop)
    expect(step()).toBe('reveal')
    expect(workshop.records.store.getState().answered).toMatchObject([
      { asker: 'lesson', lesson: 'boot-cleaner', family: 'turns-worm', right: false, cause: 'both-added' },
    ])
    play.next(workshop)
    play.back(workshop)
    expect(step()).toBe('reveal')
    expect(workshop.exercise.getState().text).toBe('40')
    answer('20', 20)
    expect(workshop.exercise.getState().text).toBe('40')
    expect(workshop.records.store.getState().answered.length).toBe(1)
  })

  test('next goes on without a prediction where none was begun, and waits where one was', () => {
    alone(beatAt('one-wheel-turn'))
    answer('19', 19)
    play.next(workshop)
    expect(step()).toBe('ask')
    expect(spoken()).toContain('Commit your answer')
    answer('', 0)
    workshop.exercise.setState((last) => withAnswer(last, '', null), true)
    play.next(workshop)
    expect([step(), workshop.exercise.getState().skipped]).toEqual(['count', true])
  })

  test('a half written answer is there again after a look at another topic', () => {
    alone(beatAt('one-wheel-turn'))
    answer('19', 19)
    play.goTo(workshop, 0)
    play.goTo(workshop, beatAt('one-wheel-turn'))
    expect(workshop.exercise.getState().text).toBe('19')
    expect(step()).toBe('ask')
  })
})

describe('the stage of a beat', () => {
  test.each(READY_LESSONS.flatMap(({ id, beats }) => beats.map((beat) => ({ lesson: id, beat }))))(
    '$lesson, $beat.id comes out as it was put',
    ({ beat }) => {
      putStage(workshop, beat.stage)
      const taken = stageOf(workshop)
      expect({ ...taken, walk: beat.stage.walk }).toEqual({ ...beat.stage, signs: taken.signs })
      expect([...taken.signs].sort()).toEqual([...beat.stage.signs].sort())
    },
  )

  test('what stands keeps its place to the last tick', () => {
    const stage: BeatStage = {
      machine: 'vent-opener',
      set: { 'moment.turns': -3, 'moment.ticks': 1234, 'moment.rest': 0.5, 'bench.sense': -1 },
      panel: 'none',
      signs: [],
      lit: null,
      walk: false,
      motion: 'still',
    }
    putStage(workshop, stage)
    expect(workshop.frame.state.turns).toEqual({ turns: -3, ticks: 1234, rest: 0.5 })
    expect(stageOf(workshop)).toEqual(stage)
  })

  test('the same machine is not built again', () => {
    const { machine } = workshop.document.store.getState()
    putStage(workshop, BOOT.beats[3]!.stage)
    putStage(workshop, BOOT.beats[4]!.stage)
    expect(workshop.document.store.getState().machine).toBe(machine)
  })

  test('a stage on no demo machine is a mistake of the program', () => {
    expect(() => stageState({ ...BOOT.beats[0]!.stage, machine: 'none' })).toThrow('which is no demo machine')
  })
})

describe('where somebody was', () => {
  const memory = () => {
    const kept = new Map<string, string>()
    return {
      kept,
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
    }
  }

  test('a ready lesson is gone on with at its topic', () => {
    const keeper = memory()
    lead(0)
    const stop = keepPlace(workshop, keeper)
    play.goTo(workshop, 6)
    expect(keptPlace(keeper)).toEqual({
      lesson: BOOT,
      builtIn: true,
      mode: 'lead',
      beat: 6,
      seen: ['one-motor', 'from-below'],
    })
    stop()
    play.closeLesson(workshop)
    expect(keptPlace(keeper)?.beat).toBe(6)
  })

  test('a lesson of one’s own is kept with its text', () => {
    const keeper = memory()
    const own = { ...BOOT, id: 'mine', name: 'Mine' }
    play.openLesson(workshop, own, { builtIn: false, mode: 'alone', beat: 2 })
    keepPlace(workshop, keeper)
    expect(keptPlace(keeper)).toMatchObject({ lesson: own, builtIn: false, mode: 'alone', beat: 2 })
  })

  test.each([
    '',
    'x',
    '{}',
    '{"id":"gone"}',
    '{"file":"{}"}',
    '[1]',
    '{"id":"boot-cleaner","beat":99,"seen":3}',
  ])('what was kept as %s is no place, or the first', (text) => {
    const keeper = memory()
    keeper.kept.set(PLACE_KEY, text)
    expect(keptPlace(keeper)?.beat ?? 0).toBe(0)
  })
})

test('lengths and places in words', () => {
  expect(lengthWords(BOOT)).toBe('14 topics, 50 minutes; 45 without the extra ones')
  expect(lengthWords(READY_LESSONS[1]!)).toBe('12 topics, 60 minutes')
  lead(beatAt('parts-of-a-turn'))
  expect(placeWords(workshop.lesson.getState())).toBe(
    'Topic 6 of 14: Parts of a turn, and another worm. Ask, question 1 of 2.',
  )
})
