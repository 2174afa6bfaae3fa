import { describe, expect, test, vi } from 'vitest'
import { TICKS_PER_TURN } from '../../../sim/drive/turns.ts'
import { BANK, FAMILIES, familyNamed } from '../../../sim/question/bank.ts'
import { questionFor, questionWith } from '../../../sim/question/instance.ts'
import { advanceModel, placeAt, runFrame } from '../../../web/frame/frame.ts'
import { createWorkshop } from '../../../web/frame/workshop.ts'
import { withGearing } from '../../../web/question/stage-question.ts'
import { coveredText } from '../../../web/question/spoken-count.ts'
import {
  isAtEnd,
  runSeconds,
  runToEnd,
  stepToEnd,
  trialEnd,
  turnToEnd,
} from '../../../web/question/trial-run.ts'
import { playWatch } from '../../../web/question/watch-stage.ts'
import { bootCleaner } from '../../support/machines.ts'

const turnsWorm = questionWith(familyNamed('turns-worm')!, { z1: 3, z2: 31, N: 1 })
describe('the trial', () => {
  const machine = withGearing(bootCleaner, turnsWorm.gearing)
  test('ends exactly where it should, slowly enough to count', () => {
    const { frame } = createWorkshop(machine, 'light')
    const end = trialEnd(turnsWorm)!
    expect(end * 3).toBe(31 * TICKS_PER_TURN)
    placeAt(frame, 3, 17, 0.5)
    turnToEnd(frame, end)
    let seconds = 0
    for (; frame.motion !== 'still' && seconds < 100; seconds += 0.013) runFrame(frame, 0.013)
    const { turns, ticks, rest } = frame.state.turns
    expect((turns * TICKS_PER_TURN + ticks) * 3).toBe(31 * TICKS_PER_TURN)
    expect(rest).toBe(0)
    expect(isAtEnd(frame, end)).toBe(true)
    expect(seconds / (31 / 3 - 3)).toBeGreaterThan(0.9)
  })
  test('turns back from beyond, and under reduced motion goes by quarter turns', () => {
    const { frame } = createWorkshop(machine, 'light')
    const end = trialEnd(turnsWorm)!
    frame.cuts = true
    placeAt(frame, 11, 0, 0)
    stepToEnd(frame, end)
    expect(frame.state.turns).toMatchObject({ turns: 10, ticks: 0.75 * TICKS_PER_TURN })
    for (let i = 0; i < 5; i++) stepToEnd(frame, end)
    expect(isAtEnd(frame, end)).toBe(true)
  })
  test('steps under reduced motion end where they should, and give way to whatever else moves the machine', () => {
    vi.useFakeTimers()
    try {
      const { frame } = createWorkshop(machine, 'light')
      const end = trialEnd(turnsWorm)!
      frame.cuts = true
      runToEnd(frame, end)
      vi.advanceTimersByTime(1000)
      expect(frame.state.turns).toMatchObject({ turns: 1, ticks: 0 })
      vi.advanceTimersByTime(60_000)
      expect(isAtEnd(frame, end)).toBe(true)
      placeAt(frame, 0, 0, 0)
      runToEnd(frame, end)
      vi.advanceTimersByTime(500)
      placeAt(frame, 5, 0, 0)
      vi.advanceTimersByTime(60_000)
      expect(frame.state.turns).toMatchObject({ turns: 5, ticks: 0 })
    } finally {
      vi.useRealTimers()
    }
  })
  test('a long one is hurried, but never faster than can be counted', () => {
    expect(runSeconds(20)).toBe(20)
    expect(runSeconds(100)).toBe(60)
    expect(runSeconds(200) / 200).toBeGreaterThanOrEqual(0.4)
  })
  test('every trial of the bank ends on whole ticks, and is walked to its end', () => {
    for (const { name } of FAMILIES) {
      for (const level of [1, 2, 3] as const) {
        for (let index = 0; index < 20; index++) {
          const question = questionFor({ bank: BANK, seed: 'ticks', family: name, index, level })!
          const { trial } = question
          if (!trial) continue
          const exact = (trial.top * TICKS_PER_TURN) / trial.bottom
          expect(exact, `${name} ${level} ${index}`).toBe(Math.round(exact))
          expect(exact).toBeGreaterThan(0)
        }
      }
    }
  })
})

test('while the counts are covered it is told that it turned, but no number, and no sense where that is asked', () => {
  for (const counted of ['worm', 'left', 'teeth', 'senses'] as const)
    expect(coveredText(counted, 1, 'right')).not.toMatch(/\d/)
  expect(coveredText('senses', -1, 'left')).not.toMatch(/clockwise/)
  expect(coveredText('worm', 1, 'right')).toBe(
    'The worm has turned anticlockwise, seen from the front. The left wheel has turned a little, anticlockwise seen from above; the right wheel clockwise.',
  )
  expect(coveredText('left', 1, 'left')).toContain(
    'a little, clockwise seen from above; the right wheel anticlockwise',
  )
})

describe('the explanation', () => {
  test('turns exactly as far as it says, in the sense of the question', () => {
    const family = familyNamed('pair-sense')!
    for (const sense of ['clockwise', 'anticlockwise']) {
      const question = questionWith(family, { ...family.example, sense })
      const workshop = createWorkshop(withGearing(bootCleaner, question.gearing), 'light')
      placeAt(workshop.frame, 5, 7, 0)
      playWatch(workshop, question)
      advanceModel(workshop.frame, 0)
      const { turns, ticks } = workshop.frame.state.turns
      const way = sense === 'anticlockwise' ? 1 : -1
      expect(turns * TICKS_PER_TURN + ticks).toBe((way * TICKS_PER_TURN) / 4)
    }
  })
  test('opens the panel that it is read from, and runs by the drive where it says so', () => {
    const family = FAMILIES.find((each) => each.watch(each.example).sight === 'torque')!
    const workshop = createWorkshop(bootCleaner, 'light')
    workshop.view.setState({ way: 'predict', panel: 'none' })
    playWatch(workshop, questionWith(family, family.example))
    expect(workshop.view.getState().panel).toBe('torque')
  })
})
