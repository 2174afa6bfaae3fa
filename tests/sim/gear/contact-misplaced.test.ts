import { describe, expect, test } from 'vitest'
import { touchingNow } from '../../../sim/gear/bearing-moment.ts'
import { bearingPattern } from '../../../sim/gear/bearing-pattern.ts'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { IN_PLACE, type Misplacement } from '../../../sim/gear/misplaced.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { radians } from '../../../sim/quantity/convert.ts'
import { near } from '../../support/near.ts'
import { blindTurns } from './contact-turns.ts'
import { oneToTwenty, pairName, pairs } from './pairs.ts'

const FILM = 0.006
const ZA = oneToTwenty
const ZI: GearNumbers = { ...oneToTwenty, profile: 'ZI' }
const plain: GearNumbers = { ...ZI, wheelForm: 'helical' }
const onZA: GearNumbers = { ...plain, profile: 'ZA' }

const apart = (centre: number): Misplacement => ({ ...IN_PLACE, centre })
const shifted: Misplacement = { ...IN_PLACE, along: 0.1 }
const tilted: Misplacement = { ...IN_PLACE, tilt: radians(0.2) }
const pushed: Misplacement = { ...IN_PLACE, axial: 0.1 }

/** Pattern of both flanks of the right wheel: +1, then -1. */
const both = (pair: GearNumbers, off: Misplacement) =>
  ([1, -1] as const).map((sigma) => bearingPattern(pair, 'right', sigma, off, FILM))

test.each([...pairs, plain].map((pair) => [`${pairName(pair)} ${pair.wheelForm}`, pair] as const))(
  '%s in its place: no play, no transmission error, and a throated wheel bears all over',
  (_, pair) => {
    for (const pattern of both(pair, IN_PLACE)) {
      near(pattern.play, 0, 0.01)
      expect(pattern.transmissionError).toBeLessThan(0.01)
      const film = pattern.share
      if (pair.wheelForm === 'helical') expect(film).toBeLessThan(0.2)
      else expect(film).toBeGreaterThan(0.8)
    }
  },
)

/**
 * What a prototype of these equations measured, with a set of wheel points of its own and the worm at 16 angles (no
 * printed source). Allowed: a unit of its last digit, and its sampling floor of 0.2 um.
 */
describe('figures of a prototype, 1/20, module 2, q 10', () => {
  const FLOOR = 0.2
  const cases = [
    { name: 'ZA, axes 0.05 mm apart', pair: ZA, off: apart(0.05), play: [12, 12], unit: 1, error: null },
    {
      name: 'ZI, axes 0.05 mm apart',
      pair: ZI,
      off: apart(0.05),
      play: [12, 12],
      unit: 1,
      error: [1.3, 0.1],
    },
    {
      name: 'ZA, axes 0.05 mm nearer',
      pair: ZA,
      off: apart(-0.05),
      play: [-19, -19],
      unit: 1,
      error: [0.3, 0.1],
    },
    {
      name: 'ZI, axes 0.05 mm nearer',
      pair: ZI,
      off: apart(-0.05),
      play: [-19, -19],
      unit: 1,
      error: [0.03, 0],
    },
    { name: 'ZA, 0.1 mm along', pair: ZA, off: shifted, play: [-29, -15], unit: 1, error: [2.1, 0.1] },
    { name: 'ZI, 0.1 mm along', pair: ZI, off: shifted, play: [-29, -15], unit: 1, error: [2.1, 0.1] },
    { name: 'ZA, tilted 0.2 deg', pair: ZA, off: tilted, play: [-28, -28], unit: 1, error: [5.7, 0.1] },
    { name: 'ZI, tilted 0.2 deg', pair: ZI, off: tilted, play: [-28, -28], unit: 1, error: [5.7, 0.1] },
    {
      name: 'plain, 0.05 mm apart',
      pair: plain,
      off: apart(0.05),
      play: [18.4, 18.4],
      unit: 0.1,
      error: [0, 0],
    },
    {
      name: 'plain, 0.05 mm nearer',
      pair: plain,
      off: apart(-0.05),
      play: [-18.2, -18.2],
      unit: 0.1,
      error: [0, 0],
    },
    { name: 'plain, tilted 0.2 deg', pair: plain, off: tilted, play: [0, 0], unit: 0, error: [0, 0] },
    { name: 'plain on ZA', pair: onZA, off: IN_PLACE, play: null, unit: 0, error: [4.2, 0.1] },
    {
      name: 'plain on ZA, 2/30',
      pair: { ...onZA, wormStarts: 2, wheelTeeth: 30 },
      off: IN_PLACE,
      play: null,
      unit: 0,
      error: [11, 1],
    },
  ]

  test.each(cases)('$name', ({ pair, off, play, unit, error }) => {
    both(pair, off).forEach((pattern, n) => {
      if (play !== null) near(pattern.play, play[n]!, unit + FLOOR)
      if (error !== null) near(pattern.transmissionError, error[0]!, error[1]! + FLOOR)
    })
  })
})

test('a wheel moved along the worm turns by as much at its reference circle and runs as evenly as before', () => {
  for (const pair of [ZA, ZI, plain]) {
    const [plus, minus] = both(pair, pushed)
    near(plus!.play, -100, 0.02)
    near(minus!.play, 100, 0.02)
    expect(plus!.transmissionError).toBeLessThan(0.01)
  }
})

test('a plain wheel moved along its axis turns by 0.1 tan g and gains 2 da tan alpha_x when the axes part', () => {
  const { leadAngle, axialPressureAngle } = pairProportions(plain)
  const [plus, minus] = both(plain, shifted)
  near(plus!.play, -100 * Math.tan(leadAngle), 0.02)
  near(minus!.play, 100 * Math.tan(leadAngle), 0.02)
  const [apartPlus, apartMinus] = both(plain, apart(0.05))
  // First order in the distance; the second adds its square over the radius of curvature.
  near(apartPlus!.play + apartMinus!.play, 100 * Math.tan(axialPressureAngle), 0.3)
})

test.each([
  ['ZA 0.1 mm along', ZA, shifted],
  ['ZI tilted', ZI, tilted],
  ['ZA apart', ZA, apart(0.05)],
  ['left hand ZN nearer', { ...ZA, hand: 'left', profile: 'ZN' }, apart(-0.05)],
  ['ZA tilted far', ZA, { ...IN_PLACE, tilt: radians(1) }],
  ['ZI all at once', ZI, { centre: 0.2, along: -0.3, axial: 0.3, tilt: 0.01 }],
  ['plain on ZA 2/30', { ...onZA, wormStarts: 2, wheelTeeth: 30 }, IN_PLACE],
] as const)('%s: a dense set of points, turned in blindly, tells the same', (_, pair, off) => {
  for (const sigma of [1, -1] as const) {
    const pattern = bearingPattern(pair, 'right', sigma, off, FILM)
    const blind = blindTurns(pair, off, sigma, 24, 24)
    // Between its points, 0.08 mm apart on a flank of 7 mm radius, and between its angles the blind wheel turns
    // farther by up to some tenths of a micrometre, and never less far.
    near(blind.least, pattern.play + 0.2, 0.25)
    near(blind.range, pattern.transmissionError, 0.4)
  }
})

test('patterns move to an edge: along moves both flanks to one side, tilt to opposite sides', () => {
  const middles = (off: Misplacement) => both(ZA, off).map(({ middle }) => middle)
  expect(middles(shifted).every((middle) => middle < -3)).toBe(true)
  const [plus, minus] = middles(tilted)
  expect(plus! * minus!).toBeLessThan(-9)
})

test('gaps are never below zero, and the left wheel shows the right one turned half round', () => {
  for (const off of [IN_PLACE, shifted, tilted, apart(0.05)]) {
    const right = bearingPattern(ZA, 'right', -1, off, FILM)
    const mirrored = { ...off, along: -off.along, tilt: -off.tilt }
    const left = bearingPattern(ZA, 'left', -1, mirrored, FILM)
    expect(Math.min(...right.gap)).toBeGreaterThan(-1e-5)
    expect([...left.gap]).toEqual([...right.gap])
    near(left.middle, -right.middle, 1e-12)
    near(left.chi[5]!, -right.chi[5]!, 1e-15)
    near(left.y[0]!, -right.y[0]!, 1e-15)
  }
})

test('what touches now is on the line of contact, on as many teeth as the lines tell, and is part of the pattern', () => {
  const pattern = bearingPattern(ZA, 'right', 1, IN_PLACE, FILM)
  for (let n = 0; n < 8; n++) {
    const { play, teeth } = touchingNow(ZA, 'right', 1, IN_PLACE, n)
    near(play, 0, 0.01)
    const bearing = teeth.filter(({ gap }) => Math.min(...gap) < 0.002)
    expect(bearing.length).toBeGreaterThanOrEqual(1)
    expect(bearing.length).toBeLessThanOrEqual(4)
    // The pattern is read at 24 steps a pitch: a twentieth of the film.
    for (const { gap } of teeth) {
      gap.forEach((value, k) => expect(value).toBeGreaterThan(pattern.gap[k]! - 0.05 * FILM))
    }
  }
})

test('a wheel out of reach touches nothing and leaves no mark', () => {
  for (const pair of [ZA, plain]) {
    const pattern = bearingPattern(pair, 'right', 1, apart(6), FILM)
    expect(pattern.play).toBe(Infinity)
    expect(pattern.share).toBe(0)
    expect(pattern.transmissionError).toBe(0)
    expect(pattern.gap.every((gap) => gap === 1)).toBe(true)
    const { play, teeth } = touchingNow(pair, 'right', 1, apart(6), 0.3)
    expect(play).toBe(Infinity)
    for (const { gap } of teeth) expect(gap.every((each) => each === 1)).toBe(true)
  }
})
