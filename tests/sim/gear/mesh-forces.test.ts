import { expect, test } from 'vitest'
import { bearingReactions, meshForces, type MeshLoad, radialLoad } from '../../../sim/gear/mesh-forces.ts'
import { leadAngle } from '../../../sim/gear/proportions.ts'
import { radians } from '../../../sim/quantity/convert.ts'
import { near } from '../../support/near.ts'

/** 1/20, module 2, q 10, steel on greased nylon, 600 N mm on each wheel; in N and mm. */
const load: MeshLoad = {
  r1: 10,
  r2: 20,
  alphaN: radians(20),
  g: leadAngle(1, 10),
  mu: 0.09,
  hand: 1,
  wormSense: 1,
  rightTorque: 600,
  leftTorque: 600,
}

// Figures of the worked example were computed by hand from the same statics; tolerance half of the last
// digit.
test('equal wheels: forces of one mesh, double thrust, no side load on the bearings', () => {
  const forces = meshForces(load)
  near(forces.right.axial, 30, 1e-12)
  near(forces.right.tangential, 5.93, 0.0005)
  near(forces.right.radial, 11.08, 0.0005)
  near(forces.right.normal, 32.395, 0.0005)
  near(-forces.wormMoment[2], 118.6, 0.005)
  near(forces.wormForce[2], 60, 1e-12)
  near(600 / 20 / (118.6 / 2), 0.5059, 5e-5)
  const { A, B } = bearingReactions(forces, { zA: -30, zB: 30, located: 'A' })
  near(radialLoad(A), 0, 1e-12)
  near(radialLoad(B), 0, 1e-12)
  near(A[2], -60, 1e-12)
})

test.each([
  { right: 700, left: 500, zA: -30, zB: 30, A: 1.0, B: 3.65 },
  { right: 700, left: 500, zA: -55, zB: -25, A: 6.62, B: 10.73 },
  { right: 1200, left: 0, zA: -30, zB: 30, A: 6.03, B: 21.9 },
  { right: 1200, left: 0, zA: -55, zB: -25, A: 39.7, B: 64.4 },
])('$right and $left N mm with bearings at $zA and $zB: thrust stays, side loads appear', (row) => {
  const forces = meshForces({ ...load, rightTorque: row.right, leftTorque: row.left })
  near(forces.wormForce[2], 60, 1e-12)
  near(-forces.wormMoment[2], 118.6, 0.005)
  const { A, B } = bearingReactions(forces, { zA: row.zA, zB: row.zB, located: 'B' })
  const digit = row.A > 30 ? 0.05 : 0.005
  near(radialLoad(A), row.A, digit)
  near(radialLoad(B), row.B, digit)
})

test('reactions balance forces and moments wherever the bearings stand', () => {
  const forces = meshForces({ ...load, rightTorque: 700, leftTorque: 300, wormSense: -1, hand: -1 })
  for (const [zA, zB] of [
    [-30, 30],
    [-55, -25],
    [-10, 70],
  ] as const) {
    const { A, B } = bearingReactions(forces, { zA, zB, located: 'A' })
    for (const axis of [0, 1, 2] as const) near(forces.wormForce[axis] + A[axis] + B[axis], 0, 1e-9)
    near(forces.wormMoment[1] + zA * A[0] + zB * B[0], 0, 1e-9)
    near(zA * A[1] + zB * B[1], 0, 1e-9)
  }
})

test('turning the worm the other way flips tangential and axial forces and keeps the radial ones', () => {
  const there = meshForces({ ...load, leftTorque: 200 })
  const back = meshForces({ ...load, leftTorque: 200, wormSense: -1 })
  expect(back.onWormFromRight[0]).toBe(there.onWormFromRight[0])
  near(back.onWormFromRight[1], -there.onWormFromRight[1], 0)
  near(back.onWormFromRight[2], -there.onWormFromRight[2], 0)
  near(back.wormMoment[2], -there.wormMoment[2], 0)
})

test('a left hand worm pushes the other way along its axis, with the same resistance to turning', () => {
  const right = meshForces(load)
  const left = meshForces({ ...load, hand: -1 })
  near(left.wormForce[2], -right.wormForce[2], 0)
  near(left.wormMoment[2], right.wormMoment[2], 0)
  near(left.onRightWheelTorque, -right.onRightWheelTorque, 0)
})

test('worm turns the wheels opposite ways with the load torque, and they are pushed apart', () => {
  const forces = meshForces({ ...load, leftTorque: 500 })
  near(forces.onRightWheelTorque, -600, 1e-9)
  near(forces.onLeftWheelTorque, 500, 1e-9)
  expect(forces.onRightWheel[0]).toBeGreaterThan(0)
  expect(forces.onLeftWheel[0]).toBeLessThan(0)
})

test('driven by the wheels: 4.2 % of their work arrives at 0.09, nothing beyond the locking friction 0.0940', () => {
  const driven = (mu: number) => meshForces({ ...load, mu, rightTorque: -600, leftTorque: -600 })
  near((driven(0.09).wormMoment[2] * 20) / 1200, 0.042, 0.0005)
  expect(driven(0.0939).wormMoment[2]).toBeGreaterThan(0)
  expect(driven(0.0941).wormMoment[2]).toBeLessThan(0)
})

test('a wheel that drives while the other resists loads the other flank: their thrusts are taken from each other', () => {
  const forces = meshForces({ ...load, rightTorque: 600, leftTorque: -200 })
  near(forces.wormForce[2], 20, 1e-12)
  near(forces.onRightWheelTorque, -600, 1e-9)
  near(forces.onLeftWheelTorque, -200, 1e-9)
  expect(forces.onLeftWheel[0]).toBeLessThan(0)
})

test('power into the worm is power out plus what friction takes on the flank', () => {
  const { right } = meshForces({ ...load, leftTorque: 0 })
  const w1 = 10
  const v1 = w1 * load.r1
  const sliding = v1 / Math.cos(load.g)
  const out = right.axial * v1 * Math.tan(load.g)
  near(right.tangential * v1, out + load.mu * right.normal * sliding, 1e-9)
})
