import { expect, test } from 'vitest'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { flankPoint, rackSlope, rackTilt, wheelGeneration } from '../../../sim/gear/wheel-flank.ts'
import { noEdge, spaceCutter, writeSpaceEdge } from '../../../sim/gear/wheel-space.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairName, pairs } from './pairs.ts'

const named = pairs.map((pair) => [pairName(pair), pair] as const)

test.each(named)('%s: flanks slide on each other and never part, n.v = 0', (_, pair) => {
  const g = wheelGeneration(pair)
  const { gorgeRadius, hobTipRadius } = pairProportions(pair)
  let worst = 0
  for (let i = 0; i <= 20; i++) {
    for (let j = 0; j <= 20; j++) {
      for (const sigma of [-1, 1] as const) {
        const y = pair.wheelWidth * (j / 20 - 0.5)
        const x = Math.sqrt(
          (gorgeRadius + ((hobTipRadius - gorgeRadius) * i) / 20) ** 2 - Math.min(y * y, 30),
        )
        const { height } = flankPoint(g, sigma, x, y)
        if (!Number.isFinite(height) || Math.abs(height) > 100) continue
        const n = [-rackSlope(g, sigma, x, y), -rackTilt(g, sigma, x, y), 1]
        // Worm at 1 rad/s about z; wheel at -P/r2 about y, at the point (x - a, y, height) from its axis.
        const w = -g.signedParameter / g.wheelRadius
        const v = [-y - w * height, x, -w * (g.centreDistance - x)]
        const product = n[0]! * v[0]! + n[1]! * v[1]! + n[2]! * v[2]!
        const speed = Math.hypot(...v) * Math.hypot(...n)
        worst = Math.max(worst, Math.abs(product) / speed)
      }
    }
  }
  expect(worst).toBeLessThan(1e-12)
})

test.each(named)(
  '%s: edge of the space is the flank of the five equations wherever the cutter leaves it',
  (_, pair) => {
    const cutter = spaceCutter(pair)
    const edge = noEdge()
    const r1 = pairProportions(pair).referenceRadiusWorm
    let seen = 0
    for (const y of [-4, -1.5, 0, 2, 4]) {
      for (const sigma of [-1, 1] as const) {
        for (let x = r1 - 1.4; x < r1; x += 0.2) {
          const point = flankPoint(cutter.generation, sigma, x, y)
          if (point.radius > cutter.outsideRadius || Math.hypot(x, y) < cutter.limits.gorge) continue
          writeSpaceEdge(edge, cutter, sigma, y, point.radius)
          near(edge.chi, point.chi, 1e-11)
          expect(edge.corner).toBe(false)
          seen++
        }
      }
    }
    expect(seen).toBeGreaterThan(30)
  },
)

test.each(named)('%s: nothing the cutter passes reaches beyond the edge of the space', (_, pair) => {
  // Independent of the edge's own search: the cutter is pushed along in small steps and its points turned
  // into the wheel.
  const cutter = spaceCutter(pair)
  const { generation: g, limits } = cutter
  const edge = noEdge()
  const R = g.wheelRadius - 0.3 * pair.axialModule
  for (const y of [-3, 0, 3]) {
    writeSpaceEdge(edge, cutter, 1, y, R)
    let most = -Infinity
    const far = Math.sqrt(limits.hobTip ** 2 - y * y)
    for (let shift = -8; shift <= 8; shift += 0.004) {
      for (let side = -1; side <= 1; side += 2) {
        // Where the circle R meets the moved rack, between the axis and the cutter's tip.
        let low = g.centreDistance - R
        let high = far
        const over = (x: number) => {
          const z = side * Math.sqrt(Math.max(0, R * R - (g.centreDistance - x) ** 2))
          return z - shift - rackAt(x)
        }
        const rackAt = (x: number) =>
          g.signedParameter * Math.atan2(y, x) + g.form.halfThickness(Math.hypot(x, y))
        if (over(low) * over(high) > 0) continue
        for (let i = 0; i < 50; i++) {
          const middle = (low + high) / 2
          if (over(low) * over(middle) <= 0) high = middle
          else low = middle
        }
        const z = side * Math.sqrt(Math.max(0, R * R - (g.centreDistance - low) ** 2))
        most = Math.max(most, Math.atan2(z, g.centreDistance - low) - shift / g.wheelRadius)
      }
    }
    expect(most).toBeLessThanOrEqual(edge.chi + 1e-12)
    near(most, edge.chi, 1e-5)
  }
})

test('backlash off the wheel turns each flank into the tooth by jx/2 at the reference circle, and opens the root', () => {
  const full = spaceCutter(oneToTwenty)
  const thin = spaceCutter({ ...oneToTwenty, backlash: 0.2, thinned: 'wheel' })
  const worm = spaceCutter({ ...oneToTwenty, backlash: 0.2, thinned: 'worm' })
  const [before, after, same] = [noEdge(), noEdge(), noEdge()]
  for (const y of [-4, 0, 4]) {
    for (const sigma of [-1, 1] as const) {
      for (const R of [18.5, 20, 21]) {
        writeSpaceEdge(before, full, sigma, y, R)
        writeSpaceEdge(after, thin, sigma, y, R)
        writeSpaceEdge(same, worm, sigma, y, R)
        near((after.chi - before.chi) * 20, sigma * 0.1, 1e-12)
        expect(after.contact).toBe(before.contact)
        expect(same.chi).toBe(before.chi)
      }
    }
  }
})

test.each([
  { centres: { kind: 'shift', profileShift: 0.4 }, a: 30.8 },
  { centres: { kind: 'shift', profileShift: -0.3 }, a: 29.4 },
  { centres: { kind: 'distance', centreDistance: 30.5 }, a: 30.5 },
] as const)(
  'with $centres the wheel still rolls at its reference circle and reaches to the same depth of worm',
  (row) => {
    const pair = { ...oneToTwenty, centres: row.centres }
    const { generation, limits } = spaceCutter(pair)
    near(generation.centreDistance, row.a, 1e-12)
    near(generation.wheelRadius, 20, 1e-12)
    // addendum and clearance of the worm do not know the shift
    near(limits.wormTip, 12, 1e-12)
    near(limits.hobTip, 12.5, 1e-12)
    near(limits.gorge, 8, 1e-12)
    near(limits.wormRoot, 7.5, 1e-12)
  },
)
