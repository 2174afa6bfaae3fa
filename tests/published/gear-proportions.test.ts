/**
 * Printed figures of the gear trade: sizes of worm and wheel. Tolerances: half a unit of the last printed
 * digit, or as said.
 */
import { expect, test } from 'vitest'
import {
  axialPitch,
  centreDistance,
  fullWheelWidth,
  lead,
  leadAngle,
  leadAngleOfNormalModule,
  normalModule,
  normalPressureAngle,
  pairProportions,
  profileShift,
  screwParameter,
  threadLength,
  wheelReferenceRadius,
} from '../../sim/gear/proportions.ts'
import { noTurns, wheelTurnsValue } from '../../sim/drive/turns.ts'
import { degrees, radians } from '../../sim/quantity/convert.ts'
import { near } from '../support/near.ts'
import { metricPair } from './gear-pair.ts'
import { JIANG, JINDAL, LITVIN, METRIC, MOTT, SHIGLEY } from './gear-sources.ts'

test(`3 starts, 52 teeth, 6 per inch: ${MOTT}, Example Problem 8-7, p. 343, page seen`, () => {
  const m = 1 / 6
  const r2 = wheelReferenceRadius(m, 52)
  near(axialPitch(m), 0.5236, 5e-5)
  near(lead(m, 3), 1.5708, 5e-5)
  near(degrees(leadAngle(3, 2 / m)), 14.04, 0.005)
  near(2 * r2, 8.667, 0.0005)
  near(centreDistance(1, r2, 0, m), 5.333, 0.0006)
  // the source gives the ratio 17.333 and 101 r/min of the wheel at 1750 r/min
  const worm = { ...noTurns(), turns: 1750 }
  near(1750 / wheelTurnsValue(worm, 3, 52), 17.333, 0.0005)
  near(wheelTurnsValue(worm, 3, 52), 101, 0.5)
})

test(`normal from axial pressure angle: ${MOTT}, Example Problem 10-10, p. 480, page seen`, () => {
  near(degrees(normalPressureAngle(radians(20), radians(14.04))), 19.45, 0.005)
})

test(`pair 1/30/10/5: ${JINDAL}, Example 28-1, p. 726`, () => {
  const pair = pairProportions({ ...metricPair, wormStarts: 1, axialModule: 5, diameterQuotient: 10 })
  near(2 * pair.referenceRadiusWorm, 50, 0.5)
  near(2 * pair.referenceRadiusWheel, 150, 0.5)
  near(pair.centreDistance, 100, 0.5)
})

test(`whole table of the axial module pair 2/30, m 3, d1 44: ${METRIC}, Table 9-3, from memory`, () => {
  const pair = pairProportions(metricPair)
  near(2 * pair.referenceRadiusWheel, 90, 0.0005)
  near(degrees(pair.leadAngle), 7.76517, 5e-6)
  near(pair.centreDistance, 67, 0.0005)
  near(pair.addendumWorm, 3, 0.0005)
  near(pair.addendumWorm + pair.dedendumWorm, 6.75, 0.0005)
  near(pair.addendumWheel, 3, 0.0005)
  near(pair.addendumWheel + pair.dedendumWheel, 6.75, 0.0005)
  near(2 * pair.tipRadiusWorm, 50, 0.0005)
  near(2 * pair.throatRadiusWheel, 96, 0.0005)
  near(2 * pair.outsideRadiusWheel, 99, 0.0005)
  near(pair.gorgeRadius, 19, 0.0005)
  near(2 * pair.rootRadiusWorm, 36.5, 0.0005)
  near(2 * pair.rootRadiusWheel, 82.5, 0.0005)
})

test(`normal module pair with profile shift: ${METRIC}, Table 9-4, from memory`, () => {
  const g = leadAngleOfNormalModule(3, 2, 44)
  const m = 3 / Math.cos(g)
  const pair = pairProportions({
    ...metricPair,
    depthRule: 'normal',
    axialModule: m,
    diameterQuotient: 44 / m,
    centres: { kind: 'distance', centreDistance: 67 },
  })
  near(degrees(g), 7.83748, 5e-6)
  near(degrees(pair.leadAngle), 7.83748, 5e-6)
  near(2 * pair.referenceRadiusWheel, 90.8486, 5e-5)
  near(pair.profileShift, -0.1414, 5e-5)
  near(profileShift(67, 22, pair.referenceRadiusWheel, 3), -0.1414, 5e-5)
  near(pair.addendumWheel, 2.5758, 0.0002)
  near(2 * pair.throatRadiusWheel, 96, 0.0005)
  near(2 * pair.outsideRadiusWheel, 99, 0.0005)
  near(2 * pair.rootRadiusWorm, 36.5, 0.0005)
  near(2 * pair.rootRadiusWheel, 82.5, 0.0005)
})

test(`normal module and lead of the axial module pair: ${METRIC}, Table 9-2, from memory`, () => {
  const pair = pairProportions(metricPair)
  near(normalModule(3, pair.leadAngle), 2.97249, 5e-6)
  near(pair.normalModule, 2.97249, 5e-6)
  near(pair.lead, 18.84956, 5e-6)
})

test.each([
  { m: 1.25, d1: 22.4, z2: 62, x2: 0.04, a: 50 },
  { m: 1.6, d1: 20, z2: 51, x2: -0.5, a: 50 },
  { m: 2, d1: 22.4, z2: 39, x2: -0.1, a: 50 },
  { m: 2.5, d1: 28, z2: 29, x2: -0.1, a: 50 },
  { m: 2, d1: 35.5, z2: 82, x2: 0.125, a: 100 },
  { m: 2.5, d1: 28, z2: 70, x2: -0.6, a: 100 },
  { m: 2.5, d1: 45, z2: 62, x2: 0, a: 100 },
])(
  `standard centre distance $a with $z2 teeth: ${JIANG}, Table 9.1, p. 238, page seen`,
  ({ m, d1, z2, x2, a }) => {
    const r2 = wheelReferenceRadius(m, z2)
    near(centreDistance(d1 / 2, r2, x2, m), a, 1e-6)
    near(profileShift(a, d1 / 2, r2, m), x2, 1e-6)
  },
)

test(`face widths of worm and wheel: ${MOTT}, Example Problem 8-8, from memory`, () => {
  const m = 1 / 8
  const a = centreDistance(1.25 / 2, wheelReferenceRadius(m, 40), 0, m)
  near(a, 3.125, 0.0005)
  near(fullWheelWidth(m, 1.25 / m), 0.829, 0.0005)
  near(threadLength(2.5 + m, a, 1.25 / 2 + m), 2.236, 0.0005)
})

test(`blank width 2 m sqrt(q + 1): ${METRIC}, Eq. 9-4, from memory`, () => {
  near(pairProportions(metricPair).fullWheelWidth, 23.749, 0.0005)
})

test(`thread is at least as long as pi m (4.5 + 0.02 z2): ${METRIC}, Eq. 9-3, from memory`, () => {
  expect(pairProportions(metricPair).threadLength).toBeGreaterThanOrEqual(48.066)
})

test.each([
  { clearance: 0.157, dedendum: 1.157, of: 'AGMA, from memory' },
  { clearance: 0.2, dedendum: 1.2, of: 'DIN 3975 and GB/T' },
  { clearance: 0.25, dedendum: 1.25, of: 'JIS' },
])('depth of a full tooth of module 1 below the reference circle is $dedendum: $of', (row) => {
  const pair = pairProportions({ ...metricPair, axialModule: 1, clearance: row.clearance })
  near(pair.addendumWorm, 1, 1e-12)
  near(pair.dedendumWorm, row.dedendum, 1e-12)
  near(pair.dedendumWheel, row.dedendum, 1e-12)
})

test(`sizes of the 2/30 worm: ${SHIGLEY}, Example 13-10, from memory`, () => {
  const m = 1 / 6
  const pair = pairProportions({ ...metricPair, axialModule: m, diameterQuotient: 12, pressureAngle: 14.5 })
  near(pair.axialPitch, 0.5236, 5e-5)
  near(2 * pair.referenceRadiusWheel, 5, 0.05)
  near(pair.centreDistance, 3.5, 0.05)
  near(pair.lead, 1.0472, 5e-5)
  near(degrees(pair.leadAngle), 9.46, 0.005)
})

test(`screw parameter: ${LITVIN}, Eqs 19.3.1 to 19.3.5, p. 553, formulas seen`, () => {
  near(Math.tan(leadAngle(2, 44 / 3)), 0.136364, 5e-7)
  near(screwParameter(9.42477796076938 / Math.PI, 2), 3, 1e-9)
})
