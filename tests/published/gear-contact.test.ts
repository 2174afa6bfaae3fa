/** Contact ratios: the formula of rack and gear, and figures of an independent computation of these wheels. */
import { describe, expect, test } from 'vitest'
import { contactRatio, rackContactRatio } from '../../sim/gear/contact-ratio.ts'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { helicalContact } from '../../sim/gear/helical-contact.ts'
import { normalPressureAngle, pairProportions } from '../../sim/gear/proportions.ts'
import { activeRange, rangeEnds } from '../../sim/gear/undercut.ts'
import { spaceCutter } from '../../sim/gear/wheel-space.ts'
import { degrees, radians } from '../../sim/quantity/convert.ts'
import { near } from '../support/near.ts'
import { metricPair } from './gear-pair.ts'

const pair: GearNumbers = {
  ...metricPair,
  wormStarts: 1,
  wheelTeeth: 20,
  axialModule: 2,
  diameterQuotient: 10,
}
/** With the face of the full width, as the figures are for. */
const broad = (change: Partial<GearNumbers>): GearNumbers => {
  const numbers = { ...pair, ...change }
  return { ...numbers, wheelWidth: pairProportions(numbers).fullWheelWidth }
}

describe('rack and gear: standard formula of the contact ratio, any text on involute gears', () => {
  test('rack of 20 deg and 30 teeth, full addendum: 1.817, derived from the formula', () => {
    near(rackContactRatio(45, 48, 3, radians(20), 3 * Math.PI), 1.817, 0.0005)
  })

  test.each([
    [30, 20],
    [24, 22.5],
    [60, 20],
    [45, 25],
  ])('mid-plane of a ZA worm with %i teeth at an axial %d deg follows the formula', (wheelTeeth, alphaX) => {
    const { leadAngle } = pairProportions(metricPair)
    const pressureAngle = degrees(normalPressureAngle(radians(alphaX), leadAngle))
    const numbers = { ...metricPair, wheelTeeth, pressureAngle }
    const dims = pairProportions(numbers)
    const expected = rackContactRatio(
      dims.referenceRadiusWheel,
      dims.throatRadiusWheel,
      dims.addendumWorm,
      radians(alphaX),
      dims.axialPitch,
    )
    near(contactRatio(numbers).midPlane, expected, 1e-12)
  })
})

describe('figures of an earlier, separate computation of the same equations (derived, not printed)', () => {
  const cases = [
    { name: 'ZA 1/20 q 10', numbers: broad({}), middle: 1.763, total: 2.092 },
    { name: 'ZI 1/20 q 10', numbers: broad({ profile: 'ZI' }), middle: 1.76, total: 2.085 },
    { name: 'ZA 2/30 q 14.667', numbers: broad(metricPair), middle: 1.807, total: 2.196 },
    {
      name: 'ZI 4/41 q 10',
      numbers: broad({ profile: 'ZI', wormStarts: 4, wheelTeeth: 41 }),
      middle: 1.824,
      total: 2.557,
    },
  ]
  /** Those figures are of 40 slices over the face; the largest value may lie between two of them. */
  const slices = 40

  test.each(cases)('$name: $middle in the mid-plane, $total over the face', ({ numbers, middle, total }) => {
    const cutter = spaceCutter(numbers)
    const shifts = Array.from({ length: slices + 1 }, (_, j) => numbers.wheelWidth * (j / slices - 0.5))
      .flatMap((y) => rangeEnds(cutter.generation, 1, activeRange(cutter, 1, y), y))
      .map(({ shift }) => shift)
    const sliced = (Math.max(...shifts) - Math.min(...shifts)) / pairProportions(numbers).axialPitch
    near(sliced, total, 0.0005)
    const ratio = contactRatio(numbers)
    near(ratio.midPlane, middle, 0.0005)
    expect(ratio.total).toBeGreaterThanOrEqual(sliced)
    expect(ratio.total).toBeLessThan(sliced + 0.005)
  })

  test('plain helical wheel 1/20, q 10, module 2: contact from -4.604 to 5.812 mm, ratio 1.773', () => {
    const { wormEnd, wheelEnd, ratio } = helicalContact({ ...pair, profile: 'ZI', wheelForm: 'helical' })
    near(wormEnd, 5.812, 0.0005)
    near(wheelEnd, -4.604, 0.0005)
    near(ratio, 1.773, 0.0005)
  })
})
