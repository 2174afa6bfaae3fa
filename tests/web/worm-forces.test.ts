import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { outcome } from '../../web/instrument/formulas.ts'
import { type Situation, situationOf } from '../../web/instrument/situation.ts'
import { meshForce, sideLoad, threadSliding, wormThrust } from '../../web/instrument/worm-forces.ts'
import { firstBench } from '../../web/store/bench.ts'
import { bootCleaner } from '../support/machines.ts'
import { near, relativelyNear } from '../support/near.ts'

function running(leftLoad: number, rightLoad: number): Situation {
  const point = operatingPoint(compileDrive(bootCleaner), { ...firstInput(), leftLoad, rightLoad })
  if (!point) throw new Error('this machine is computed')
  return situationOf(bootCleaner, { ...firstBench, leftLoad, rightLoad }, point.reading)
}

const withReading = (situation: Situation, change: Partial<Situation['reading']>): Situation => ({
  ...situation,
  reading: { ...situation.reading, ...change },
})

test('equal loads leave no side load on the bearings, unequal ones a different one on each', () => {
  near(sideLoad(running(0, 0), 'front'), 0, 1e-9)
  near(sideLoad(running(0, 0), 'rear'), 0, 1e-9)
  const uneven = running(1, 0)
  expect(sideLoad(uneven, 'front')).not.toBeCloseTo(sideLoad(uneven, 'rear'), 3)
  expect(sideLoad(uneven, 'front')).toBeGreaterThan(1)
})

test('friction on the sliding thread is what the reading says is lost in the mesh', () => {
  const situation = running(1, 0)
  const { friction, pressureAngle } = bootCleaner.gearing
  const normal = meshForce(situation, 'left', 'radial') / Math.sin((pressureAngle * Math.PI) / 180)
  relativelyNear(friction * normal * threadSliding(situation), situation.reading.meshLossLeft, 1e-9)
})

test('a wheel that drives pushes the worm the other way, and the formula for driving says that it does not hold', () => {
  const driven = withReading(running(0, 0), { meshTorqueLeft: -0.2, meshTorqueRight: -0.2 })
  expect(wormThrust(driven)).toBeLessThan(0)
  expect(outcome('leftAxialForce', driven).byFormula).toBe(true)
  expect(outcome('leftTangentialForce', driven).byFormula).toBe(false)
})

test('held at rest only the push along the worm is known', () => {
  const held = withReading(running(1, 0), { wormSpeed: 0 })
  expect(wormThrust(held)).toBeCloseTo(wormThrust(running(1, 0)), 9)
  expect(sideLoad(held, 'front')).toBeNaN()
  const free = withReading(held, { meshTorqueLeft: 0, meshTorqueRight: 0 })
  expect(sideLoad(free, 'front')).toBe(0)
})
