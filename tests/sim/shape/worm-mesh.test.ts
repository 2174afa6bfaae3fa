import { expect, test } from 'vitest'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { threadForm } from '../../../sim/gear/thread-profile.ts'
import { handSign } from '../../../sim/gear/wheel-motion.ts'
import { wormBody } from '../../../sim/shape/body.ts'
import { wormMesh } from '../../../sim/shape/worm-mesh.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairName, pairs } from '../gear/pairs.ts'
import { topology } from './welded.ts'

const named = pairs.map((pair) => [pairName(pair), pair] as const)

test.each(named)('%s: display and distant worms are one closed ball each, turned outside out', (_, pair) => {
  for (const detail of ['display', 'distant'] as const) {
    const found = topology(wormMesh(pair, detail))
    expect(found).toMatchObject({ finite: true, faultyEdges: 0, euler: 2, pieces: 1, inwardNormals: 0 })
    expect(found.normalError).toBeLessThan(1e-6)
  }
})

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

test('volume of the thread is that of its section swept along, to 1 part in 200', () => {
  const pair = oneToTwenty
  const { rootRadiusWorm: rf, tipRadiusWorm: ra, axialPitch } = pairProportions(pair)
  const { halfThickness } = threadForm(pair)
  let section = 0
  const steps = 2000
  for (let i = 0; i < steps; i++) {
    const r = rf + ((ra - rf) * (i + 0.5)) / steps
    section += (2 * halfThickness(r) * 2 * Math.PI * r * (ra - rf)) / steps
  }
  const { threadLength, shaftRadius, stubLength } = wormBody(pair)
  const expected =
    threadLength * (Math.PI * rf * rf + section / axialPitch) + 2 * stubLength * Math.PI * shaftRadius ** 2
  near(topology(wormMesh(pair, 'display')).volume / expected, 1, 0.005)
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
