/** What flashes show, against a worm and a wheel that are looked at in the instants of the flashes. */
import { describe, expect, test } from 'vitest'
import { advanceTurns, noTurns, wheelFraction } from '../../sim/drive/turns.ts'
import { wormAngle } from '../../sim/pose/pose.ts'
import { answerOf, causeOf, eachOf } from '../support/question-answers.ts'
import { near, relativelyNear } from '../support/near.ts'

const TURN = 2 * Math.PI
const MANUAL = 'manual of an instrument maker, page seen'

/** Angles of the worm in the instants of some flashes, both rates a minute. */
function anglesAtFlashes(n: number, f: number, flashes: number): number[] {
  const worm = noTurns()
  return Array.from({ length: flashes }, () => {
    advanceTurns(worm, n / f)
    return wormAngle(worm)
  })
}

/** Angle from one place to another the short way round, in (-pi, pi]. */
function shortWay(from: number, to: number): number {
  const way = (to - from) % TURN
  if (way > Math.PI) return way - TURN
  return way <= -Math.PI ? way + TURN : way
}

/** Places that differ by more than rounding. */
function countPlaces(angles: readonly number[]): number {
  const places: number[] = []
  for (const angle of angles)
    if (places.every((place) => Math.abs(shortWay(place, angle)) > 1e-6)) places.push(angle)
  return places.length
}

describe('strobe-images', () => {
  test.each([
    [5, 'right'],
    [1, 'one-image'],
    [3, 'denominator'],
    [15, 'product'],
    [4, null],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('strobe-images', { n: 3000, p: 5, q: 3 }, value)).toBe(cause)
  })
  test('is at how many places the mark of the worm is lit', () => {
    eachOf('strobe-images', ({ n, p, q }, answer) => {
      expect(countPlaces(anglesAtFlashes(n!, (n! * p!) / q!, 50))).toBe(answer)
    })
  })
  test.each([
    [1, 4, 1],
    [1, 3, 1],
    [1, 2, 1],
    [1, 1, 1],
    [2, 1, 2],
    [3, 1, 3],
    [4, 1, 4],
  ])(`%i/%i of 3000 r/min shows %i: ${MANUAL}`, (p, q, places) => {
    expect(answerOf('strobe-images', { n: 3000, p, q })).toBe(places)
  })
})

describe('strobe-apparent', () => {
  test.each([
    [-167, 'right'],
    [7333, 'true-speed'],
    [167, 'sign-lost'],
    [5833, 'one-flash-only'],
    [8833, 'sum'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('strobe-apparent', { n: 7333, f: 1500 }, value)).toBe(cause)
  })
  test('is how fast the mark goes on from flash to flash, the short way round', () => {
    eachOf('strobe-apparent', ({ n, f }, answer) => {
      const angles = anglesAtFlashes(n!, f!, 60)
      const ways = angles.slice(1).map((angle, i) => shortWay(angles[i]!, angle))
      const mean = ways.reduce((sum, way) => sum + way, 0) / ways.length
      near((mean / TURN) * f!, answer, 1e-6)
    })
  })
  test('of machine A at its fastest setting on a screen of 60 pictures a second', () => {
    near(answerOf('strobe-apparent', { n: 5051, f: 3600 }), 1451, 1e-9)
  })
  test.each([
    [1005, -5],
    [995, 5],
  ])(`1000 r/min under %i flashes a minute creeps at %i r/min: ${MANUAL}`, (f, creeping) => {
    near(answerOf('strobe-apparent', { n: 1000, f }), creeping, 1e-9)
  })
})

/** Time between two instants in which a lamp on a sine is brightest: of its power in samples over a cycle [s]. */
function timeBetweenFlashes(f: number): number {
  const samples = 4000
  const power = Array.from({ length: samples + 1 }, (_, i) => Math.sin((TURN * i) / samples) ** 2)
  const brightest = power.flatMap((value, i) =>
    i > 0 && value > power[i - 1]! && value > (power[i + 1] ?? 0) ? [i] : [],
  )
  expect(brightest).toHaveLength(2)
  return (brightest[1]! - brightest[0]!) / (samples * f)
}

/** By which part of a tooth pitch a wheel has gone on in a time [s], whole pitches left out. */
function pitchPart(z2: number, rpm: number, time: number): number {
  const worm = noTurns()
  advanceTurns(worm, (rpm / 60) * time * z2)
  return (wheelFraction(worm, 1, z2) * z2) % 1
}

/** Slowest speed at which the teeth look the same from flash to flash: sought upwards from standstill [r/min]. */
function firstStill(z2: number, time: number): number {
  const stride = 1
  let low = stride
  while (pitchPart(z2, low + stride, time) > pitchPart(z2, low, time)) low += stride
  let high = low + stride
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (pitchPart(z2, middle, time) > 0.5) low = middle
    else high = middle
  }
  return high
}

describe('strobe-teeth', () => {
  test.each([
    [300, 'right'],
    [150, 'mains-not-doubled'],
    [6000, 'tooth-symmetry'],
    [5, 'no-60'],
    [600, 'half-tooth'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('strobe-teeth', { f: 50, z2: 20 }, value)).toBe(cause)
  })
  test('is where the teeth of a wheel that gets faster first look the same', () => {
    eachOf('strobe-teeth', ({ z2, f }, answer) => {
      relativelyNear(firstStill(z2!, timeBetweenFlashes(f!)), answer, 1e-9)
    })
  })
  test('three blades under 100 flashes a second: 2000 r/min, derived from the rule of the same manual', () => {
    near(answerOf('strobe-teeth', { f: 50, z2: 3 }), 2000, 1e-9)
  })
})
