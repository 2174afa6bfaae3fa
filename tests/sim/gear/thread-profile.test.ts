import { expect, test } from 'vitest'
import { baseLeadAngle, pairProportions } from '../../../sim/gear/proportions.ts'
import { thinnedThreadForm, threadForm } from '../../../sim/gear/thread-profile.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairName, pairs } from './pairs.ts'

test.each(pairs.map((pair) => [pairName(pair), pair] as const))(
  '%s: thread is half a pitch thick at the reference circle',
  (_, pair) => {
    const { referenceRadiusWorm, axialPitch } = pairProportions(pair)
    // ZK is read from a table
    const within = pair.profile === 'ZK' ? 1e-6 : 1e-12
    near(threadForm(pair).halfThickness(referenceRadiusWorm), axialPitch / 4, within)
  },
)

test.each(pairs.map((pair) => [pairName(pair), pair] as const))(
  '%s: slope is the derivative of the thickness',
  (_, pair) => {
    const { rootRadiusWorm, tipRadiusWorm } = pairProportions(pair)
    const { halfThickness, slope, leastRadius } = threadForm(pair)
    const step = 1e-5
    for (let r = Math.max(rootRadiusWorm, leastRadius + 0.1); r <= tipRadiusWorm; r += 0.25) {
      near(slope(r), (halfThickness(r + step) - halfThickness(r - step)) / (2 * step), 1e-8)
    }
  },
)

test('flanks of ZA and ZI lean by the axial pressure angle at the reference circle', () => {
  for (const pair of pairs) {
    if (pair.profile === 'ZN' || pair.profile === 'ZK') continue
    const { referenceRadiusWorm, axialPressureAngle } = pairProportions(pair)
    near(-threadForm(pair).slope(referenceRadiusWorm), Math.tan(axialPressureAngle), 1e-12)
  }
})

test('involute thread is straight in a plane that touches its base cylinder, inclined by the base lead angle', () => {
  const pair = pairs[5]!
  expect(pair.profile).toBe('ZI')
  const { screwParameter, referenceRadiusWorm, leadAngle, normalPressureAngle } = pairProportions(pair)
  const { leastRadius, halfThickness } = threadForm(pair)
  const z = (x: number) =>
    screwParameter * Math.atan2(leastRadius, x) + halfThickness(Math.hypot(x, leastRadius))
  const from = referenceRadiusWorm * 0.9
  const slope = -Math.tan(baseLeadAngle(leadAngle, normalPressureAngle))
  for (let x = from; x < from + 4; x += 0.5) near(z(x), z(from) + slope * (x - from), 1e-9)
})

test('straight blade of ZN makes a straight line in the plane square to the thread at mid space', () => {
  const pair = { ...pairs[4]!, hand: 'right' as const }
  const { screwParameter: p, leadAngle: g, axialPitch, normalPressureAngle } = pairProportions(pair)
  const { halfThickness } = threadForm(pair)
  // The blade's plane holds the x axis and is tilted by g: a point at (X, eta) stands at y = eta sin g, z =
  // -eta cos g from mid space; on the thread z is the helicoid's.
  const off = (X: number, eta: number) => {
    const y = eta * Math.sin(g)
    const fromMidSpace = eta * Math.cos(g) + p * Math.atan2(y, X)
    return axialPitch / 2 - fromMidSpace - halfThickness(Math.hypot(X, y))
  }
  const blade = (X: number) => {
    let low = 0
    let high = axialPitch
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2
      if (off(X, middle) > 0) low = middle
      else high = middle
    }
    return low
  }
  for (let X = 8; X < 12; X += 0.5) {
    near((blade(X + 0.25) - blade(X)) / 0.25, Math.tan(normalPressureAngle), 1e-9)
  }
})

test('backlash off the worm moves both flanks by half of it along the axis, and leaves their slope', () => {
  const pair = { ...oneToTwenty, backlash: 0.2 }
  const [full, thin] = [threadForm(pair), thinnedThreadForm(pair)]
  for (let r = 7.5; r <= 12; r += 0.5) {
    near(full.halfThickness(r) - thin.halfThickness(r), 0.1, 1e-12)
    expect(thin.slope(r)).toBe(full.slope(r))
  }
  expect(thinnedThreadForm({ ...pair, thinned: 'wheel' }).halfThickness(10)).toBe(full.halfThickness(10))
})
