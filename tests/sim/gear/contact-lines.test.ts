import { expect, test } from 'vitest'
import { ownSpace } from '../../../sim/gear/bearing-moment.ts'
import {
  contactField,
  newContactCounts,
  newContactPoints,
  writeContactLines,
} from '../../../sim/gear/contact-field.ts'
import { contactLines, pathOfContact } from '../../../sim/gear/contact-lines.ts'
import { contactRatio } from '../../../sim/gear/contact-ratio.ts'
import { slidingAt } from '../../../sim/gear/contact-sliding.ts'
import type { GearNumbers, Side } from '../../../sim/gear/gear-numbers.ts'
import { helicalFlankAngle, helicalTooth } from '../../../sim/gear/helical-tooth.ts'
import { leadAngle, pairProportions } from '../../../sim/gear/proportions.ts'
import { thinnedThreadForm } from '../../../sim/gear/thread-profile.ts'
import type { Flank } from '../../../sim/gear/wheel-flank.ts'
import { farSidePhase, handSign, wheelSense } from '../../../sim/gear/wheel-motion.ts'
import { noEdge, spaceCutter, writeSpaceEdge } from '../../../sim/gear/wheel-space.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairName, pairs } from './pairs.ts'

const plain: GearNumbers = { ...oneToTwenty, profile: 'ZI', wheelForm: 'helical', wormStarts: 2 }
const broad: GearNumbers = { ...oneToTwenty, wheelWidth: pairProportions(oneToTwenty).fullWheelWidth }
const thinnedWorm: GearNumbers = { ...oneToTwenty, hand: 'left', backlash: 0.15, thinned: 'worm' }
const thinnedWheel: GearNumbers = { ...thinnedWorm, wheelTeeth: 31, thinned: 'wheel' }
const cases = [...pairs, broad, thinnedWorm, thinnedWheel, plain].map(
  (pair) =>
    [`${pairName(pair)} ${pair.wheelForm} ${pair.wheelWidth.toFixed(1)} ${pair.backlash}`, pair] as const,
)
/** Tells the tolerance of 1 um at module 2. */
const MICROMETRE = 1e-3

interface Miss {
  worm: number
  wheel: number
}

/** Chi of the wheel's flank as it is made, in its own frame. */
function flankAngle(pair: GearNumbers): (sigma: Flank, y: number, R: number) => number {
  if (pair.wheelForm === 'helical') {
    const tooth = helicalTooth(pair)
    return (sigma, y, R) => helicalFlankAngle(tooth, sigma, R, y)
  }
  const cutter = spaceCutter(pair)
  const edge = noEdge()
  return (sigma, y, R) => {
    writeSpaceEdge(edge, cutter, sigma, y, R)
    return edge.chi
  }
}

/**
 * How far [mm] a point of contact lies off the thread and off the wheel of its side, both as they are made, with the
 * wheel turned by the play onto the flank. The wheel is looked at in its own frame, by the equations of its motion.
 */
function missOf(
  pair: GearNumbers,
  angle: (sigma: Flank, y: number, R: number) => number,
  side: Side,
  sigma: Flank,
  phi: number,
  x: number,
  y: number,
  z: number,
): Miss {
  const dims = pairProportions(pair)
  const P = handSign(pair.hand) * dims.screwParameter
  const from =
    z - P * (Math.atan2(y, x) - phi) - sigma * thinnedThreadForm(pair).halfThickness(Math.hypot(x, y))
  const worm = Math.abs(from - Math.round(from / dims.axialPitch) * dims.axialPitch)
  const zero = side === 'right' ? 0 : farSidePhase(pair.wormStarts, pair.wheelTeeth)
  const turned = zero + (wheelSense(side, pair.hand) * pair.wormStarts * phi) / pair.wheelTeeth
  // A wheel turned onto the thread's flank sigma has gone against it, which on the left is the other sense about y.
  const sense = side === 'right' ? -1 : 1
  const w = turned + (sense * sigma * pair.backlash) / 2 / dims.referenceRadiusWheel
  const across = side === 'right' ? dims.centreDistance - x : -dims.centreDistance - x
  const R = Math.hypot(across, z)
  // On the far side it is the wheel's other flank that meets the same flank of the thread.
  const own: Flank = side === 'right' ? sigma : sigma === 1 ? -1 : 1
  const pitch = (2 * Math.PI) / pair.wheelTeeth
  const off = Math.atan2(z, across) - w - angle(own, y, R)
  return { worm, wheel: Math.abs(off - Math.round(off / pitch) * pitch) * R }
}

test.each(cases)(
  '%s: every point of every line lies on worm and wheel of both sides within 1 um',
  (_, pair) => {
    const worst = { worm: 0, wheel: 0 }
    let points = 0
    const angle = flankAngle(pair)
    for (const sigma of [-1, 1] as const) {
      const field = contactField(pair, sigma)
      const out = new Float64Array(newContactPoints(field).length)
      const counts = newContactCounts(field)
      for (const side of ['right', 'left'] as const) {
        for (let n = 0; n < 31; n++) {
          const phi = (2 * Math.PI * n) / 31
          writeContactLines(out, counts, field, side, Float64Array.of(phi))
          counts.forEach((count, slot) => {
            for (let i = 0; i < count; i++) {
              const at = 3 * (slot * field.stride + i)
              const miss = missOf(pair, angle, side, sigma, phi, out[at]!, out[at + 1]!, out[at + 2]!)
              worst.worm = Math.max(worst.worm, miss.worm)
              worst.wheel = Math.max(worst.wheel, miss.wheel)
              points++
            }
          })
        }
      }
    }
    expect(points).toBeGreaterThan(100)
    expect(worst.worm).toBeLessThan(MICROMETRE)
    expect(worst.wheel).toBeLessThan(MICROMETRE)
  },
)

test('a wheel that stands 2 um off its place is seen by the same measure', () => {
  const angle = flankAngle(oneToTwenty)
  const [line] = contactLines(oneToTwenty, 1, 'right', 1)
  const [x = 0, y = 0, z = 0] = line!.points.slice(30, 33)
  const off = 0.002 / (10 * handSign(oneToTwenty.hand))
  const { worm } = missOf(oneToTwenty, angle, 'right', 1, 1 + 20 * off, x, y, z)
  expect(worm).toBeGreaterThan(MICROMETRE)
})

test('as many lines touch, on average over a turn, as the contact ratio of a plane tells', () => {
  for (const pair of [oneToTwenty, pairs[3]!, plain]) {
    const field = contactField(pair, 1)
    const middle = field.planes >> 1
    const px = field.axialPitch
    const { midPlane } = contactRatio(pair)
    near((field.to[middle]! - field.from[middle]!) / px, midPlane, 1e-9)
    const out = newContactPoints(field)
    const counts = newContactCounts(field)
    let seen = 0
    const turns = 400
    for (let n = 0; n < turns; n++) {
      writeContactLines(
        out,
        counts,
        field,
        'right',
        Float64Array.of((2 * Math.PI * n) / turns / pair.wormStarts),
      )
      counts.forEach((count, slot) => {
        const line = out.subarray(3 * slot * field.stride, 3 * (slot * field.stride + count))
        if (crossesMiddle(line, pair)) seen++
      })
    }
    near(seen / turns, midPlane, 2 / turns + 1e-9)
  }
})

/** Whether a line has a point in the mid-plane; the single point of a plain wheel always counts. */
function crossesMiddle(points: Float32Array, pair: GearNumbers): boolean {
  if (pair.wheelForm === 'helical') return points.length > 0
  for (let i = 1; i < points.length; i += 3) if (Math.abs(points[i]!) < 1e-12) return true
  return false
}

test('lines of the left mesh are those of the right one half a turn of the worm on, turned half round', () => {
  const right = contactLines(oneToTwenty, 1 + Math.PI, 'right', -1)
  const left = contactLines(oneToTwenty, 1, 'left', -1)
  expect(left.length).toBe(right.length)
  expect(left.length).toBeGreaterThan(0)
  left.forEach(({ points }, n) => {
    for (let i = 0; i < points.length; i += 3) {
      near(points[i]!, -right[n]!.points[i]!, 1e-12)
      near(points[i + 1]!, -right[n]!.points[i + 1]!, 1e-12)
      near(points[i + 2]!, right[n]!.points[i + 2]!, 1e-12)
    }
  })
})

test('lines are told by the start of the worm that they are on, and each start has its share', () => {
  const pair = pairs[4]!
  const seen = new Set<number>()
  for (let n = 0; n < 30; n++) {
    for (const side of ['left', 'right'] as const) {
      for (const { thread } of contactLines(pair, n / 3, side, 1)) seen.add(thread)
    }
  }
  expect([...seen].sort((a, b) => a - b)).toEqual([0, 1, 2])
})

test('a line moves on without a jump and keeps its start while the worm turns', () => {
  const before = contactLines(pairs[3]!, 0.5, 'right', 1)
  const after = contactLines(pairs[3]!, 0.5 + 1e-6, 'right', 1)
  expect(after.map(({ thread }) => thread)).toEqual(before.map(({ thread }) => thread))
})

test('tooth space that a thread is in counts forwards on the right wheel and backwards on the left', () => {
  for (const pair of pairs) {
    const angle = flankAngle(pair)
    const { centreDistance: a } = pairProportions(pair)
    for (const side of ['right', 'left'] as const) {
      const field = contactField(pair, 1)
      const out = new Float64Array(newContactPoints(field).length)
      const counts = newContactCounts(field)
      const phi = 0.7
      writeContactLines(out, counts, field, side, Float64Array.of(phi))
      const moved = field.signedParameter * (side === 'left' ? phi + Math.PI : phi)
      const k = Math.ceil((field.first + moved) / field.axialPitch)
      const [x = 0, y = 0, z = 0] = out.slice(6, 9)
      const across = side === 'right' ? a - x : -a - x
      const zero = side === 'right' ? 0 : farSidePhase(pair.wormStarts, pair.wheelTeeth)
      const w = zero + (wheelSense(side, pair.hand) * pair.wormStarts * phi) / pair.wheelTeeth
      const chi = Math.atan2(z, across) - w - angle(side === 'right' ? 1 : -1, y, Math.hypot(across, z))
      const space = (chi * pair.wheelTeeth) / (2 * Math.PI)
      const whole = Math.round(space)
      near(space, whole, 1e-3)
      const teeth = pair.wheelTeeth
      expect(((whole % teeth) + teeth) % teeth).toBe(ownSpace(pair, side, k))
    }
  }
})

test('path of contact goes from the tip of the wheel to the tip of the worm, through the pitch point', () => {
  for (const pair of [...pairs, plain]) {
    const { centreDistance, throatRadiusWheel, tipRadiusWorm } = pairProportions(pair)
    const { points, start, end, pitchPoint } = pathOfContact(pair, 1, 0)
    near(Math.hypot(centreDistance - start.x, start.z), throatRadiusWheel, 1e-9)
    if (pair.wheelTeeth !== 12 && pair !== plain) near(end.x, tipRadiusWorm, 1e-9)
    expect(start.x).toBeLessThan(pitchPoint)
    expect(end.x).toBeGreaterThan(pitchPoint)
    for (let i = 0; i < points.length; i += 2) {
      // Before the pitch point contact is at -z, after it at +z.
      expect(Math.sign(points[i + 1]!)).toBe(Math.sign(points[i]! - pitchPoint))
    }
    near((end.shift - start.shift) / pairProportions(pair).axialPitch, contactRatio(pair).midPlane, 1e-9)
  }
})

test('flanks slide along each other: the velocity has no part along the normal', () => {
  for (const pair of [...pairs, plain]) {
    const P = handSign(pair.hand) * pairProportions(pair).screwParameter
    const { slope } = thinnedThreadForm(pair)
    for (const side of ['right', 'left'] as const) {
      for (const sigma of [-1, 1] as const) {
        for (const { points } of contactLines(pair, 0.4, side, sigma)) {
          // Ends between the table's planes are only as exact as the picture needs them.
          const at = points.length > 3 ? 3 * (points.length / 6 - 0.5 - ((points.length / 3 + 1) % 2) / 2) : 0
          const [x = 0, y = 0, z = 0] = points.slice(at, at + 3)
          const { velocity, speed } = slidingAt(pair, side, [x, y, z], 100)
          const r = Math.hypot(x, y)
          const lean = (sigma * slope(r)) / r
          const n = [(P * y) / (r * r) - lean * x, (-P * x) / (r * r) - lean * y, 1]
          const along = velocity[0] * n[0]! + velocity[1] * n[1]! + velocity[2] * n[2]!
          // The table is read between its samples, within a tenth of a micrometre.
          expect(Math.abs(along) / speed / Math.hypot(...n)).toBeLessThan(2e-5)
        }
      }
    }
  }
})

test('sliding speed at the pitch point is v1/cos g', () => {
  for (const pair of pairs) {
    const { referenceRadiusWorm: r1 } = pairProportions(pair)
    const g = leadAngle(pair.wormStarts, pair.diameterQuotient)
    for (const [side, x] of [['right', r1] as const, ['left', -r1] as const]) {
      const { speed } = slidingAt(pair, side, [x, 0, 0], 50)
      near(speed, (50 * r1 * 1e-3) / Math.cos(g), 1e-12)
    }
  }
})
