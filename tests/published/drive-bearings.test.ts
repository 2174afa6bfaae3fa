/** Worked examples of bearings. Companion: an open data set of the book; the printed page itself was not seen. */
import { describe, expect, test } from 'vitest'
import { bearingReactions, type MeshForces } from '../../sim/gear/mesh-forces.ts'
import { slidingSpeed } from '../../sim/heat/brush-wear.ts'
import { bushPressure, PSI_FPM, PV_LIMITS } from '../../sim/measuring/plain-bush.ts'
import {
  bearingFriction,
  combinedLoad,
  cubicMeanLoad,
  equivalentLoad,
  lifeTime,
  ratingFor,
  ratingLife,
  reliability,
  thrustFactors,
} from '../../sim/measuring/rolling-bearing.ts'
import { radPerSecond } from '../../sim/quantity/convert.ts'
import { near } from '../support/near.ts'

const SHIGLEY = "Budynas & Nisbett, Shigley's Mechanical Engineering Design"
const JINDAL = 'U. C. Jindal, Machine Design'
const HOUR = 3600
const LBF_IN_KN = 4.4482216e-3
/** Millions of turns in so many hours at n r/min. */
const millions = (hours: number, n: number) => (hours * 60 * n) / 1e6

describe('rolling bearings', () => {
  test(`rating for 5000 h at 1725 r/min and 400 lbf: ${SHIGLEY}, Example 11-1, from memory`, () => {
    const C10 = ratingFor(400, millions(5000, 1725))
    near(C10, 3211, 0.6)
    near(C10 * LBF_IN_KN, 14.3, 0.05)
  })
  test(`life under 500 lbf across and 400 lbf along: ${SHIGLEY}, Example 11-4, from memory`, () => {
    const load = { radial: 500, axial: 400, rotation: 1 }
    // the book goes on with Fa/C0 in three decimals
    const P = combinedLoad(load, 0.56, thrustFactors(0.09).Y)
    near(P, 890.8, 0.1)
    near(equivalentLoad(load, 4450), P, 0.2)
    near(lifeTime(ratingLife(7900, P), 720 / 60) / HOUR, 16_150, 20)
  })
  test(`rating for a life of 1248 and its reliability: ${SHIGLEY}, 10th ed., Problem 11-2, page seen`, () => {
    near(ratingFor(1015, 1248), 10_930, 6)
    near(ratingFor(1015 * LBF_IN_KN, 1248), 48.6, 0.06)
    near(reliability(1248 / ratingLife(55.9, 4.52)), 0.945, 0.0006)
  })
  test.each([
    [0.014, 0.19, 2.3],
    [0.021, 0.21, 2.15],
    [0.028, 0.22, 1.99],
    [0.042, 0.24, 1.85],
    [0.056, 0.26, 1.71],
    [0.07, 0.27, 1.63],
    [0.084, 0.28, 1.55],
    [0.11, 0.3, 1.45],
    [0.17, 0.34, 1.31],
    [0.28, 0.38, 1.15],
    [0.42, 0.42, 1.04],
    [0.56, 0.44, 1],
  ])(`e and Y at Fa/C0 = %f: ISO 281 in ${SHIGLEY}, Table 11-1, four rows seen`, (part, e, Y) => {
    near(thrustFactors(part).e, e, 1e-12)
    near(thrustFactors(part).Y, Y, 1e-12)
    // up to e the radial load counts alone
    const C0 = 1000
    const axial = part * C0
    const atLimit = { radial: axial / e / (1 - 1e-9), axial, rotation: 1 }
    expect(equivalentLoad(atLimit, C0)).toBe(atLimit.radial)
    const above = { radial: axial / e / 1.5, axial, rotation: 1 }
    near(equivalentLoad(above, C0), Math.max(above.radial, 0.56 * above.radial + Y * axial), 1e-9)
  })
  test.each([
    ['inner', 1, 57.3, 0.06],
    ['outer', 1.2, 43.46, 0.006],
  ] as const)(
    `life with the %s ring turning: ${JINDAL}, Example 18-2 (companion)`,
    (_ring, rotation, L, within) => {
      near(ratingLife(5590, combinedLoad({ radial: 1250, axial: 625, rotation }, 0.56, 1.2)), L, within)
    },
  )
  test(`life in hours: ${JINDAL}, Example 18-4 (companion)`, () => {
    near(lifeTime(ratingLife(41_000, 20_000), 720 / 60) / HOUR, 199.424, 0.0006)
  })
  test(`rating for three loads by turns: ${JINDAL}, Example 18-9 (companion)`, () => {
    const parts = [
      { load: 3000, turns: 1440 / 4 },
      { load: 4000, turns: 1080 / 2 },
      { load: 5000, turns: 720 / 4 },
    ]
    const n = parts.reduce((sum, { turns }) => sum + turns, 0)
    near(ratingFor(cubicMeanLoad(parts), millions(10_000, n)), 34_219, 25)
  })
  test(`friction power: ${JINDAL}, Example 18-1 (companion)`, () => {
    near(bearingFriction(0.0011, 16_000, 0.04) * radPerSecond(1440), 53.08, 0.006)
  })
})

describe('plain bushes', () => {
  const MPA = 1e6
  test('limits of pressure times speed: R. L. Mott, Machine Elements in Mechanical Design, Table 16-1', () => {
    near(PSI_FPM / MPA, 3.5025e-5, 5e-10)
    near(PV_LIMITS.porousBronzeOiled / MPA, 1.75, 0.01)
    near(PV_LIMITS.nylon / MPA, 0.105, 0.001)
    near(PV_LIMITS.highTinBabbitt / MPA, 1.05, 0.01)
  })
  test('a bush of 8 mm at 8000 r/min under 20 N: definition seen, numbers derived', () => {
    const p = bushPressure(20, 0.008, 0.01)
    const v = slidingSpeed(0.008, 8000 / 60)
    near(p / MPA, 0.25, 1e-6)
    near(v, 3.351, 0.001)
    near((p * v) / MPA, 0.838, 0.001)
  })
})

describe('bearings of a shaft', () => {
  /** A force [N] across the shaft at its zero, where the worm's forces act, and nothing else. */
  const across = (force: number): MeshForces => {
    const nothing = { tangential: 0, radial: 0, axial: 0, normal: 0, friction: 0 }
    return {
      right: nothing,
      left: nothing,
      onWormFromRight: [force, 0, 0],
      onWormFromLeft: [0, 0, 0],
      onRightWheel: [-force, 0, 0],
      onLeftWheel: [0, 0, 0],
      wormForce: [force, 0, 0],
      wormMoment: [0, 0, 0],
      onRightWheelTorque: 0,
      onLeftWheelTorque: 0,
    }
  }
  /** Forces at their places from A, one at a time; they push down, the bearings up. */
  const reactions = (span: number, forces: readonly (readonly [place: number, force: number])[]) => {
    const sum = { A: 0, B: 0 }
    for (const [place, force] of forces) {
      const { A, B } = bearingReactions(across(-force), { zA: -place, zB: span - place, located: 'A' })
      sum.A += A[0]
      sum.B += B[0]
    }
    return sum
  }
  test('two loads between them: R. K. Bansal, Engineering Mechanics, Example 5.1 (companion)', () => {
    const kilo = 1000
    const { A, B } = reactions(6, [
      [2, 3 * kilo],
      [4, 6 * kilo],
    ])
    near(A / kilo, 4, 0.005)
    near(B / kilo, 5, 0.005)
  })
  test('loads that overhang both ends: R. K. Bansal, Engineering Mechanics, Example 5.6 (companion)', () => {
    const { A, B } = reactions(8, [
      [-3, 800],
      [5, 2000],
      [10, 1000],
    ])
    near(A, 1600, 0.05)
    near(B, 2200, 0.05)
  })
})
