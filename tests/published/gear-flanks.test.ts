/**
 * Printed figures of the gear trade: flanks, turning senses and play. Tolerances: half a unit of the last
 * printed digit, or as said.
 */
import { describe, expect, test } from 'vitest'
import {
  axialPitch,
  axialPressureAngle,
  backlashOfCentreDistance,
  baseLeadAngle,
  baseRadius,
  normalPressureAngle,
  pairProportions,
  transversePressureAngle,
  wheelPlay,
} from '../../sim/gear/proportions.ts'
import { threadForm } from '../../sim/gear/thread-profile.ts'
import { flankPoint, rackSlope, rackTilt, wheelGeneration } from '../../sim/gear/wheel-flank.ts'
import { farSidePhase, wheelSense } from '../../sim/gear/wheel-motion.ts'
import { degrees, radians } from '../../sim/quantity/convert.ts'
import { near } from '../support/near.ts'
import { metricPair } from './gear-pair.ts'
import { LITVIN, METRIC } from './gear-sources.ts'

const PROFILES = ['ZA', 'ZN', 'ZI', 'ZK'] as const

describe('flanks', () => {
  const pair = pairProportions(metricPair)

  test('base lead angle and base radius of an involute helicoid, two routes: ISO/TR 10828 relation, derived', () => {
    const gb = baseLeadAngle(pair.leadAngle, radians(20))
    near(degrees(gb), 21.3969, 5e-5)
    near(baseRadius(3, gb), 7.6563, 5e-5)
    near(22 * Math.cos(transversePressureAngle(radians(20), pair.leadAngle)), 7.6563, 5e-5)
    near(2 * Math.PI * baseRadius(3, gb) * Math.tan(gb), 18.84956, 5e-6)
    near(threadForm({ ...metricPair, profile: 'ZI' }).leastRadius, 7.6563, 5e-5)
  })

  test(`axial and transverse pressure angle: ${METRIC}, Table 9-2, from memory`, () => {
    near(degrees(axialPressureAngle(radians(20), radians(7.76517))), 20.1702, 5e-5)
    near(degrees(transversePressureAngle(radians(20), radians(7.76517))), 69.634, 5e-5)
  })

  test.each(PROFILES)(`helicoid identity on %s: ${LITVIN}, section 19.10, formula seen`, (profile) => {
    const g = wheelGeneration({ ...metricPair, profile })
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
  })

  test.each(PROFILES)(
    `equation of meshing on %s, in the pitch point and wherever the flanks touch: ${LITVIN}, ch. 2 and 19, from memory`,
    (profile) => {
      const g = wheelGeneration({ ...metricPair, profile })
      const a = g.centreDistance
      for (const x of [a - g.wheelRadius, 19.5, 21, 24]) {
        for (const y of [-6, 0, 5]) {
          for (const sigma of [-1, 1] as const) {
            const z = flankPoint(g, sigma, x, y).height
            const n = [-rackSlope(g, sigma, x, y), -rackTilt(g, sigma, x, y), 1] as const
            const w2 = -2 / 30
            // v1 = w1 k x r and v2 = w2 j x (r - a i), with w1 = 1
            const v = [-y - w2 * z, x, w2 * (x - a)] as const
            const product = n[0] * v[0] + n[1] * v[1] + n[2] * v[2]
            near(product / Math.hypot(...n) / Math.hypot(...v), 0, 1e-9)
          }
        }
      }
    },
  )

  const rackPair = {
    ...metricPair,
    pressureAngle: degrees(normalPressureAngle(radians(20), pair.leadAngle)),
  }

  test('mid-plane of a ZA wheel is an involute of base radius r2 cos alpha_x: rack and gear theory, derived', () => {
    const g = wheelGeneration(rackPair)
    const base = 45 * Math.cos(radians(20))
    const involute = (R: number) => Math.tan(Math.acos(base / R)) - Math.acos(base / R)
    for (let x = 19.5; x < 24.5; x += 0.25) {
      const { radius, chi } = flankPoint(g, 1, x, 0)
      near(chi, Math.PI / 60 + involute(radius) - involute(45), 1e-9)
    }
  })

  test('flank has the profile radius r2 sin alpha_x = 15.3909 mm in the pitch point: rack and gear theory, derived', () => {
    near(45 * Math.cos(radians(20)), 42.2862, 5e-5)
    const g = wheelGeneration(rackPair)
    const at = (x: number) => {
      const { radius, chi } = flankPoint(g, 1, x, 0)
      return [radius * Math.cos(chi), radius * Math.sin(chi)] as const
    }
    const [[ax, ay], [bx, by], [cx, cy]] = [at(22 - 0.01), at(22), at(22 + 0.01)]
    // circle through three points: product of the sides over four times the area
    const area = Math.abs((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 2
    const sides = Math.hypot(bx - ax, by - ay) * Math.hypot(cx - bx, cy - by) * Math.hypot(cx - ax, cy - ay)
    near(sides / (4 * area), 15.3909, 5e-5)
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

  test("backlash along the normal is jt cos alpha_n cos g: Machinery's Handbook, gear backlash section, from memory", () => {
    const pair = pairProportions({ ...metricPair, backlash: 0.1 })
    // two routes: along the axis, and round the worm, where the flanks lean the other way
    near(pair.normalBacklash, 0.1 * Math.cos(radians(20)) * Math.cos(radians(7.76517)), 1e-8)
    const roundWorm = pair.wormPlay * 22
    near(pair.normalBacklash, roundWorm * Math.cos(radians(20)) * Math.sin(radians(7.76517)), 1e-7)
  })

  test('play of a wheel of 90 mm with 0.05 mm backlash is 3.82 minutes of arc: definition, derived', () => {
    near(60 * degrees(wheelPlay(0.05, 45)), 3.82, 0.005)
  })

  test('far side shows half a pitch for odd starts, with the wheel of even teeth: geometry, derived', () => {
    near(farSidePhase(1, 20) / ((2 * Math.PI) / 20), 0.5, 1e-15)
    expect(farSidePhase(2, 20)).toBe(0)
  })

  test('both wheels have the hand of the worm, helix angle = lead angle: rule for shafts at 90 degrees, any text', () => {
    // The tooth space climbs with the rack: its slope across the face at the reference circle is the helix
    // angle.
    for (const hand of ['right', 'left'] as const) {
      const pair = pairProportions({ ...metricPair, hand })
      const g = wheelGeneration({ ...metricPair, hand })
      const helix = Math.atan((rackTilt(g, 1, 22, 0) + rackTilt(g, -1, 22, 0)) / 2)
      near(helix, hand === 'right' ? pair.leadAngle : -pair.leadAngle, 1e-12)
    }
  })
})
