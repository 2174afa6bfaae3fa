import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { TICKS_PER_TURN, type WormTurns, advanceTicks, advanceTurns, noTurns } from '../../sim/drive/turns.ts'
import {
  countText,
  fractionText,
  newCount,
  wheelCount,
  wholeText,
  wormCount,
} from '../../web/instrument/count.ts'
import { lastPasses } from '../../web/instrument/passes.ts'

const at = (turns: number, ticks = 0, rest = 0): WormTurns => ({ turns, ticks, rest })
const worm = (t: WormTurns) => countText(wormCount(newCount(), t))
const wheel = (t: WormTurns, z1: number, z2: number, sense: 1 | -1 = 1) =>
  countText(wheelCount(newCount(), t, z1, z2, sense))

describe('counts as text', () => {
  test.each([
    [at(0), '0 turns'],
    [at(1), '1 turn'],
    [at(-1), '-1 turn'],
    [at(20), '20 turns'],
    [at(-1, TICKS_PER_TURN * 0.65), '-0.35 turns'],
    [at(2, TICKS_PER_TURN / 4), '2.25 turns'],
    [at(-3, TICKS_PER_TURN / 2), '-2.5 turns'],
  ])('%o reads %s', (t, text) => expect(worm(t)).toBe(text))

  test('a whole number is not shown before it is reached, from either side', () => {
    expect(worm(at(19, TICKS_PER_TURN - 1, 0.999_999))).toBe('19.9999 turns')
    expect(worm(at(-20, 1))).toBe('-19.9999 turns')
    expect(worm(at(-1, 0, 1e-12))).toBe('-0.9999 turns')
    expect(wheel(at(19, TICKS_PER_TURN - 1, 0.999_999_9), 1, 20)).toBe('0.9999 turns')
  })

  test('a count too small to tell is zero without a sign', () => {
    expect(worm(at(-1, TICKS_PER_TURN - 1))).toBe('0 turns')
    expect(worm(at(0, 1))).toBe('0 turns')
  })

  test('cutting never makes a count larger, and never loses a ten-thousandth', () => {
    const turns = fc.record({
      turns: fc.integer({ min: -1e6, max: 1e6 }),
      ticks: fc.integer({ min: 0, max: TICKS_PER_TURN - 1 }),
      rest: fc.double({ min: 0, max: 0.999, noNaN: true }),
    })
    fc.assert(
      fc.property(turns, (t) => {
        const { sign, whole, part } = wormCount(newCount(), t)
        const shown = whole + part / 10_000
        const size = Math.abs(t.turns + (t.ticks + t.rest) / TICKS_PER_TURN)
        expect(shown).toBeLessThanOrEqual(size + 1e-9)
        expect(size - shown).toBeLessThan(1e-4 + 1e-9)
        expect(sign === -1).toBe(shown > 0 && t.turns < 0)
      }),
      { seed: 11 },
    )
  })

  test('digits are grouped by thin spaces from five on, with a true minus', () => {
    expect(wholeText(9999, false)).toBe('9999')
    expect(wholeText(10_000, false)).toBe('10\u2009000')
    expect(wholeText(1_234_567, true)).toBe('\u22121\u2009234\u2009567')
    expect(fractionText(399)).toBe('.03')
    expect(fractionText(9999)).toBe('.99')
  })
})

describe('wheels follow the worm', () => {
  test('twenty worm turns of one start and 20 teeth are one turn of each wheel, in opposite senses', () => {
    expect(wheel(at(20), 1, 20, 1)).toBe('1 turn')
    expect(wheel(at(20), 1, 20, -1)).toBe('-1 turn')
  })

  test('31 worm turns of 3 starts and 31 teeth are exactly 3 wheel turns', () => {
    const t = noTurns()
    for (let i = 0; i < 31; i++) advanceTicks(t, TICKS_PER_TURN)
    const count = wheelCount(newCount(), t, 3, 31, -1)
    expect(countText(count)).toBe('-3 turns')
    expect(count.exact).toBe(true)
  })

  test('after a million turns in uneven steps the wheel still lands on its mark', () => {
    const t = noTurns()
    const steps = [0.1, 0.37, 1 / 3, 1 - 0.1 - 0.37 - 1 / 3]
    for (let i = 0; i < 31; i++) for (const step of steps) advanceTurns(t, step)
    expect(Math.abs(t.turns + t.ticks / TICKS_PER_TURN - 31)).toBeLessThan(1e-6)
    const far = at(31_000_000)
    expect(wheel(far, 3, 31)).toBe('3000000 turns')
    expect(wheel(at(31_000_001), 3, 31)).toBe('3000000.0967 turns')
    expect(wheel(at(-31_000_001), 3, 31)).toBe('-3000000.0967 turns')
  })

  test('turning back mirrors turning on', () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: TICKS_PER_TURN - 1 }))
    fc.assert(
      fc.property(
        place,
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 12, max: 120 }),
        ([turns, ticks], z1, z2) => {
          const on = at(turns, ticks)
          const back = noTurns()
          advanceTicks(back, -(turns * TICKS_PER_TURN + ticks))
          expect(wheel(back, z1, z2)).toBe(wheel(on, z1, z2, -1))
        },
      ),
      { seed: 12 },
    )
  })
})

describe('the table of passes', () => {
  const gearing = { z1: 1, z2: 20, leftSense: 1, rightSense: -1 } as const
  test('holds the last twenty passes, newest first', () => {
    const passes = lastPasses(at(26, 5), gearing)
    expect(passes).toHaveLength(20)
    expect(passes[0]).toEqual({ turn: 26, left: '1.3 turns', right: '-1.3 turns' })
    expect(passes.at(-1)?.turn).toBe(7)
  })
  test('is empty at zero and counts back from it', () => {
    expect(lastPasses(at(0, 5), gearing)).toEqual([])
    expect(lastPasses(at(-1, 5), gearing)).toEqual([])
    expect(lastPasses(at(-3, 5), gearing).map(({ turn }) => turn)).toEqual([-2, -1])
    expect(lastPasses(at(-3), gearing).map(({ turn }) => turn)).toEqual([-3, -2, -1])
  })
})
