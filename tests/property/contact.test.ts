/** That contact is told of any pair at all, and never from beyond the tips. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { contactLines } from '../../sim/gear/contact-lines.ts'
import { contactRatio } from '../../sim/gear/contact-ratio.ts'
import { gearProblems } from '../../sim/gear/gear-problems.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { anyGearing } from '../support/any-gearing.ts'

const SEED = 20_261_125
const angle = fc.double({ min: 0, max: 7, noNaN: true })

test(`lines of contact of 150 random pairs lie on both blanks, as many as the ratio tells (seed ${SEED})`, () => {
  let lines = 0
  const law = fc.property(anyGearing, angle, (gearing, wormAngle) => {
    if (gearProblems(gearing).some(({ severity }) => severity === 'error')) return
    const { tipRadiusWorm, outsideRadiusWheel, centreDistance } = pairProportions(gearing)
    const { total, midPlane } = contactRatio(gearing)
    expect(midPlane).toBeLessThanOrEqual(total + 1e-9)
    const dust = 0.01 * gearing.axialModule
    for (const side of ['right', 'left'] as const) {
      const touching = contactLines(gearing, wormAngle, side, 1)
      // a throat can break a line in two
      expect(touching.length).toBeLessThanOrEqual(2 * Math.ceil(total))
      for (const { points } of touching) {
        for (let i = 0; i < points.length; i += 3) {
          const [x = 0, y = 0, z = 0] = points.slice(i, i + 3)
          const toWheel = Math.hypot(centreDistance - Math.abs(x), z)
          expect(Math.hypot(x, y)).toBeLessThan(tipRadiusWorm + dust)
          expect(toWheel).toBeLessThan(outsideRadiusWheel + dust)
        }
        lines++
      }
    }
  })
  fc.assert(law, { seed: SEED, numRuns: 150, endOnFailure: true })
  expect(lines).toBeGreaterThan(150)
})
