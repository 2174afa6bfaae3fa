import { describe, expect, test } from 'vitest'
import { TICKS_PER_TURN, type WormTurns } from '../../sim/drive/turns.ts'
import { mixedText, mixedTurns } from '../../web/instrument/mixed.ts'
import {
  coveredTape,
  dashStep,
  firstTooth,
  followTurns,
  lastTooth,
  numberStep,
  openTape,
  tapeX,
  toothPassed,
  toothX,
} from '../../web/instrument/tape-layout.ts'
import { lastWheelTurn } from '../../web/instrument/tape-marks.ts'
import { matchTaps } from '../../web/instrument/taps.ts'

const at = (turns: number, ticks = 0, rest = 0): WormTurns => ({ turns, ticks, rest })
const room = { width: 1100, edge: 28, widest: 35 }

describe('scale of the open tape', () => {
  test.each([
    [1, 20],
    [3, 31],
    [1, 90],
    [6, 25],
  ])('%i starts and %i teeth: a whole wheel turn and a tenth more fits', (z1, z2) => {
    const tape = openTape(room, z2 / z1, null)
    expect(tape.px).toBeLessThanOrEqual(room.widest)
    expect(toothX(tape, 1.1 * z2, z1)).toBeLessThanOrEqual(room.width - room.edge + 1e-9)
  })
  test('a flag within reach fits too, one far beyond does not squeeze the tape', () => {
    expect(tapeX(openTape(room, 20, 45), 45, 0)).toBeLessThan(room.width)
    expect(openTape(room, 20, 400).px).toBe(openTape(room, 20, null).px)
  })
})

describe('scale of the covered tape', () => {
  test('depends on the flag alone', () => {
    expect(coveredTape(room, 12).px).toBe(coveredTape(room, null).px)
    expect(tapeX(coveredTape(room, 300), 300, 0)).toBeLessThan(room.width)
  })
})

describe('the cursor', () => {
  test('rides to 85 % of the width, then the tape runs under it', () => {
    const tape = openTape(room, 20, null)
    const early = followTurns(tape, at(10, TICKS_PER_TURN / 2)).cursor
    expect(early).toBeCloseTo(room.edge + 10.5 * tape.px, 9)
    expect(followTurns(tape, at(500)).cursor).toBeCloseTo(0.85 * room.width, 9)
    expect(tapeX(tape, 500, 0)).toBeCloseTo(tape.cursor, 6)
  })
  test('stays at the left end while the worm has turned back, and zero moves off to the right', () => {
    const tape = followTurns(openTape(room, 20, null), at(-3, TICKS_PER_TURN / 2))
    expect(tape.cursor).toBe(room.edge)
    expect(tapeX(tape, 0, 0)).toBeCloseTo(room.edge + 2.5 * tape.px, 9)
  })
  test('stands where it did, to a thousandth of a pixel, a million turns later', () => {
    const near = followTurns(openTape(room, 31 / 3, null), at(100, 12_345, 0.5))
    const far = followTurns(openTape(room, 31 / 3, null), at(31_000_100, 12_345, 0.5))
    expect(far.cursor).toBeCloseTo(near.cursor, 3)
    expect(tapeX(far, 31_000_100, 0)).toBeCloseTo(tapeX(near, 100, 0), 3)
    expect(toothX(far, 93_000_300, 3)).toBeCloseTo(toothX(near, 300, 3), 3)
  })
})

describe('marks', () => {
  test('wheel marks stand at multiples of z2/z1 worm turns, also between whole ones', () => {
    const tape = followTurns(openTape(room, 31 / 3, null), at(0))
    expect(toothX(tape, 31, 3) - toothX(tape, 0, 3)).toBeCloseTo((31 / 3) * tape.px, 9)
    expect(toothX(tape, 93, 3)).toBeCloseTo(tapeX(tape, 31, 0), 9)
  })
  test('every tooth that can be seen lies between the first and the last', () => {
    const tape = followTurns(openTape(room, 20, null), at(1000, 77))
    expect(toothX(tape, firstTooth(tape, 4), 4)).toBeLessThan(0)
    expect(toothX(tape, lastTooth(tape, 4), 4)).toBeGreaterThan(room.width)
  })
  test('a mark is printed on its tick and not one tick before', () => {
    const third = TICKS_PER_TURN / 3
    expect(toothPassed(at(10, third - 1, 0.99), 31, 3)).toBe(false)
    expect(toothPassed(at(10, third), 31, 3)).toBe(true)
    expect(toothPassed(at(31_000_010, third - 1), 93_000_031, 3)).toBe(false)
    expect(toothPassed(at(31_000_010, third), 93_000_031, 3)).toBe(true)
    expect(toothPassed(at(-11, TICKS_PER_TURN - third), -31, 3)).toBe(true)
    expect(toothPassed(at(-11, TICKS_PER_TURN - third + 1), -31, 3)).toBe(false)
  })
  test('worm dashes between two wheel marks are teeth by starts', () => {
    const passed = Array.from({ length: 41 }, (_, turn) => turn).filter((turn) =>
      toothPassed(at(20), turn, 1),
    )
    expect(passed).toHaveLength(21)
  })
  test('the last whole wheel turn is told by its two marks', () => {
    expect(lastWheelTurn(at(19, TICKS_PER_TURN - 1), 1, 20)).toBeNull()
    expect(lastWheelTurn(at(20), 1, 20)).toEqual([0, 20])
    expect(lastWheelTurn(at(41), 1, 20)).toEqual([20, 40])
    expect(lastWheelTurn(at(10, TICKS_PER_TURN / 3), 3, 31)).toEqual([0, 31])
    expect(lastWheelTurn(at(-20, 1), 1, 20)).toBeNull()
    expect(lastWheelTurn(at(-20), 1, 20)).toEqual([-20, 0])
    expect(lastWheelTurn(at(-21, 1), 1, 20)).toEqual([-20, 0])
  })
})

describe('density', () => {
  test('every fifth dash is drawn when closer than 8 px or faster than 12 passes a second', () => {
    expect(dashStep(8, 12)).toBe(1)
    expect(dashStep(7.9, 0)).toBe(5)
    expect(dashStep(35, -12.5)).toBe(5)
  })
  test('numbers come every 5, 10, 20, 50 turns as room allows', () => {
    expect(numberStep(35, 60)).toBe(5)
    expect(numberStep(8, 60)).toBe(10)
    expect(numberStep(4, 60)).toBe(20)
    expect(numberStep(1.2, 60)).toBe(50)
    expect(numberStep(0.0001, 60) * 0.0001).toBeGreaterThanOrEqual(60)
  })
})

describe('worm turns for one wheel turn, in words', () => {
  test.each([
    [20, 1, '20'],
    [31, 3, '10 1/3'],
    [27, 2, '13 1/2'],
    [40, 6, '6 2/3'],
    [24, 4, '6'],
  ])('%i teeth, %i starts: %s', (z2, z1, text) => expect(mixedText(mixedTurns(z2, z1))).toBe(text))
})

describe('own count', () => {
  test('a tap belongs to the pass nearest to it, and what no tap is near to was missed', () => {
    const taps = [1.1, 2.05, 2.9, 5.2]
    expect(matchTaps(taps, 5)).toEqual({ missed: [4], extra: 0 })
    expect(matchTaps([...taps, 5.3, 0.2], 5)).toEqual({ missed: [4], extra: 2 })
  })
})
