/** Wheels so wide, of worms with so much lead, that a flank of the wheel ends before the face does. */
import { expect, test } from 'vitest'
import { bearingPattern } from '../../../sim/gear/bearing-pattern.ts'
import { contactLines } from '../../../sim/gear/contact-lines.ts'
import { contactRatio } from '../../../sim/gear/contact-ratio.ts'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { IN_PLACE } from '../../../sim/gear/misplaced.ts'
import { type PairProportions, pairProportions } from '../../../sim/gear/proportions.ts'
import { threadForm } from '../../../sim/gear/thread-profile.ts'
import { oneToTwenty } from './pairs.ts'

const steep: GearNumbers = {
  ...oneToTwenty,
  profile: 'ZN',
  wormStarts: 4,
  wheelTeeth: 61,
  diameterQuotient: 7.7,
  pressureAngle: 26,
  wheelWidth: 13.6,
  addendum: 0.82,
  centres: { kind: 'shift', profileShift: -0.3 },
}
const wide: GearNumbers = {
  ...oneToTwenty,
  profile: 'ZN',
  hand: 'left',
  wormStarts: 8,
  wheelTeeth: 73,
  axialModule: 1,
  diameterQuotient: 20.7,
  pressureAngle: 14,
  wheelWidth: 10.8,
  addendum: 0.7,
  clearance: 0.35,
  centres: { kind: 'shift', profileShift: 0.25 },
}
/** At this lead one part of the thread cuts away what another has made. */
const cutAgain: GearNumbers = {
  ...oneToTwenty,
  hand: 'left',
  depthRule: 'mixed',
  wormStarts: 6,
  wheelTeeth: 117,
  diameterQuotient: 6.83,
  pressureAngle: 17.8,
  wheelWidth: 9.52,
}
const cases = [
  ['4/61, 13.6 mm wide', steep],
  ['8/73, 10.8 mm wide', wide],
  ['6/117, 9.5 mm wide', cutAgain],
  ['1/20, 12 mm wide', oneToTwenty],
] as const

/** Tip of the blank in the plane y: the throat, and the cylinder outside. */
function blankTip({ gorgeRadius, outsideRadiusWheel, centreDistance }: PairProportions, y: number): number {
  if (Math.abs(y) >= gorgeRadius) return outsideRadiusWheel
  return Math.min(outsideRadiusWheel, centreDistance - Math.sqrt(gorgeRadius ** 2 - y * y))
}

test.each(cases)('%s: lines of contact stay within the tips of worm and wheel', (_, pair) => {
  const dims = pairProportions(pair)
  let points = 0
  for (const sigma of [1, -1] as const) {
    for (let n = 0; n < 12; n++) {
      for (const line of contactLines(pair, n / 2, 'right', sigma)) {
        for (let i = 0; i < line.points.length; i += 3) {
          const [x = 0, y = 0, z = 0] = line.points.slice(i, i + 3)
          // ends between two planes lie on the straight line from one tip to the next
          const dust = 0.002 * pair.axialModule
          expect(Math.hypot(x, y)).toBeLessThan(dims.tipRadiusWorm + dust)
          expect(Math.hypot(dims.centreDistance - x, z)).toBeLessThan(blankTip(dims, y) + dust)
          points++
        }
      }
    }
  }
  expect(points).toBeGreaterThan(200)
})

/**
 * Shifts of the thread at which it touches in one plane, from a plain search: on each circle of the blank the place
 * of the cutter that reaches farthest, where it is not the cutter's corner and lies inside the worm.
 */
function touchingShifts(pair: GearNumbers, y: number, circles: number, places: number): number[] {
  const {
    centreDistance: a,
    referenceRadiusWheel: r2,
    hobTipRadius,
    screwParameter,
    ...dims
  } = pairProportions(pair)
  const { halfThickness } = threadForm(pair)
  const P = pair.hand === 'right' ? screwParameter : -screwParameter
  const rack = (x: number) => P * Math.atan2(y, x) + halfThickness(Math.hypot(x, y))
  const root = a - Math.sqrt(hobTipRadius ** 2 - y * y)
  const shifts: number[] = []
  for (let i = 1; i <= circles; i++) {
    const R = root + ((blankTip({ ...dims, centreDistance: a } as PairProportions, y) - root) * i) / circles
    const end = Math.acos(root / R)
    let [most, best] = [-Infinity, 0]
    for (let k = 0; k <= places; k++) {
      const t = end * ((2 * k) / places - 1)
      const reached = t + (rack(a - R * Math.cos(t)) - R * Math.sin(t)) / r2
      if (reached > most) [most, best] = [reached, k]
    }
    const t = end * ((2 * best) / places - 1)
    const x = a - R * Math.cos(t)
    if (best > 0 && best < places && Math.hypot(x, y) <= dims.tipRadiusWorm)
      shifts.push(R * Math.sin(t) - rack(x))
  }
  return shifts
}

test.each(cases)('%s: contact ratio is that of a plain search over the whole face', (_, pair) => {
  const shifts = Array.from({ length: 61 }, (__, j) => pair.wheelWidth * (j / 60 - 0.5)).flatMap((y) =>
    touchingShifts(pair, y, 80, 1600),
  )
  const found = (Math.max(...shifts) - Math.min(...shifts)) / pairProportions(pair).axialPitch
  const { total } = contactRatio(pair)
  // 80 circles and 61 planes leave out up to 1/80 of the height and 1/60 of the face at either end
  expect(total).toBeLessThan(found * 1.03)
  // of a flank in two pieces the one at the foot is counted, which is the larger
  expect(total).toBeGreaterThan(pair === cutAgain ? found * 0.9 : found - 0.005)
})

test('a wheel has marking compound only where it has a flank', () => {
  const { y, radius, points, share } = bearingPattern(wide, 'right', -1, IN_PLACE, 0.006)
  const dims = pairProportions(wide)
  expect(Math.max(...y) - Math.min(...y)).toBeLessThan(wide.wheelWidth)
  const beyond = Array.from(radius, (R, k) => R - blankTip(dims, y[Math.floor(k / points)]!))
  expect(Math.max(...beyond)).toBeLessThan(1e-9)
  expect(share).toBeGreaterThan(0.6)
})
