import { expect, test } from 'vitest'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { threadForm } from '../../../sim/gear/thread-profile.ts'
import { handSign } from '../../../sim/gear/wheel-motion.ts'
import { silhouetteShift, wheelOutline, wormSilhouette } from '../../../sim/shape/section.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairs } from '../gear/pairs.ts'

const wrapped = (value: number, period: number): number => value - Math.round(value / period) * period

test('outline of the wheel runs once round its axis, between root and throat, the same way on every pair', () => {
  for (const pair of pairs) {
    const outline = wheelOutline(pair)
    const { rootRadiusWheel, throatRadiusWheel } = pairProportions(pair)
    let turned = 0
    for (let i = 0; i < outline.length; i += 2) {
      const next = (i + 2) % outline.length
      const [x, z, nextX, nextZ] = [outline[i]!, outline[i + 1]!, outline[next]!, outline[next + 1]!] as const
      turned += Math.atan2(x * nextZ - z * nextX, x * nextX + z * nextZ)
      expect(Math.hypot(x, z)).toBeGreaterThan(rootRadiusWheel - 1e-9)
      expect(Math.hypot(x, z)).toBeLessThan(throatRadiusWheel + 1e-9)
    }
    near(turned, -2 * Math.PI, 1e-9)
  }
})

test('a tooth space of the outline looks towards -x, where the worm of the right wheel is', () => {
  const outline = wheelOutline(oneToTwenty)
  let deepest = Infinity
  for (let i = 0; i < outline.length; i += 2) {
    if (outline[i]! < 0 && Math.abs(outline[i + 1]!) < 1)
      deepest = Math.min(deepest, Math.hypot(outline[i]!, outline[i + 1]!))
  }
  near(deepest, 17.5, 1e-9)
})

test('edges of the moved drawing are those of the turned worm', () => {
  for (const pair of pairs) {
    const { axialPitch, screwParameter, tipRadiusWorm } = pairProportions(pair)
    const P = handSign(pair.hand) * screwParameter
    const half = threadForm(pair).halfThickness(tipRadiusWorm)
    for (const fraction of [0, 0.13, 0.5, 0.99]) {
      const shift = silhouetteShift(pair, fraction)
      expect(Math.abs(shift)).toBeLessThanOrEqual(axialPitch / 2 + 1e-12)
      for (const edge of wormSilhouette(pair).tipEdges) {
        for (let i = 2; i < edge.length - 2; i += 6) {
          const theta = Math.acos(edge[i]! / tipRadiusWorm)
          const z = edge[i + 1]! + shift - P * (theta - 2 * Math.PI * fraction)
          near(Math.abs(wrapped(z, axialPitch)), half, 1e-9)
        }
      }
    }
  }
})

test('drawn lines cover the whole thread wherever the worm stands', () => {
  for (const pair of pairs) {
    const { rightProfile, leftProfile, halfLength } = wormSilhouette(pair)
    const reach = halfLength + pairProportions(pair).axialPitch / 2
    for (const profile of [rightProfile, leftProfile]) {
      expect(profile[1]!).toBeLessThan(-reach)
      expect(profile.at(-1)!).toBeGreaterThan(reach)
      for (let i = 3; i < profile.length; i += 2) expect(profile[i]!).toBeGreaterThan(profile[i - 2]!)
    }
  }
})
