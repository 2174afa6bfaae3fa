import { expect, test } from 'vitest'
import { contactLines, pathOfContact } from '../../../sim/gear/contact-lines.ts'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { wheelSectionOutline, wormSectionOutline } from '../../../sim/gear/mesh-section.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { handSign } from '../../../sim/gear/wheel-motion.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairName, pairs } from './pairs.ts'

const plain: GearNumbers = { ...oneToTwenty, profile: 'ZI', wheelForm: 'helical' }
const THREADS = 5

/** Distance [mm] of a point from a polyline. */
function distance(line: Float64Array, x: number, z: number): number {
  let least = Infinity
  for (let i = 0; i + 3 < line.length; i += 2) {
    const [ax = 0, az = 0, bx = 0, bz = 0] = line.subarray(i, i + 4)
    const [ux, uz] = [bx - ax, bz - az]
    const along = ((x - ax) * ux + (z - az) * uz) / (ux * ux + uz * uz || 1)
    const part = Math.max(0, Math.min(1, along))
    least = Math.min(least, Math.hypot(x - ax - part * ux, z - az - part * uz))
  }
  return least
}

/** The two outlines in space at the worm angle phi, with the wheel turned `extra` [rad] further. */
function placed(pair: GearNumbers, y: number, phi: number, extra = 0) {
  const { centreDistance, referenceRadiusWheel, screwParameter } = pairProportions(pair)
  const moved = handSign(pair.hand) * screwParameter * phi
  const worm = wormSectionOutline(pair, y, THREADS).map((value, i) => (i % 2 === 0 ? value : value - moved))
  const angle = extra - moved / referenceRadiusWheel
  const raw = wheelSectionOutline(pair, y, THREADS)
  const wheel = new Float64Array(raw.length)
  for (let i = 0; i < raw.length; i += 2) {
    const R = Math.hypot(raw[i]!, raw[i + 1]!)
    const chi = Math.atan2(raw[i + 1]!, -raw[i]!) + angle
    wheel[i] = centreDistance - R * Math.cos(chi)
    wheel[i + 1] = R * Math.sin(chi)
  }
  return { worm, wheel }
}

test.each(pairs.map((pair) => [pairName(pair), pair] as const))(
  '%s: where flanks touch, both outlines pass through the point',
  (_, pair) => {
    for (const phi of [0, 0.8, 2.1]) {
      const { worm, wheel } = placed(pair, 0, phi)
      let seen = 0
      for (const sigma of [-1, 1] as const) {
        for (const { points } of contactLines(pair, phi, 'right', sigma)) {
          for (let i = 0; i < points.length; i += 3) {
            if (Math.abs(points[i + 1]!) > 1e-12) continue
            seen++
            // Chords 0.2 mm long lie off a radius of 2 mm, as beside an undercut, by 2.5 um.
            near(distance(worm, points[i]!, points[i + 2]!), 0, 0.0025)
            near(distance(wheel, points[i]!, points[i + 2]!), 0, 0.0025)
          }
        }
      }
      expect(seen).toBeGreaterThanOrEqual(2)
    }
  },
)

test('outline of the worm is thinner by the backlash, and that of the wheel has wider spaces', () => {
  const r1 = pairProportions(oneToTwenty).referenceRadiusWorm
  const px = pairProportions(oneToTwenty).axialPitch
  const width = (line: Float64Array, at: number, k: number): number => {
    const places: number[] = []
    for (let i = 0; i + 3 < line.length; i += 2) {
      const [ax = 0, az = 0, bx = 0, bz = 0] = line.subarray(i, i + 4)
      if ((ax - at) * (bx - at) <= 0 && ax !== bx) places.push(az + ((bz - az) * (at - ax)) / (bx - ax))
    }
    return places[k + 1]! - places[k]!
  }
  near(width(wormSectionOutline(oneToTwenty, 0, 2), r1, 2), px / 2, 1e-9)
  const thin = { ...oneToTwenty, backlash: 0.2 }
  near(width(wormSectionOutline(thin, 0, 2), r1, 2), px / 2 - 0.2, 1e-9)
  for (const wheelForm of ['throated', 'helical'] as const) {
    const full = wheelSectionOutline({ ...plain, wheelForm }, 0, 0)
    const wide = wheelSectionOutline({ ...plain, wheelForm, backlash: 0.2, thinned: 'wheel' }, 0, 0)
    const angle = (line: Float64Array) => Math.atan2(line[1]!, -line[0]!)
    const tip = Math.hypot(full[0]!, full[1]!)
    near((angle(wide) - angle(full)) * tip, (-0.1 * tip) / 20, 1e-9)
  }
})

test('outlines of a pair with play touch on the driving flank once the wheel is turned back by half the play', () => {
  for (const thinned of ['worm', 'wheel'] as const) {
    const pair: GearNumbers = { ...oneToTwenty, backlash: 0.2, thinned }
    const sigma = -1
    const extra = (-sigma * 0.1) / pairProportions(pair).referenceRadiusWheel
    const { worm, wheel } = placed(pair, 0, 0.5, extra)
    for (const { points } of contactLines(pair, 0.5, 'right', sigma)) {
      for (let i = 0; i < points.length; i += 3) {
        if (Math.abs(points[i + 1]!) > 1e-12) continue
        near(distance(worm, points[i]!, points[i + 2]!), 0, 0.001)
        near(distance(wheel, points[i]!, points[i + 2]!), 0, 0.001)
      }
    }
  }
})

test('path of contact of a plane lies between the outlines of the tips', () => {
  const { gorgeRadius, tipRadiusWorm } = pairProportions(oneToTwenty)
  const { points } = pathOfContact(oneToTwenty, -1, 0)
  for (let i = 0; i < points.length; i += 2) {
    expect(points[i]!).toBeGreaterThan(gorgeRadius)
    expect(points[i]!).toBeLessThan(tipRadiusWorm + 1e-9)
  }
})
