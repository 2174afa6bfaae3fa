/** Printed figures of power screws, which are meshes too. Tolerances: half of the last printed digit. */
import { expect, test } from 'vitest'
import { selfLocking, wormDrivingEfficiency } from '../../sim/gear/efficiency.ts'
import { axialShare, type Driver, tangentialShare } from '../../sim/gear/mesh-forces.ts'
import { leadAngle } from '../../sim/gear/proportions.ts'
import { noTurns, wheelTurnsValue } from '../../sim/drive/turns.ts'
import { degrees, radians } from '../../sim/quantity/convert.ts'
import { near } from '../support/near.ts'
import { BANSAL, BHANDARI, KHURMI_MECHANICS, SHIGLEY, WENTZELL } from './gear-sources.ts'

/** Lead angle of a screw of mean diameter dm and lead l: one start, its module l/pi. */
const slopeOf = (dm: number, l: number): number => leadAngle(1, (Math.PI * dm) / l)

/** A power screw is a mesh whose flank leans by the thread's half angle; a square thread leans by none. */
function screwTorque(load: number, dm: number, l: number, half: number, mu: number, driver: Driver): number {
  const slope = slopeOf(dm, l)
  const share = tangentialShare(half, slope, mu, driver) / axialShare(half, slope, mu, driver)
  return ((load * dm) / 2) * share
}

test(`square power screw: ${SHIGLEY}, Example 8-1, from memory`, () => {
  const collar = (6400 * 0.08 * 0.04) / 2
  const up = screwTorque(6400, 0.03, 0.008, 0, 0.08, 'worm') + collar
  near(up, 26.18, 0.005)
  near(collar - screwTorque(6400, 0.03, 0.008, 0, 0.08, 'wheel'), 9.77, 0.005)
  near((6400 * 0.008) / (2 * Math.PI * up), 0.311, 0.0005)
})

test(`triple-start square screw: ${BHANDARI}, Example 6.1`, () => {
  const collar = (15000 * 0.15 * (100 + 65)) / 4
  const up = screwTorque(15000, 46, 24, 0, 0.15, 'worm') + collar
  near(up, 204644.14, 0.05)
  near(collar - screwTorque(15000, 46, 24, 0, 0.15, 'wheel'), 87401.51, 0.05)
  near(up / 500, 409.288, 0.0005)
})

test(`square lead screw: ${WENTZELL}, Examples 18.1 and 18.2, pp. 399-400`, () => {
  const slope = slopeOf(1.354, 1 / 3)
  near(screwTorque(2900, 1.354, 1 / 3, 0, 0.15, 'worm'), 453.68, 0.01)
  near(degrees(slope), 4.48, 0.005)
  near(100 * wormDrivingEfficiency(slope, 0, 0.15), 33.91, 0.005)
  expect(selfLocking(slope, 0, 0.15)).toBe('locks')
})

test(`Acme lead screw: ${WENTZELL}, Example 18.3, p. 402`, () => {
  near(degrees(slopeOf(1.375, 0.25)), 3.31, 0.005)
  near(screwTorque(2900, 1.375, 0.25, radians(14.5), 0.15, 'worm'), 428.13, 0.01)
})

/**
 * A hoist: the effort turns the worm on a wheel or handle of radius R, the load hangs from a drum of radius r on the
 * worm wheel. The velocity ratio is counted over ten turns of the worm.
 */
function velocityRatio(R: number, r: number, starts: number, teeth: number): number {
  const worm = { ...noTurns(), turns: 10 }
  return (10 * R) / (wheelTurnsValue(worm, starts, teeth) * r)
}

test(`worm hoist of one start: ${KHURMI_MECHANICS}, Example 11.9, p. 195`, () => {
  const ratio = velocityRatio(150, 50, 1, 40)
  near(ratio, 120, 1e-9)
  near((100 * 1800) / (24 * ratio), 62.5, 0.05)
})

test(`worm hoist of two starts: ${KHURMI_MECHANICS}, Example 11.10, p. 195`, () => {
  const ratio = velocityRatio(125, 50, 2, 60)
  near(ratio, 75, 1e-9)
  near(300 / (ratio * 0.5), 8, 1e-9)
})

test(`worm hoist with a handle: ${BANSAL}, Example 9.15, p. 310`, () => {
  const ratio = velocityRatio(12.5, 6.25, 1, 60)
  near(ratio, 120, 1e-9)
  near((100 * 600) / (20 * ratio), 25, 1e-9)
})
