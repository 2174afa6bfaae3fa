/**
 * Flank and fillet against a brute-force envelope: the cutter is put at many shifts, its points on a circle of the
 * wheel are found by bisection and the farthest by golden section. No derivative and no pitch point is used.
 */
import { expect, test } from 'vitest'
import { type Flank, rackHeight } from '../../../sim/gear/wheel-flank.ts'
import {
  noEdge,
  rootRadius,
  type SpaceCutter,
  spaceCutter,
  writeSpaceEdge,
} from '../../../sim/gear/wheel-space.ts'
import { pairName, pairs } from './pairs.ts'

const SHIFTS = 120
const SCAN = 80
const GOLDEN = (Math.sqrt(5) - 1) / 2

/** Farthest angle chi that the cutter reaches on the circle R when it is moved by `shift`, on its side sigma. */
function reachAt(cutter: SpaceCutter, sigma: Flank, y: number, R: number, shift: number): number {
  const { generation: g, limits } = cutter
  const across = g.centreDistance - Math.sqrt(limits.hobTip ** 2 - y * y)
  const end = Math.acos(across / R)
  // t grows towards the side sigma; the cutter lies on the other side of its flank
  const inside = (t: number) => {
    const x = g.centreDistance - R * Math.cos(t)
    return sigma * (R * Math.sin(sigma * t) - shift - rackHeight(g, sigma, x, y)) <= 0
  }
  if (inside(end)) return end - (sigma * shift) / g.wheelRadius
  for (let i = 1; i <= SCAN; i++) {
    let good = end - (2 * end * i) / SCAN
    if (!inside(good)) continue
    let bad = good + (2 * end) / SCAN
    for (let j = 0; j < 46; j++) {
      const middle = (good + bad) / 2
      if (inside(middle)) good = middle
      else bad = middle
    }
    return good - (sigma * shift) / g.wheelRadius
  }
  return -Infinity
}

function bruteEdge(cutter: SpaceCutter, sigma: Flank, y: number, R: number): number {
  const far = 6 * cutter.generation.wheelRadius * cutter.toothPitch
  const f = (shift: number) => reachAt(cutter, sigma, y, R, shift)
  let best = -far
  for (let i = 0; i <= SHIFTS; i++) {
    const shift = far * ((2 * i) / SHIFTS - 1)
    if (f(shift) > f(best)) best = shift
  }
  let [low, high] = [best - (2 * far) / SHIFTS, best + (2 * far) / SHIFTS]
  for (let i = 0; i < 70; i++) {
    const [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
    if (f(left) < f(right)) low = left
    else high = right
  }
  return sigma * Math.max(f(low), f(high))
}

test.each(pairs.map((pair) => [pairName(pair), pair] as const))(
  '%s: edge of the space is the envelope to 1e-9 mm, in the fillet too (ZK to 1e-6)',
  (_, pair) => {
    const cutter = spaceCutter(pair)
    const edge = noEdge()
    let worst = 0
    let corners = 0
    for (const y of [-3.5, 0, 3.5]) {
      for (const sigma of [-1, 1] as const) {
        const root = rootRadius(cutter, y)
        for (const up of [0.15, 0.4, 1.2, 2.2, 3.4]) {
          const R = root + (up * pair.axialModule) / 2
          writeSpaceEdge(edge, cutter, sigma, y, R)
          worst = Math.max(worst, Math.abs(bruteEdge(cutter, sigma, y, R) - edge.chi) * R)
          if (edge.corner) corners++
        }
      }
    }
    expect(worst).toBeLessThan(pair.profile === 'ZK' ? 1e-6 : 1e-9)
    expect(corners).toBeGreaterThan(3)
  },
)
