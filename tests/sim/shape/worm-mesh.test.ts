import { expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { threadForm, thinnedThreadForm } from '../../../sim/gear/thread-profile.ts'
import { handSign } from '../../../sim/gear/wheel-motion.ts'
import { wormBody } from '../../../sim/shape/body.ts'
import { type Detail, wormDetail } from '../../../sim/shape/detail.ts'
import { wormMesh } from '../../../sim/shape/worm-mesh.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairName, pairs } from '../gear/pairs.ts'
import { topology } from './welded.ts'

const named = pairs.map((pair) => [pairName(pair), pair] as const)

test.each(named)(
  '%s: the worm is one closed ball at every level of detail, turned outside out',
  (_, pair) => {
    for (const detail of ['display', 'distant', 'print'] as const) {
      const found = topology(wormMesh(pair, detail))
      expect(found).toMatchObject({ finite: true, faultyEdges: 0, euler: 2, pieces: 1, inwardNormals: 0 })
      expect(found.normalError).toBeLessThan(1e-6)
    }
  },
)

test.each(named)(
  '%s: every vertex of the thread lies on the helicoid of its profile or on a land',
  (_, pair) => {
    const { positions } = wormMesh(pair, 'display')
    const { tipRadiusWorm, rootRadiusWorm, axialPitch, screwParameter } = pairProportions(pair)
    const { halfThickness } = threadForm(pair)
    const { threadLength } = wormBody(pair)
    const P = handSign(pair.hand) * screwParameter
    let flanks = 0
    for (let i = 0; i < positions.length; i += 3) {
      const [x, y, z] = [positions[i]!, positions[i + 1]!, positions[i + 2]!] as const
      const r = Math.hypot(x, y)
      if (r < rootRadiusWorm + 0.01 || r > tipRadiusWorm - 0.01 || Math.abs(z) > threadLength / 2 - 1e-3)
        continue
      const along = z - P * Math.atan2(y, x)
      const fromThread = Math.abs(along - Math.round(along / axialPitch) * axialPitch)
      near(fromThread, halfThickness(r), 1e-5)
      flanks++
    }
    expect(flanks).toBeGreaterThan(1000)
  },
)

/** Section of the worm through its axis, swept round [mm3 for each mm of thread], by a rule of many steps. */
function threadVolume(pair: GearNumbers): number {
  const { rootRadiusWorm: rf, tipRadiusWorm: ra, axialPitch } = pairProportions(pair)
  const { halfThickness } = thinnedThreadForm(pair)
  const steps = 2000
  let swept = 0
  for (let i = 0; i < steps; i++) {
    const r = rf + ((ra - rf) * (i + 0.5)) / steps
    swept += (2 * halfThickness(r) * 2 * Math.PI * r * (ra - rf)) / steps
  }
  return Math.PI * rf * rf + swept / axialPitch
}

/** Volume of the drawn thread by itself [mm3 for each mm]. */
function drawnVolume(pair: GearNumbers, detail: Detail): number {
  const { threadLength, shaftRadius, stubLength } = wormBody(pair)
  const sides = wormDetail(pair.wheelTeeth, detail).columns
  const stub = stubLength * sides * shaftRadius ** 2 * Math.sin(Math.PI / sides) * Math.cos(Math.PI / sides)
  return (topology(wormMesh(pair, detail)).volume - 2 * stub) / threadLength
}

const thinned = pairs.map((pair) => ({ ...pair, backlash: 0.2 }))

test.each([...named, ...thinned.map((pair) => [`${pairName(pair)}, backlash 0.2 mm`, pair] as const)])(
  '%s: volume of the thread is that of its section swept along',
  (name, pair) => {
    const off = (detail: Detail) => drawnVolume(pair, detail) / threadVolume(pair) - 1
    const [display, print] = [off('display'), off('print')]
    console.log(
      `${name}: off by ${(100 * display).toFixed(3)} % drawn, ${(100 * print).toFixed(4)} % printed`,
    )
    expect(Math.abs(display)).toBeLessThan(0.005)
    expect(Math.abs(print)).toBeLessThan(0.0005)
  },
)

test('backlash off the worm leaves each flank half of it thinner; off the wheel, the worm is whole', () => {
  const volume = (thinnedPart: 'worm' | 'wheel') =>
    threadVolume({ ...oneToTwenty, thinned: thinnedPart, backlash: 0.2 })
  const { rootRadiusWorm: rf, tipRadiusWorm: ra, axialPitch } = pairProportions(oneToTwenty)
  near(volume('wheel'), threadVolume(oneToTwenty), 0)
  near(volume('wheel') - volume('worm'), (0.2 / axialPitch) * Math.PI * (ra * ra - rf * rf), 1e-4)
})

test('at zero turns the middle of a thread stands at +x in the plane of the wheels', () => {
  for (const pair of pairs) {
    const { positions } = wormMesh(pair, 'display')
    const { tipRadiusWorm, axialPitch } = pairProportions(pair)
    let nearest = Infinity
    for (let i = 0; i < positions.length; i += 3) {
      const atTip = Math.abs(positions[i]! - tipRadiusWorm) < 1e-4 && Math.abs(positions[i + 1]!) < 1e-4
      if (atTip) nearest = Math.min(nearest, Math.abs(positions[i + 2]!))
    }
    expect(nearest).toBeLessThan(1e-6 * axialPitch)
  }
})
