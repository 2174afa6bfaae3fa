/**
 * The flanks against searches that know nothing of the pitch point, of derivatives or of the law of gearing.
 */
import { expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { activeRange, cutterEnd, filletAngle, lambda } from '../../../sim/gear/undercut.ts'
import {
  type Flank,
  flankPoint,
  rackHeight,
  rackSlope,
  rackTilt,
  wheelGeneration,
} from '../../../sim/gear/wheel-flank.ts'
import { junctionRadius, soundTipRadius } from '../../../sim/gear/wheel-section.ts'
import {
  noEdge,
  rootRadius,
  type SpaceCutter,
  spaceCutter,
  writeSpaceEdge,
} from '../../../sim/gear/wheel-space.ts'
import { near } from '../../support/near.ts'
import { everyProfile } from './contact-samples.ts'
import { oneToTwenty, pairName, pairs } from './pairs.ts'

test('n.v = 0 at 441 points on both flanks of seven ratios, both hands, all profiles', () => {
  let worst = 0
  let seen = 0
  for (const pair of everyProfile) {
    const cutter = spaceCutter(pair)
    const g = cutter.generation
    const w = -g.signedParameter / g.wheelRadius
    for (const sigma of [-1, 1] as const) {
      for (let j = 0; j <= 20; j++) {
        const y = pair.wheelWidth * (j / 20 - 0.5)
        const { tip, junction } = activeRange(cutter, sigma, y)
        for (let i = 0; i <= 20; i++) {
          const x = tip + ((junction - tip) * i) / 20
          const { height } = flankPoint(g, sigma, x, y)
          if (!Number.isFinite(height)) continue
          const n = [-rackSlope(g, sigma, x, y), -rackTilt(g, sigma, x, y), 1]
          const v = [-y - w * height, x, -w * (g.centreDistance - x)]
          const product = n[0]! * v[0]! + n[1]! * v[1]! + n[2]! * v[2]!
          worst = Math.max(worst, Math.abs(product) / (Math.hypot(...v) * Math.hypot(...n)))
          seen++
        }
      }
    }
  }
  expect(seen).toBeGreaterThan(0.99 * everyProfile.length * 2 * 441)
  expect(worst).toBeLessThan(1e-12)
})

/**
 * Edge of the space on the circle R: the farthest angle that the thread reaches there, over every place of the
 * thread. For each place the edge of the metal is found by halving, the farthest place by golden section.
 */
function cutEdge(cutter: SpaceCutter, sigma: Flank, y: number, R: number): number {
  const { generation: g } = cutter
  const end = Math.acos(Math.min(1, (g.centreDistance - cutterEnd(cutter, y)) / R))
  const reached = (s: number): number => {
    const metal = (c: number) =>
      sigma * (R * Math.sin(c) - s - rackHeight(g, sigma, g.centreDistance - R * Math.cos(c), y)) <= 0
    let inside = -sigma * end
    let outside = sigma * end
    if (!metal(inside)) return -Infinity
    if (!metal(outside)) {
      for (let i = 0; i < 60; i++) {
        const middle = (inside + outside) / 2
        if (metal(middle)) inside = middle
        else outside = middle
      }
    }
    return sigma * (outside - s / g.wheelRadius)
  }
  const px = (2 * Math.PI * g.wheelRadius * cutter.toothPitch) / (2 * Math.PI)
  const step = (4 * px) / 400
  let best = -2 * px
  for (let s = -2 * px; s <= 2 * px; s += step) if (reached(s) > reached(best)) best = s
  let low = best - step
  let high = best + step
  const golden = (Math.sqrt(5) - 1) / 2
  for (let i = 0; i < 80; i++) {
    const left = high - golden * (high - low)
    const right = low + golden * (high - low)
    if (reached(left) > reached(right)) high = right
    else low = left
  }
  return sigma * reached((low + high) / 2)
}

const enveloped: readonly GearNumbers[] = [
  oneToTwenty,
  { ...oneToTwenty, hand: 'left', profile: 'ZN', wheelTeeth: 24 },
  { ...oneToTwenty, profile: 'ZI', wormStarts: 2, wheelTeeth: 30 },
  { ...oneToTwenty, wheelTeeth: 12 },
  { ...oneToTwenty, profile: 'ZK', wormStarts: 2, wheelTeeth: 31, hand: 'left' },
]

test.each(enveloped.map((pair) => [pairName(pair), pair] as const))(
  '%s: flank and fillet are the envelope that a search by halving and golden section finds',
  (_, pair) => {
    const cutter = spaceCutter(pair)
    const tolerance = pair.profile === 'ZK' ? 1e-6 : 1e-9
    const edge = noEdge()
    let flanks = 0
    let fillets = 0
    for (const y of [-4, 0, 3]) {
      for (const sigma of [-1, 1] as const) {
        const root = rootRadius(cutter, y)
        const tip = soundTipRadius(cutter, y)
        for (let i = 1; i <= 14; i++) {
          const R = root + ((tip - root) * i) / 14
          writeSpaceEdge(edge, cutter, sigma, y, R)
          near(edge.chi * R, cutEdge(cutter, sigma, y, R) * R, tolerance)
          if (edge.corner) fillets++
          else flanks++
        }
      }
    }
    expect(flanks).toBeGreaterThan(10)
    expect(fillets).toBeGreaterThan(5)
  },
)

test.each(pairs.map((pair) => [pairName(pair), pair] as const))(
  '%s: closed forms of fillet and junction are those of the envelope',
  (_, pair) => {
    const cutter = spaceCutter(pair)
    const g = cutter.generation
    const edge = noEdge()
    for (const y of [-5, -2, 0, 2, 5]) {
      for (const sigma of [-1, 1] as const) {
        const tip = soundTipRadius(cutter, y)
        const range = activeRange(cutter, sigma, y)
        const junction = flankPoint(g, sigma, range.junction, y).radius
        // The solver halves the height of the tooth a dozen times.
        near(junction, junctionRadius(cutter, sigma, y, tip), (tip - rootRadius(cutter, y)) / 2 ** 11)
        near(flankPoint(g, sigma, range.tip, y).radius, tip, 1e-9)
        const corner = flankPoint(g, sigma, range.cutter, y).height
        for (let i = 1; i < 8; i++) {
          const R = rootRadius(cutter, y) + ((junction - rootRadius(cutter, y)) * i) / 8
          writeSpaceEdge(edge, cutter, sigma, y, R)
          expect(edge.corner).toBe(true)
          near(filletAngle(cutter, sigma, y, R, corner), edge.chi, 1e-11)
        }
      }
    }
  },
)

test.each(pairs.map((pair) => [pairName(pair), pair] as const))(
  '%s: lambda is how fast the flank goes in towards the root',
  (_, pair) => {
    const g = wheelGeneration(pair)
    const step = 1e-4
    for (const y of [-4, 0, 4]) {
      for (const sigma of [-1, 1] as const) {
        for (let x = 8.8; x < 12; x += 0.4) {
          const { radius } = flankPoint(g, sigma, x, y)
          const rate =
            (flankPoint(g, sigma, x + step, y).radius - flankPoint(g, sigma, x - step, y).radius) / (2 * step)
          near(lambda(g, sigma, x, y), (-rate * radius) / g.wheelRadius, 2e-5)
        }
      }
    }
  },
)

test('flank of ZA comes to a cusp in the mid-plane where a straight rack would: x - xP = r2 sin^2 alpha_x', () => {
  for (const wheelTeeth of [12, 16, 20]) {
    const g = wheelGeneration({ ...oneToTwenty, wheelTeeth })
    const { axialPressureAngle } = pairProportions(oneToTwenty)
    const x = g.centreDistance - g.wheelRadius + g.wheelRadius * Math.sin(axialPressureAngle) ** 2
    near(lambda(g, 1, x, 0), 0, 1e-9)
  }
})

test('1/20 is undercut in the fillet alone, 1/24 nowhere, 1/12 in the flank in use', () => {
  const ends = (wheelTeeth: number) => {
    const cutter = spaceCutter({ ...oneToTwenty, wheelTeeth })
    const planes = Array.from({ length: 25 }, (_, j) => j / 2 - 6)
    const ranges = planes.flatMap((y) =>
      ([-1, 1] as const).map((sigma) => ({ y, ...activeRange(cutter, sigma, y) })),
    )
    return {
      fillet: ranges.some(({ junction, cutter: end }) => junction < end - 1e-9),
      active: ranges.some(
        ({ y, junction }) => junction < Math.sqrt(cutter.limits.wormTip ** 2 - y * y) - 1e-9,
      ),
    }
  }
  expect(ends(20)).toEqual({ fillet: true, active: false })
  expect(ends(24)).toEqual({ fillet: false, active: false })
  expect(ends(12)).toEqual({ fillet: true, active: true })
})
