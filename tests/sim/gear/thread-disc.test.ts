import { expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { discSetting, type GrindingDisc, groundPoint } from '../../../sim/gear/thread-disc.ts'
import { threadForm } from '../../../sim/gear/thread-profile.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty } from './pairs.ts'

const ground: GearNumbers = { ...oneToTwenty, profile: 'ZK' }
const pairs: readonly GearNumbers[] = [
  ground,
  { ...ground, discDiameter: 30 },
  { ...ground, wormStarts: 4, wheelTeeth: 41, discDiameter: 400 },
  { ...ground, wormStarts: 2, wheelTeeth: 30, axialModule: 3, diameterQuotient: 44 / 3 },
]
const named = pairs.map(
  (pair) => [`${pair.wormStarts}/${pair.wheelTeeth}, disc ${pair.discDiameter} mm`, pair] as const,
)

function discOf(pair: GearNumbers): GrindingDisc {
  const { axialPitch, referenceRadiusWorm, screwParameter, leadAngle, ...rest } = pairProportions(pair)
  const place = { px: axialPitch, r1: referenceRadiusWorm, p: screwParameter, g: leadAngle }
  return { ...place, alphaN: rest.normalPressureAngle, Rg: pair.discDiameter / 2 }
}

/** Radii from root to tip, but not below the place where the ground flank begins. */
function radiiOf(pair: GearNumbers): readonly number[] {
  const { rootRadiusWorm, tipRadiusWorm } = pairProportions(pair)
  const from = Math.max(rootRadiusWorm, threadForm(pair).leastRadius + 1e-6)
  return Array.from({ length: 25 }, (_, i) => from + ((tipRadiusWorm - from) * i) / 24)
}

/** Lowest place of a smooth valley between two ends, without any derivative. */
function lowest(f: (t: number) => number, low: number, high: number): number {
  const part = (Math.sqrt(5) - 1) / 2
  let [a, b] = [low, high]
  for (let i = 0; i < 90; i++) {
    const [c, d] = [b - part * (b - a), a + part * (b - a)]
    if (f(c) < f(d)) b = d
    else a = c
  }
  return f((a + b) / 2)
}

/** Height z [mm] of the disc's side over the place (x, y) in the frame of the worm. */
function discHeight({ g, alphaN, r1, Rg }: GrindingDisc, A: number, x: number, y: number): number {
  const O = r1 + Rg
  const above = (z: number) => {
    const along = Math.cos(g) * z - Math.sin(g) * y
    const rho = Math.hypot(x - O, Math.cos(g) * y + Math.sin(g) * z)
    return along - (A + Math.tan(alphaN) * (O - rho))
  }
  let [low, high] = [-r1, r1]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (above(middle) > 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}

test.each(named)('%s: the disc touches the thread along a curve where n.v = 0', (_, pair) => {
  const disc = discOf(pair)
  const { A } = discSetting(disc)
  for (let rho = disc.Rg - 2; rho <= disc.Rg + 2; rho += 0.1) {
    const { point, normal, touches } = groundPoint(disc, A, rho)
    expect(touches).toBe(true)
    // velocity of the screw motion at the point
    const v = [-point[1], point[0], disc.p]
    const product = normal[0] * v[0]! + normal[1] * v[1]! + normal[2] * v[2]!
    near(product / Math.hypot(...v) / Math.hypot(...normal), 0, 1e-12)
  }
})

test.each(named)('%s: thread is what a brute sweep of the disc leaves, to 1e-6 mm', (_, pair) => {
  const disc = discOf(pair)
  const { A } = discSetting(disc)
  const { halfThickness } = threadForm(pair)
  for (const r of radiiOf(pair)) {
    // the disc at the turn t of its screw motion covers the line through (r, 0) up to this height
    const covered = (t: number) => disc.p * t + discHeight(disc, A, r * Math.cos(t), -r * Math.sin(t))
    const most = -lowest((t) => -covered(t), -0.5, 0.5)
    near(disc.px / 2 - most, halfThickness(r), 1e-6)
  }
})

test.each(named)('%s: table agrees with the direct inversion, h to 1e-6 mm and its slope too', (_, pair) => {
  const disc = discOf(pair)
  const { A } = discSetting(disc)
  const { halfThickness, slope } = threadForm(pair)
  for (let rho = disc.Rg - 2; rho <= disc.Rg + 2; rho += 0.05) {
    const direct = groundPoint(disc, A, rho)
    if (direct.r < threadForm(pair).leastRadius) continue
    near(halfThickness(direct.r), direct.h, 1e-6)
    near(slope(direct.r), direct.slope, 1e-5)
  }
})

test('a disc so large that its side is a plane grinds the involute thread ZI', () => {
  // The envelope of a plane that moves along with a screw is the developable helicoid: any text on ruled surfaces.
  const apart = (discDiameter: number) => {
    const disc = threadForm({ ...ground, wormStarts: 2, discDiameter })
    const involute = threadForm({ ...ground, wormStarts: 2, profile: 'ZI' })
    return Math.max(...[8, 9, 11, 12].map((r) => Math.abs(disc.halfThickness(r) - involute.halfThickness(r))))
  }
  expect(apart(1e7)).toBeLessThan(1e-5)
  expect(apart(1000)).toBeLessThan(apart(200))
  expect(apart(200)).toBeLessThan(apart(40))
  expect(apart(40)).toBeGreaterThan(0.005)
})

test('over the whole range of the fields the thread is finite and half a pitch thick at the reference circle', () => {
  for (const wormStarts of [1, 3, 8]) {
    for (const diameterQuotient of [5, 12, 25]) {
      for (const pressureAngle of [10, 30]) {
        for (const discDiameter of [10, 1000]) {
          for (const axialModule of [0.3, 20]) {
            const pair = { ...ground, wormStarts, diameterQuotient, pressureAngle, discDiameter, axialModule }
            const {
              referenceRadiusWorm: r1,
              axialPitch,
              rootRadiusWorm,
              hobTipRadius,
            } = pairProportions(pair)
            const form = threadForm(pair)
            near(form.halfThickness(r1) / axialPitch, 1 / 4, 1e-7)
            for (let i = 0; i <= 20; i++) {
              const r = rootRadiusWorm + ((hobTipRadius - rootRadiusWorm) * i) / 20
              expect(Number.isFinite(form.halfThickness(r) + form.slope(r))).toBe(true)
            }
          }
        }
      }
    }
  }
})
