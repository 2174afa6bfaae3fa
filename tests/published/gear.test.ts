/** Printed figures of the gear trade; each tolerance is half a unit of the last printed digit unless it says more. */
import { describe, expect, test } from 'vitest'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import {
  axialShare,
  type Driver,
  meshComponents,
  meshForces,
  slidingSpeed,
  tangentialShare,
} from '../../sim/gear/mesh-forces.ts'
import {
  axialPitch,
  axialPressureAngle,
  backlashOfCentreDistance,
  baseLeadAngle,
  baseRadius,
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
  transversePressureAngle,
  wheelPlay,
  wheelReferenceRadius,
} from '../../sim/gear/proportions.ts'
import { threadForm } from '../../sim/gear/thread-profile.ts'
import { flankPoint, rackSlope, rackTilt, wheelGeneration } from '../../sim/gear/wheel-flank.ts'
import { farSidePhase, wheelSense } from '../../sim/gear/wheel-motion.ts'
import { degrees, radians } from '../../sim/quantity/convert.ts'
import { near } from '../support/near.ts'

const MOTT = 'R. L. Mott, Machine Elements in Mechanical Design, 4th ed. (Pearson, 2004)'
const SHIGLEY = "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design (8th to 10th ed.)"
const JINDAL = 'U. C. Jindal, Machine Design, 1st ed. (2010), worked-example companion'
const METRIC = 'SDP/SI, Elements of Metric Gear Technology, and KHK Gear Technical Reference'
const JIANG = 'W. Jiang, Analysis and Design of Machine Elements (Wiley, 2019)'
const LITVIN = 'F. L. Litvin and A. Fuentes, Gear Geometry and Applied Theory, 2nd ed. (Cambridge, 2004)'
const WENTZELL = 'T. H. Wentzell, Machine Design, 1st ed. (Cengage, 2007), worked-example companion'
const BHANDARI = 'V. B. Bhandari, Design of Machine Elements, worked-example companion'

const numbers = (change: Partial<GearNumbers>): GearNumbers => ({
  profile: 'ZA',
  hand: 'right',
  wormStarts: 2,
  wheelTeeth: 30,
  axialModule: 3,
  diameterQuotient: 44 / 3,
  pressureAngle: 20,
  friction: 0.05,
  wheelWidth: 20,
  ...change,
})

describe('proportions', () => {
  test(`3 starts, 52 teeth, 6 per inch: ${MOTT}, Example Problem 8-7, p. 343, page seen`, () => {
    const m = 1 / 6
    const r2 = wheelReferenceRadius(m, 52)
    near(axialPitch(m), 0.5236, 5e-5)
    near(lead(m, 3), 1.5708, 5e-5)
    near(degrees(leadAngle(3, 2 / m)), 14.04, 0.005)
    near(2 * r2, 8.667, 0.0005)
    near(centreDistance(1, r2, 0, m), 5.333, 0.0006)
    near(1750 / (52 / 3), 101, 0.5)
  })

  test(`normal from axial pressure angle: ${MOTT}, Example Problem 10-10, p. 480, page seen`, () => {
    near(degrees(normalPressureAngle(radians(20), radians(14.04))), 19.45, 0.005)
  })

  test(`pair 1/30/10/5: ${JINDAL}, Example 28-1, p. 726`, () => {
    const pair = pairProportions(numbers({ wormStarts: 1, axialModule: 5, diameterQuotient: 10 }))
    near(2 * pair.referenceRadiusWorm, 50, 0.5)
    near(2 * pair.referenceRadiusWheel, 150, 0.5)
    near(pair.centreDistance, 100, 0.5)
  })

  test(`whole table of the axial module pair 2/30, m 3, d1 44: ${METRIC}, Table 9-3, from memory`, () => {
    const pair = pairProportions(numbers({}))
    near(2 * pair.referenceRadiusWheel, 90, 0.0005)
    near(degrees(pair.leadAngle), 7.76517, 5e-6)
    near(pair.centreDistance, 67, 0.0005)
    near(pair.addendum, 3, 0.0005)
    near(pair.addendum + pair.dedendum, 6.75, 0.0005)
    near(2 * pair.tipRadiusWorm, 50, 0.0005)
    near(2 * pair.throatRadiusWheel, 96, 0.0005)
    near(2 * pair.outsideRadiusWheel, 99, 0.0005)
    near(pair.gorgeRadius, 19, 0.0005)
    near(2 * pair.rootRadiusWorm, 36.5, 0.0005)
    near(2 * pair.rootRadiusWheel, 82.5, 0.0005)
  })

  test(`normal module pair with profile shift: ${METRIC}, Table 9-4, from memory`, () => {
    const g = leadAngleOfNormalModule(3, 2, 44)
    const r2 = wheelReferenceRadius(3 / Math.cos(g), 30)
    near(degrees(g), 7.83748, 5e-6)
    near(2 * r2, 90.8486, 5e-5)
    near(profileShift(67, 22, r2, 3), -0.1414, 5e-5)
  })

  test(`normal module and lead of the axial module pair: ${METRIC}, Table 9-2, from memory`, () => {
    const pair = pairProportions(numbers({}))
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
    near(pairProportions(numbers({})).fullWheelWidth, 23.749, 0.0005)
  })

  test(`screw parameter: ${LITVIN}, Eqs 19.3.1 to 19.3.5, p. 553, formulas seen`, () => {
    near(Math.tan(leadAngle(2, 44 / 3)), 0.136364, 5e-7)
    near(screwParameter(9.42477796076938 / Math.PI, 2), 3, 1e-9)
  })
})

describe('flanks', () => {
  const pair = pairProportions(numbers({}))

  test('base lead angle and base radius of an involute helicoid, two routes: ISO/TR 10828 relation, derived', () => {
    const gb = baseLeadAngle(pair.leadAngle, radians(20))
    near(degrees(gb), 21.3969, 5e-5)
    near(baseRadius(3, gb), 7.6563, 5e-5)
    near(22 * Math.cos(transversePressureAngle(radians(20), pair.leadAngle)), 7.6563, 5e-5)
    near(2 * Math.PI * baseRadius(3, gb) * Math.tan(gb), 18.84956, 5e-6)
    near(threadForm(numbers({ profile: 'ZI' })).leastRadius, 7.6563, 5e-5)
  })

  test(`axial and transverse pressure angle: ${METRIC}, Table 9-2, from memory`, () => {
    near(degrees(axialPressureAngle(radians(20), radians(7.76517))), 20.1702, 5e-5)
    near(degrees(transversePressureAngle(radians(20), radians(7.76517))), 69.634, 5e-5)
  })

  test.each(['ZA', 'ZN', 'ZI'] as const)(
    `helicoid identity on %s: ${LITVIN}, section 19.10, formula seen`,
    (profile) => {
      const g = wheelGeneration(numbers({ profile }))
      for (const [x, y] of [
        [19, 3],
        [24, -8],
        [21, 0],
      ] as const) {
        for (const sigma of [-1, 1] as const) {
          const nx = -rackSlope(g, sigma, x, y)
          const ny = -rackTilt(g, sigma, x, y)
          near(y * nx - x * ny - 3, 0, 1e-9)
        }
      }
    },
  )

  const rackPair = numbers({ pressureAngle: degrees(normalPressureAngle(radians(20), pair.leadAngle)) })

  test('mid-plane of a ZA wheel is an involute of base radius r2 cos alpha_x: rack and gear theory, derived', () => {
    const g = wheelGeneration(rackPair)
    const base = 45 * Math.cos(radians(20))
    near(base, 42.2862, 5e-5)
    near(45 * Math.sin(radians(20)), 15.3909, 5e-5)
    const involute = (R: number) => Math.tan(Math.acos(base / R)) - Math.acos(base / R)
    for (let x = 19.5; x < 24.5; x += 0.25) {
      const { radius, chi } = flankPoint(g, 1, x, 0)
      near(chi, Math.PI / 60 + involute(radius) - involute(45), 1e-9)
    }
  })

  test('contact ratio in the mid-plane of rack and 30 teeth is 1.817: standard formula, derived', () => {
    const g = wheelGeneration(rackPair)
    const shiftAtTip = () => {
      let low = 19
      let high = 22
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2
        if (flankPoint(g, 1, middle, 0).radius > 48) low = middle
        else high = middle
      }
      return flankPoint(g, 1, low, 0).shift
    }
    const ratio = Math.abs(shiftAtTip() - flankPoint(g, 1, 25, 0).shift) / axialPitch(3)
    near(ratio, 1.817, 0.0005)
  })
})

describe('forces', () => {
  const alphaN = radians(14.5)
  const g = leadAngle(2, 12)

  test(`speeds of the 2/30 worm: ${SHIGLEY}, Example 13-10, from memory`, () => {
    near(degrees(g), 9.46, 0.005)
    const v1 = (Math.PI * 2 * 1200) / 12
    near(v1, 628, 0.5)
    near(slidingSpeed(v1, g), 637, 0.5)
    near(v1 * Math.tan(g), 105, 0.5)
  })

  test(`sliding speed: ${JINDAL}, Example 28-4, formula in ${MOTT}, Eq. 10-18`, () => {
    near(slidingSpeed(2.0944, radians(14.036)), 2.159, 0.001)
  })

  test(`forces of the 2/30 worm at 1 hp: ${SHIGLEY}, Example 13-10, from memory`, () => {
    const Wt = 33000 / ((Math.PI * 2 * 1200) / 12)
    const { normal, radial, axial } = meshComponents(
      Wt / tangentialShare(alphaN, g, 0.03, 'worm'),
      alphaN,
      g,
      0.03,
      'worm',
    )
    near(Wt, 52.5, 0.05)
    near(normal, 278, 0.5)
    near(radial, 69.6, 0.1)
    near(axial, 264, 0.5)
    near(axial * 2.5, 660, 1.5)
  })

  const efficiency = (alpha: number, gamma: number, mu: number) =>
    (axialShare(alpha, gamma, mu, 'worm') * Math.tan(gamma)) / tangentialShare(alpha, gamma, mu, 'worm')

  test(`the same in SI: ${SHIGLEY}, Example 13-10, converted, derived`, () => {
    const Wt = 745.699872 / (0.0254 * 40 * Math.PI)
    const mesh = meshComponents(Wt / tangentialShare(alphaN, g, 0.03, 'worm'), alphaN, g, 0.03, 'worm')
    near(Wt, 233.6, 0.05)
    near(mesh.normal, 1237.7, 0.05)
    near(mesh.radial, 309.9, 0.05)
    near(mesh.axial, 1175.9, 0.05)
    near(mesh.axial * 0.0635, 74.67, 0.005)
    near(efficiency(alphaN, g, 0.03), 0.8389, 5e-5)
  })

  test.each([
    { lambda: 1, alpha: 14.5, percent: 25.2 },
    { lambda: 5, alpha: 14.5, percent: 62.6 },
    { lambda: 10, alpha: 14.5, percent: 76.6 },
    { lambda: 15, alpha: 14.5, percent: 82.7 },
    { lambda: 20, alpha: 20, percent: 85.6 },
  ])(`forces make the efficiency $percent % at $lambda deg: ${SHIGLEY}, Table 13-6, from memory`, (row) => {
    near(100 * efficiency(radians(row.alpha), radians(row.lambda), 0.05), row.percent, 0.05)
  })

  test(`axial force at 6 kW: ${JINDAL}, Example 28-3, p. 727`, () => {
    const gamma = leadAngle(2, 10)
    const Pt = 6000 / ((Math.PI * 0.05 * 1440) / 60)
    near(Pt, 1591.5, 0.05)
    const share =
      axialShare(radians(20), gamma, 0.08, 'worm') / tangentialShare(radians(20), gamma, 0.08, 'worm')
    near(Pt * share, 5487, 0.5)
  })

  test(`power out and lost at 1.2 kW: ${JINDAL}, Example 28-4, p. 728`, () => {
    const eta = efficiency(radians(20), leadAngle(2, 8), 0.032)
    near(1.2 * eta, 1.047, 0.0005)
    near(1.2 * (1 - eta), 0.153, 0.0005)
  })

  /** A power screw is a mesh whose flank leans by the thread's half angle; a square thread leans by none. */
  const screwTorque = (load: number, dm: number, l: number, half: number, mu: number, driver: Driver) => {
    const slope = Math.atan(l / (Math.PI * dm))
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
    near(screwTorque(15000, 46, 24, 0, 0.15, 'worm') + collar, 204644.14, 0.05)
    near(collar - screwTorque(15000, 46, 24, 0, 0.15, 'wheel'), 87401.51, 0.05)
  })

  test(`square lead screw: ${WENTZELL}, Examples 18.1 and 18.2, pp. 399-400`, () => {
    near(screwTorque(2900, 1.354, 1 / 3, 0, 0.15, 'worm'), 453.68, 0.01)
  })

  test(`Acme lead screw: ${WENTZELL}, Example 18.3, p. 402`, () => {
    near(screwTorque(2900, 1.375, 0.25, radians(14.5), 0.15, 'worm'), 428.13, 0.01)
  })
})

describe('two wheels and play', () => {
  test('turning senses of 2/30 at 100 rad/s: sign rule of Litvin and Fuentes, derived', () => {
    near(wheelSense('right', 'right') * (2 / 30) * 100, -6.66667, 1e-4)
    near(wheelSense('left', 'right') * (2 / 30) * 100, 6.66667, 1e-4)
    expect(wheelSense('right', 'left')).toBe(1)
    expect(wheelSense('left', 'left')).toBe(-1)
  })

  test("backlash from centre distance: Machinery's Handbook, gear backlash section, from memory", () => {
    near(backlashOfCentreDistance(1, radians(20)), 0.728, 0.0005)
    near(backlashOfCentreDistance(1, radians(14.5)), 0.517, 0.0005)
    near(1 / backlashOfCentreDistance(1, radians(20)), 1.374, 0.0005)
    near(1 / backlashOfCentreDistance(1, radians(14.5)), 1.933, 0.0005)
  })

  test('play of a wheel of 90 mm with 0.05 mm backlash is 3.82 minutes of arc: definition, derived', () => {
    near(60 * degrees(wheelPlay(0.05, 45)), 3.82, 0.005)
  })

  test('second wheel on the 2/30 worm doubles torque and thrust and takes the side loads away: statics, derived', () => {
    const g = leadAngle(2, 12)
    const alphaN = radians(14.5)
    const Wt = 33000 / ((Math.PI * 2 * 1200) / 12)
    const torque = (2.5 * Wt * axialShare(alphaN, g, 0.03, 'worm')) / tangentialShare(alphaN, g, 0.03, 'worm')
    const forces = meshForces({
      r1: 1,
      r2: 2.5,
      alphaN,
      g,
      mu: 0.03,
      hand: 1,
      wormSense: 1,
      driver: 'worm',
      rightTorque: torque,
      leftTorque: torque,
    })
    near(-forces.wormMoment[2], 105.0, 0.1)
    near(forces.wormForce[2], 528.7, 0.1)
    near(forces.wormForce[0], 0, 1e-9)
    near(forces.wormForce[1], 0, 1e-9)
    near(torque, 660.9, 0.1)
  })

  test('far side shows half a pitch for odd starts, with the wheel of even teeth: geometry, derived', () => {
    near(farSidePhase(1, 20) / ((2 * Math.PI) / 20), 0.5, 1e-15)
    expect(farSidePhase(2, 20)).toBe(0)
  })

  test('both wheels have the hand of the worm, helix angle = lead angle: rule for shafts at 90 degrees, any text', () => {
    // The tooth space climbs with the rack: its slope across the face at the reference circle is the helix angle.
    for (const hand of ['right', 'left'] as const) {
      const pair = pairProportions(numbers({ hand }))
      const g = wheelGeneration(numbers({ hand }))
      const helix = Math.atan((rackTilt(g, 1, 22, 0) + rackTilt(g, -1, 22, 0)) / 2)
      near(helix, hand === 'right' ? pair.leadAngle : -pair.leadAngle, 1e-12)
    }
  })
})
