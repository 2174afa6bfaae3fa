import { describe, expect, test } from 'vitest'
import { TICKS_PER_TURN } from '../../../../sim/drive/turns.ts'
import { FAMILIES, familyNamed } from '../../../../sim/question/bank.ts'
import type { Given } from '../../../../sim/question/family.ts'
import { questionWith } from '../../../../sim/question/instance.ts'
import { near } from '../../../support/near.ts'
import { questionsOf } from '../../../support/question-check.ts'

/** What a question with parameters of one's own asks for. */
function answerTo(name: string, given: Given): number {
  const family = familyNamed(name)
  if (!family) throw new Error(`${name} is not in the bank`)
  const { ask } = questionWith(family, given)
  if (ask.kind !== 'number') throw new Error(`${name} asks for a number`)
  return ask.answer
}

const optionOf = (name: string, given: Given): string => {
  const { ask } = questionWith(familyNamed(name)!, given)
  if (ask.kind !== 'choice') throw new Error(`${name} asks for a choice`)
  return ask.answer
}

describe('worked by hand', () => {
  const rows: readonly (readonly [string, Given, number])[] = [
    ['turns-worm', { z1: 1, z2: 20, N: 1 }, 20],
    ['turns-worm', { z1: 2, z2: 20, N: 1 }, 10],
    ['turns-worm', { z1: 3, z2: 40, N: 0.25 }, 10 / 3],
    ['turns-wheel', { z1: 2, z2: 30, N: 100 }, 20 / 3],
    ['turns-angle', { z1: 1, z2: 20, d: 90, from: 'wheel' }, 5],
    ['turns-angle', { z1: 2, z2: 20, d: 90, from: 'worm' }, 9],
    ['teeth-passed', { z1: 3, z2: 31, N: 2.5 }, 7.5],
    ['tooth-return', { z1: 1, z2: 20, ask: 'worm' }, 20],
    ['tooth-return', { z1: 3, z2: 31, ask: 'worm' }, 31],
    ['tooth-return', { z1: 3, z2: 31, ask: 'wheel' }, 3],
    ['tooth-return', { z1: 4, z2: 30, ask: 'worm' }, 15],
    ['tooth-return', { z1: 4, z2: 30, ask: 'wheel' }, 2],
    ['step-turns', { z1: 1, z2: 20, nA: 2231, nB: 5051, t: 10 }, 23.5],
    ['assembly-teeth', { z1: 1, z2: 20, k: 1 }, 18],
    ['assembly-phase', { z1: 1, z2: 20 }, 9],
    ['assembly-phase', { z1: 2, z2: 20 }, 0],
    ['design-spacing', { m: 2, q: 10, z1: 1, z2: 20 }, 60],
    ['design-teeth', { z1: 1, n: 5000, n2: 250 }, 20],
    ['count-limits', { N1: 201, N2: 10 }, 202 / 9],
    ['lost-motion', { jt: 0.2, d2: 40, z1: 1, z2: 20 }, 36 / Math.PI],
  ]
  test.each(rows)('%s %o', (name, given, answer) => {
    near(answerTo(name, given), answer, 1e-12 * Math.max(1, answer))
  })
})

/**
 * Derived from the sign rule of the screw parameter, F. L. Litvin and A. Fuentes, Gear Geometry and Applied Theory,
 * 2nd ed. (Cambridge, 2004).
 */
describe('2 starts, 30 teeth, right-hand, the worm at 100 rad/s about +z', () => {
  const worm = { hand: 'right', sense: 'anticlockwise', from: 'front' }

  test('the wheels turn at 6.66667 rad/s, the right one about -y, the left one about +y', () => {
    near(answerTo('turns-wheel', { z1: 2, z2: 30, N: 100 }), 6.666_67, 5e-6)
    expect(optionOf('wheel-sense', { ...worm, wheel: 'right', view: 'above' })).toBe('clockwise')
    expect(optionOf('wheel-sense', { ...worm, wheel: 'left', view: 'above' })).toBe('anticlockwise')
  })

  test('at both meshes the teeth go to the motor', () => {
    expect(optionOf('pair-sense', worm)).toBe('inner-to-motor')
  })

  test('each of the other hand, sense, end, wheel and view turns it round, and two of them turn it back', () => {
    const given: Given = { ...worm, wheel: 'left', view: 'above' }
    const changes: readonly Given[] = [
      { hand: 'left' },
      { sense: 'clockwise' },
      { from: 'motor end' },
      { wheel: 'right' },
      { view: 'below' },
    ]
    for (const one of changes) {
      expect(optionOf('wheel-sense', { ...given, ...one })).toBe('clockwise')
      for (const other of changes.filter((each) => each !== one))
        expect(optionOf('wheel-sense', { ...given, ...one, ...other })).toBe('anticlockwise')
    }
  })
})

/** Play of a wheel of 90 mm with 0.05 mm of backlash: 2 jt/d2 = 3.82 arc minutes, by definition */
test('the worm’s lost motion is that of the wheel times the ratio', () => {
  for (const z2 of [20, 30, 45]) {
    const worm = answerTo('lost-motion', { jt: 0.05, d2: 90, z1: 1, z2 })
    near((60 * worm) / z2, 3.82, 0.005)
  }
})

/** Half a turn of a lead of z1 pitches is z1/2 pitches: half a pitch for one start, none for two. */
test('the thread on the far side is half a pitch on with an odd number of starts only', () => {
  for (const z2 of [15, 20, 37]) {
    const pitches = [1, 2, 3, 4].map((z1) => (answerTo('assembly-phase', { z1, z2 }) * z2) / 360)
    expect(pitches).toEqual([0.5, 0, 0.5, 0])
  }
})

test('counts that are whole are told as whole numbers, so that they have to be met', () => {
  for (const name of ['turns-worm', 'turns-wheel', 'turns-angle', 'teeth-passed', 'tooth-return'])
    for (const { question, level } of questionsOf(name, 200))
      if (level === 1 && question.ask.kind === 'number')
        expect(Number.isInteger(question.ask.answer), question.text).toBe(true)
})

describe('turning to try an answer', () => {
  test.each(FAMILIES.map(({ name }) => name))(
    '%s ends on a whole tick after 120 turns of the worm at most',
    (name) => {
      for (const { question, level } of questionsOf(name, 300)) {
        const { trial, watch } = question
        if (!trial) continue
        const ticks = (trial.top * TICKS_PER_TURN) / trial.bottom
        expect(Number.isInteger(ticks), `${name} level ${level} ${question.text}`).toBe(true)
        expect(ticks).toBeGreaterThan(0)
        expect(trial.top / trial.bottom).toBeLessThanOrEqual(120)
        if (watch?.turns) near(watch.turns, trial.top / trial.bottom, 1e-9)
      }
    },
  )

  test('can be done in every family of counts and senses', () => {
    const counted = ['turns-worm', 'turns-wheel', 'turns-angle', 'teeth-passed', 'tooth-return']
    for (const name of [...counted, 'wheel-sense', 'pair-sense'])
      for (const { question } of questionsOf(name, 10)) expect(question.trial, name).not.toBeNull()
  })
})
