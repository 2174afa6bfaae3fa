import fc from 'fast-check'
import { expect, test } from 'vitest'
import { TICKS_PER_TURN, type WormTurns, advanceTicks, advanceTurns, noTurns } from '../../sim/drive/turns.ts'
import {
  type Commutator,
  coilPart,
  coilTrace,
  commutatorOf,
  followedAngle,
  ticksToBar,
  wrapped,
} from '../../web/drive/commutator.ts'
import { stripScale } from '../../web/drive/commutator-strip.ts'
import { bootCleaner } from '../support/machines.ts'
import { near } from '../support/near.ts'

const one = commutatorOf(bootCleaner.brushes!)
const at = (turn: number): WormTurns => {
  const turns = noTurns()
  advanceTurns(turns, turn)
  return turns
}

test('the boot cleaner has twelve bars, and its brush covers a little more than one', () => {
  expect(one.bars).toBe(12)
  near(one.pitch, Math.PI / 6, 1e-15)
  near(one.arc, 8 / 14, 1e-12)
})

test('the followed coil begins one bar before the right brush and is under it a bar later', () => {
  near(followedAngle(one, noTurns()), -Math.PI / 6, 1e-12)
  near(followedAngle(one, at(1 / 12)), 0, 1e-12)
  near(Math.abs(followedAngle(one, at(7 / 12))), Math.PI, 1e-12)
})

test('whole turns leave the drawing as it was, forwards and back', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1000, max: 1000 }), fc.integer({ min: 0, max: 359 }), (whole, degrees) => {
      const turns = noTurns()
      advanceTicks(turns, (degrees * TICKS_PER_TURN) / 360)
      const before = followedAngle(one, turns)
      turns.turns += whole
      expect(followedAngle(one, turns)).toBe(before)
    }),
    { seed: 41 },
  )
})

test('a step to the next bar ends with a coil under the middle of a brush, and twelve make a turn', () => {
  const turns = noTurns()
  for (let bar = 0; bar < 12; bar++) {
    advanceTicks(turns, ticksToBar(one, turns, 1))
    near(wrapped(followedAngle(one, turns) * 12), 0, 1e-9)
  }
  expect([turns.turns, turns.ticks]).toEqual([1, 0])
  for (let bar = 0; bar < 12; bar++) advanceTicks(turns, ticksToBar(one, turns, -1))
  expect([turns.turns, turns.ticks]).toEqual([0, 0])
})

test('steps by bars come back exactly for any number of bars, from any place', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 3, max: 300 }),
      fc.integer({ min: 0, max: TICKS_PER_TURN - 1 }),
      (bars, ticks) => {
        const commutator: Commutator = { bars, pitch: (2 * Math.PI) / bars, arc: 0.1 }
        const turns = { turns: 5, ticks, rest: 0 }
        const on = ticksToBar(commutator, turns, 1)
        expect(on).toBeGreaterThan(0)
        expect(on).toBeLessThanOrEqual(Math.ceil(TICKS_PER_TURN / bars) + 1)
        advanceTicks(turns, on)
        const onBar = { ...turns }
        advanceTicks(turns, ticksToBar(commutator, turns, 1))
        advanceTicks(turns, ticksToBar(commutator, turns, -1))
        expect(turns).toEqual(onBar)
      },
    ),
    { seed: 42 },
  )
})

test('a coil keeps its current between the brushes and turns it over under them', () => {
  near(coilPart(one, -Math.PI / 2, 1), 1, 1e-12)
  near(coilPart(one, Math.PI / 2, 1), -1, 1e-12)
  near(coilPart(one, 0, 1), 0, 1e-12)
  near(coilPart(one, one.arc / 4, 1), -0.5, 1e-12)
  near(coilPart(one, Math.PI + one.arc / 4, 1), 0.5, 1e-12)
  near(coilPart(one, 1, -1), -coilPart(one, 1, 1), 1e-15)
})

/** Push of both sides of every coil: in a field across the shaft a side pushes by its distance up or down. */
test('the push of all coils has one sense wherever the bars stand', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -4, max: 4, noNaN: true }),
      fc.integer({ min: 3, max: 40 }),
      (angle, bars) => {
        const commutator: Commutator = { bars, pitch: (2 * Math.PI) / bars, arc: 0.5 }
        let push = 0
        for (let coil = 0; coil < bars; coil++) {
          const place = angle + coil * commutator.pitch
          // Sides stand a quarter turn on and back; the one on carries the current towards the eye.
          push += coilPart(commutator, place, 1) * Math.cos(place + Math.PI / 2)
          push -= coilPart(commutator, place, 1) * Math.cos(place - Math.PI / 2)
        }
        expect(push).toBeGreaterThan(0)
      },
    ),
    { seed: 43 },
  )
})

test('the trace goes from half the current to its negative and back, in straight lines', () => {
  const { x, y } = coilTrace(one, 0.9)
  const covered = (one.arc * 180) / Math.PI / 2
  expect([...x]).toEqual([...x].sort((a, b) => a - b))
  near(x[1]!, -180 + covered, 1e-9)
  expect([...y].map((value) => Math.round(1e6 * value) / 1e6 + 0)).toEqual([
    0, 0.45, 0.45, 0, -0.45, -0.45, 0,
  ])
})

test('the strip shows a few bars and never only the brush', () => {
  near(stripScale(184, one) * one.pitch, 184 / 4.6, 1e-9)
  const wide: Commutator = { ...one, arc: 3 }
  near(stripScale(184, wide) * wide.arc, 0.62 * 184, 1e-9)
})
