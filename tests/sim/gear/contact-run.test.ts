/** Both wheels of many pairs run through a whole pitch against the analytic worm. */
import { describe, expect, test } from 'vitest'
import { bearingPattern } from '../../../sim/gear/bearing-pattern.ts'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { IN_PLACE } from '../../../sim/gear/misplaced.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { activeRange, playlessCutter } from '../../../sim/gear/undercut.ts'
import { flankPoint } from '../../../sim/gear/wheel-flank.ts'
import { noEdge, writeSpaceEdge } from '../../../sim/gear/wheel-space.ts'
import { between, near } from '../../support/near.ts'
import { leastGap, wheelPlanes } from './contact-run.ts'
import { validPairs } from './contact-samples.ts'
import { oneToTwenty, pairName, pairs } from './pairs.ts'

const SEED = 20261125
const sample = validPairs(200, SEED)
const STEPS = 12
const MICROMETRE = 1e-3

test('the sample holds all profiles, both hands and both forms of wheel', () => {
  const count = (holds: (pair: GearNumbers) => boolean) => sample.filter(holds).length
  for (const profile of ['ZA', 'ZN', 'ZI', 'ZK']) expect(count((pair) => pair.profile === profile)).toBe(50)
  expect(count(({ hand }) => hand === 'left')).toBeGreaterThan(50)
  expect(count(({ wheelForm }) => wheelForm === 'helical')).toBeGreaterThan(10)
})

test(`200 pairs of seed ${SEED}: no wheel goes deeper than 1 um into its worm over a pitch, without play`, () => {
  const least = sample.flatMap((pair) => {
    const planes = wheelPlanes(pair)
    return [leastGap(pair, planes, 'right', STEPS), leastGap(pair, planes, 'left', STEPS)]
  })
  expect(Math.min(...least)).toBeGreaterThan(-MICROMETRE)
  // They do touch: a sparse set of points comes at least this near.
  expect(Math.max(...least)).toBeLessThan(0.1)
})

test('32 of them run evenly: transmission error below 0.01 um', () => {
  for (const pair of sample.slice(0, 32)) {
    for (const sigma of [-1, 1] as const) {
      const { transmissionError, play } = bearingPattern(pair, 'right', sigma, IN_PLACE, 0.005)
      expect(transmissionError, pairName(pair)).toBeLessThan(0.01)
      near(play, 0, 0.01)
    }
  }
})

test('ratio is z1/z2 to 1e-12 at every point of contact', () => {
  const edge = noEdge()
  for (const pair of sample.filter(({ wheelForm }) => wheelForm === 'throated')) {
    const cutter = playlessCutter(pair)
    const { generation: g } = cutter
    for (const y of [-pair.wheelWidth / 4, 0, pair.wheelWidth / 3]) {
      for (const sigma of [-1, 1] as const) {
        const { tip, end } = activeRange(cutter, sigma, y)
        const angles = [0.1, 0.9].map((part) => {
          const { radius, height, shift } = flankPoint(g, sigma, tip + part * (end - tip), y)
          writeSpaceEdge(edge, cutter, sigma, y, radius)
          const x = tip + part * (end - tip)
          // Angle of the wheel when this point of its finished flank is at the place of contact.
          return {
            wheel: Math.atan2(height, g.centreDistance - x) - edge.chi,
            worm: -shift / g.signedParameter,
          }
        })
        const [from, to] = [angles[0]!, angles[1]!]
        const ratio = (to.wheel - from.wheel) / (to.worm - from.worm)
        near(Math.abs(ratio), pair.wormStarts / pair.wheelTeeth, 1e-12)
      }
    }
  }
})

describe('the measure sees faults', () => {
  test('a wheel turned by 1 um at its reference circle goes into the worm', () => {
    for (const pair of pairs) {
      const planes = wheelPlanes(pair)
      const extra = MICROMETRE / pairProportions(pair).referenceRadiusWheel
      for (const side of ['right', 'left'] as const) {
        const gap = leastGap(pair, planes, side, STEPS, extra)
        expect(gap, pairName(pair)).toBeLessThan(-0.5 * MICROMETRE)
        expect(gap).toBeGreaterThan(-1.5 * MICROMETRE)
      }
    }
  })

  test('a left wheel half a pitch out of phase overlaps the worm by 1.9 to 2.0 mm along the normal', () => {
    const gap = leastGap(oneToTwenty, wheelPlanes(oneToTwenty), 'left', STEPS, Math.PI / 20)
    const { normalPressureAngle, leadAngle } = pairProportions(oneToTwenty)
    const overlap = -gap * Math.cos(normalPressureAngle) * Math.cos(leadAngle)
    between(overlap, 1.85, 2.05)
  })

  test('backlash taken off either part leaves just that much play', () => {
    for (const thinned of ['worm', 'wheel'] as const) {
      for (const wheelForm of ['throated', 'helical'] as const) {
        const pair: GearNumbers = { ...oneToTwenty, profile: 'ZI', wheelForm, backlash: 0.1, thinned }
        const planes = wheelPlanes(pair)
        const turn = 0.05 / pairProportions(pair).referenceRadiusWheel
        for (const sense of [-1, 1]) {
          for (const side of ['right', 'left'] as const) {
            expect(leastGap(pair, planes, side, STEPS, 0.98 * sense * turn)).toBeGreaterThan(0)
            expect(leastGap(pair, planes, side, 4 * STEPS, 1.06 * sense * turn)).toBeLessThan(0)
          }
        }
      }
    }
  })
})
