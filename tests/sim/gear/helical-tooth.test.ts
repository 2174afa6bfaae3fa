import { expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import {
  helicalContact,
  helicalPlace,
  helicalPoint,
  helicalShift,
} from '../../../sim/gear/helical-contact.ts'
import {
  helicalFlankAngle,
  helicalSection,
  helicalTooth,
  writeHelicalNormal,
} from '../../../sim/gear/helical-tooth.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { threadForm } from '../../../sim/gear/thread-profile.ts'
import { handSign } from '../../../sim/gear/wheel-motion.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairName } from './pairs.ts'

const plain: GearNumbers = { ...oneToTwenty, profile: 'ZI', wheelForm: 'helical' }
const shifted = (gearing: GearNumbers, profileShift: number): GearNumbers => ({
  ...gearing,
  centres: { kind: 'shift', profileShift },
})
const cases: readonly GearNumbers[] = [
  plain,
  { ...plain, hand: 'left', wormStarts: 2, wheelTeeth: 31 },
  shifted(plain, 0.3),
  shifted({ ...plain, hand: 'left', wheelTeeth: 24 }, 0.5),
  shifted({ ...plain, wheelTeeth: 40 }, -0.4),
]
const named = cases.map(
  (pair) =>
    [
      `${pairName(pair)}, shift ${pair.centres.kind === 'shift' ? pair.centres.profileShift : ''}`,
      pair,
    ] as const,
)

test.each(named)('%s: the point of contact lies on both flanks and both normals agree there', (_, pair) => {
  const contact = helicalContact(pair)
  const tooth = helicalTooth(pair)
  const { centreDistance: a, referenceRadiusWheel: r2, screwParameter } = pairProportions(pair)
  const P = handSign(pair.hand) * screwParameter
  const { halfThickness, slope } = threadForm(pair)
  const normal = new Float64Array(3)
  for (const sigma of [-1, 1] as const) {
    for (let i = 0; i <= 10; i++) {
      const t = contact.wheelEnd + ((contact.wormEnd - contact.wheelEnd) * i) / 10
      const [x, y, z] = helicalPoint(contact, sigma, t)
      const s = helicalShift(contact, sigma, t)
      near(helicalPlace(contact, sigma, s), t, 1e-12)
      const r = Math.hypot(x, y)
      near(z, P * Math.atan2(y, x) + sigma * halfThickness(r) + s, 1e-9)
      const R = Math.hypot(a - x, z)
      const turn = s / r2
      near(Math.atan2(z, a - x), helicalFlankAngle(tooth, sigma, R, y) + turn, 1e-9)
      writeHelicalNormal(normal, 0, tooth, sigma, R, y)
      const c = Math.cos(turn)
      const q = Math.sin(turn)
      const turned = [normal[0]! * c + normal[2]! * q, normal[1]!, normal[2]! * c - normal[0]! * q]
      const worm = [
        (P * y) / (r * r) - (sigma * slope(r) * x) / r,
        (-P * x) / (r * r) - (sigma * slope(r) * y) / r,
        1,
      ]
      const size = -sigma * Math.hypot(...worm)
      for (let axis = 0; axis < 3; axis++) near(turned[axis]!, worm[axis]! / size, 1e-9)
    }
  }
})

test.each(named)('%s: contact begins and ends where the tips are', (_, pair) => {
  const contact = helicalContact(pair)
  const { centreDistance: a, tipRadiusWorm, throatRadiusWheel } = pairProportions(pair)
  const [x, y] = helicalPoint(contact, 1, contact.wormEnd)
  near(Math.hypot(x, y), tipRadiusWorm, 1e-9)
  const [u, , z] = helicalPoint(contact, 1, contact.wheelEnd)
  near(Math.hypot(a - u, z), throatRadiusWheel, 1e-9)
  expect(contact.wheelEnd).toBeLessThan(contact.wormEnd)
})

test('section goes round the space from tip to tip and the other flank is its mirror image', () => {
  const detail = { flank: 4, fillet: 2, root: 3 }
  for (const pair of cases) {
    const tooth = helicalTooth(pair)
    const { radius, chi } = helicalSection(tooth, 2.5, detail)
    const last = radius.length - 2
    expect(radius.length).toBe(2 * 6 + 3 + 2)
    for (let i = 0; i <= last; i++) {
      near(radius[i]!, radius[last - i]!, 1e-12)
      near(chi[i]! + chi[last - i]!, 2 * tooth.twist * 2.5, 1e-12)
      // The radial foot is the only part that may stand still in angle.
      if (i < last) expect(chi[i + 1]!).toBeGreaterThanOrEqual(chi[i]!)
    }
    near(radius[0]!, pairProportions(pair).throatRadiusWheel, 1e-9)
    near(radius[7]!, pairProportions(pair).rootRadiusWheel, 1e-9)
    expect(chi[last + 1]!).toBeGreaterThan(chi[last]!)
  }
})

test('backlash taken from the wheel widens its spaces by the backlash at the reference circle', () => {
  const r2 = pairProportions(plain).referenceRadiusWheel
  const widened = helicalTooth({ ...plain, backlash: 0.2, thinned: 'wheel' })
  const full = helicalTooth({ ...plain, backlash: 0.2, thinned: 'worm' })
  const gain = helicalFlankAngle(widened, 1, r2, 0) - helicalFlankAngle(full, 1, r2, 0)
  near(2 * gain * r2, 0.2, 1e-12)
})

test('undercut begins at the base cylinder: 20 teeth are whole at 20 deg, 12 are not', () => {
  expect(helicalContact(plain).undercut).toBe(false)
  expect(helicalContact({ ...plain, wheelTeeth: 12 }).undercut).toBe(true)
  // Just where the last point of contact is on the base cylinder.
  const contact = helicalContact({ ...plain, wheelTeeth: 12 })
  const { centreDistance: a } = pairProportions({ ...plain, wheelTeeth: 12 })
  const [nx, , nz] = contact.direction
  const t = contact.middle + (12 * nx) / (nx * nx + nz * nz)
  const [x, , z] = helicalPoint(contact, 1, t)
  near(Math.hypot(a - x, z), helicalTooth({ ...plain, wheelTeeth: 12 }).baseRadius, 1e-12)
})

test('contact of an undercut wheel ends at the base cylinder, with no contact below it', () => {
  for (const pair of [
    { ...plain, wheelTeeth: 12 },
    { ...plain, wormStarts: 5, wheelTeeth: 8, diameterQuotient: 18, pressureAngle: 10.6 },
  ]) {
    const contact = helicalContact(pair)
    const { centreDistance, referenceRadiusWheel, axialPressureAngle } = pairProportions(pair)
    const [x, , z] = helicalPoint(contact, 1, contact.wormEnd)
    const base = referenceRadiusWheel * Math.cos(axialPressureAngle)
    near(Math.hypot(centreDistance - x, z), base, 1e-9)
  }
})
