import { expect, test } from 'vitest'
import { READY_LESSONS } from '../../../web/lesson/ready-lessons.ts'
import * as progress from '../../../web/lesson/progress.ts'
import { committed, withAnswer } from '../../../web/store/exercise.ts'
import {
  type Beat,
  type BeatQuestion,
  type Lesson,
  type LessonState,
  noLesson,
} from '../../../web/store/lesson.ts'

const COUNTED: BeatQuestion = { family: 'turns-worm', given: { z1: 1, z2: 20, N: 1 } }
const SPOKEN: BeatQuestion = { text: 'Why?' }

const beat = (id: string, questions: readonly BeatQuestion[] = [], walk = false): Beat => ({
  id,
  title: id,
  words: '',
  facts: [],
  notes: [],
  minutes: 1,
  extra: false,
  safety: false,
  stage: { machine: 'boot-cleaner', set: {}, panel: 'none', signs: [], lit: null, walk, motion: 'still' },
  questions,
})

const lesson: Lesson = {
  counterturnLesson: 1,
  id: 'small',
  name: 'Small',
  summary: '',
  seed: 's',
  beats: [beat('shown'), beat('asked', [COUNTED, SPOKEN], true), beat('last')],
}
const start: LessonState = progress.begun({ ...noLesson, lesson })
const DARK: progress.Lights = { lit: null, stops: ['socket', 'worm'] }
const place = ({ beat: topic, question, step }: LessonState) => `${topic}/${question} ${step}`

/** All places that one button goes through, with the light where it walks. */
function pressed(from: LessonState): string[] {
  const went = [place(from)]
  let state = from
  let { lit } = DARK
  for (;;) {
    const lights = { lit, stops: DARK.stops }
    const then = progress.coming(state, lights)
    if (then.kind === 'end') return went
    if (then.kind === 'light') {
      lit = then.stop
      went.push(`light ${lit}`)
    } else {
      state = progress.next(state, lights)
      went.push(place(state))
    }
  }
}

test('one button goes through everything: Ask, Count where there is something to count, Reveal, the light, on', () => {
  expect(pressed(start)).toEqual([
    '0/0 show',
    '1/0 ask',
    '1/0 count',
    '1/0 reveal',
    '1/1 ask',
    '1/1 reveal',
    'light socket',
    'light worm',
    '2/0 show',
  ])
})

test.each(READY_LESSONS)('$id ends at its last topic by one button alone', (ready) => {
  const went = pressed(progress.begun({ ...noLesson, lesson: ready }))
  expect(went.at(-1)).toMatch(`${ready.beats.length - 1}/`)
  for (const [topic, { questions }] of ready.beats.entries())
    for (const question of questions.keys()) expect(went).toContain(`${topic}/${question} reveal`)
})

const presses = (state: LessonState, times: number): LessonState =>
  times === 0 ? state : presses(progress.next(state, DARK), times - 1)

test('going back finds what was revealed revealed, and what was not as it was left', () => {
  const atSecond = presses(start, 4)
  expect(place(atSecond)).toBe('1/1 ask')
  const back = progress.back(atSecond)
  expect(place(back)).toBe('1/0 reveal')
  expect(place(progress.back(back))).toBe('0/0 show')
  expect(place(presses(progress.back(back), 1))).toBe('1/0 reveal')
  expect(place(presses(progress.back(back), 2))).toBe('1/1 ask')
})

test('a topic that was jumped over is asked when it is come back to', () => {
  const last = progress.goTo(start, 2)
  expect(place(progress.back(last))).toBe('1/1 ask')
})

test('what was committed stays committed on the way back and forth', () => {
  const asking = presses(start, 1)
  const exercise = committed(withAnswer(progress.exerciseOf(asking)!, '40', { kind: 'number', value: 40 }))
  const counting = progress.withExercise(asking, exercise)
  expect(place(counting)).toBe('1/0 count')
  const away = progress.goTo(counting, 0)
  const again = progress.goTo(away, 1)
  expect(place(again)).toBe('1/0 count')
  expect(progress.exerciseOf(again)).toMatchObject({ text: '40', reply: { kind: 'number', value: 40 } })
})

test('reveal uncovers what is asked and does nothing where nothing is', () => {
  expect(progress.reveal(start)).toBe(start)
  expect(place(progress.reveal(presses(start, 1)))).toBe('1/0 reveal')
  const revealed = presses(start, 3)
  expect(progress.reveal(revealed)).toBe(revealed)
})

test('there is nothing before the first topic, after the last, or at a topic that is none', () => {
  expect(progress.back(start)).toBe(start)
  const last = progress.goTo(start, 2)
  expect(progress.next(last, DARK)).toBe(last)
  expect(progress.coming(last, DARK)).toEqual({ kind: 'end' })
  expect(progress.goTo(start, 9)).toBe(start)
  expect(progress.goTo(start, -1)).toBe(start)
})

test('topics that were on the stage are remembered, each once', () => {
  expect(progress.goTo(progress.goTo(start, 2), 0).seen).toEqual(['shown', 'last'])
})

test('the light goes back one place and stays at its beginning', () => {
  const walking = presses(start, 5)
  expect(progress.lightBack(walking, { lit: 'worm', stops: DARK.stops })).toBe('socket')
  expect(progress.lightBack(walking, { lit: 'socket', stops: DARK.stops })).toBeNull()
  expect(progress.lightBack(presses(start, 1), { lit: 'worm', stops: DARK.stops })).toBeNull()
})
