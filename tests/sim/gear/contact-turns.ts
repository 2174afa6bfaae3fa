import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { helicalSection, helicalTooth } from '../../../sim/gear/helical-tooth.ts'
import type { Misplacement } from '../../../sim/gear/misplaced.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { threadForm } from '../../../sim/gear/thread-profile.ts'
import { toothLimits } from '../../../sim/gear/tooth-limits.ts'
import type { Flank } from '../../../sim/gear/wheel-flank.ts'
import { handSign } from '../../../sim/gear/wheel-motion.ts'
import { wheelSection } from '../../../sim/gear/wheel-section.ts'
import { spaceCutter } from '../../../sim/gear/wheel-space.ts'

const DETAIL = { flank: 48, fillet: 16, root: 2 }
const HALVINGS = 40

/** Radius, chi and y of every point of one side of a space: flank and fillet. */
function flankPoints(pair: GearNumbers, sigma: Flank, planes: number): number[][] {
  const points: number[][] = []
  const plain = pair.wheelForm === 'helical' ? helicalTooth(pair) : null
  const cutter = spaceCutter(pair)
  // The point of a plain wheel stays near the middle.
  const width = plain === null ? pair.wheelWidth : 1.5
  for (let j = 0; j <= planes; j++) {
    const y = width * (j / planes - 0.5)
    const section = plain === null ? wheelSection(cutter, y, DETAIL) : helicalSection(plain, y, DETAIL)
    const half = (section.radius.length - 1) / 2
    section.radius.forEach((R, i) => {
      if (i < section.radius.length - 1 && (sigma < 0 ? i < half : i > half))
        points.push([R, section.chi[i]!, y])
    })
  }
  return points
}

export interface Turns {
  /** Least turn onto the flank over the angles, and the range of it, at r2 [um] */
  least: number
  range: number
}

/**
 * Turns of the wheel until the first point of a dense set touches, at equal worm angles over a pitch: each point by
 * halving, with nothing known of where it should touch.
 */
export function blindTurns(
  pair: GearNumbers,
  off: Misplacement,
  sigma: Flank,
  angles: number,
  planes: number,
): Turns {
  const dims = pairProportions(pair)
  const { halfThickness } = threadForm(pair)
  const { wormTip } = toothLimits(pair)
  const P = handSign(pair.hand) * dims.screwParameter
  const points = flankPoints(pair, sigma, planes)
  const c = Math.cos(off.tilt)
  const t = Math.sin(off.tilt)
  const turns: number[] = []
  for (let n = 0; n < angles; n++) {
    const phi = (2 * Math.PI * n) / angles / pair.wormStarts
    /** Above 0 outside the thread k; NaN beyond the worm's tip. */
    const gap = (R: number, angle: number, y: number, k: number): number => {
      const height = R * Math.sin(angle)
      const x = dims.centreDistance + off.centre - R * Math.cos(angle)
      const across = y * c - height * t + off.along
      const z = y * t + height * c - off.axial
      const r = Math.hypot(x, across)
      if (r > wormTip) return NaN
      return sigma * (z - P * (Math.atan2(across, x) - phi) - k * dims.axialPitch) - halfThickness(r)
    }
    let best = Infinity
    for (const [R = 0, chi = 0, y = 0] of points) {
      for (let k = -3; k <= 3; k++) {
        const start = chi + (2 * Math.PI * k) / pair.wheelTeeth - (P * phi) / dims.referenceRadiusWheel
        if (Math.abs(R * Math.sin(start)) > 14) continue
        let free = -0.03
        let inside = 0.03
        if (!(gap(R, start - sigma * free, y, k) > 0) || !(gap(R, start - sigma * inside, y, k) < 0)) continue
        for (let i = 0; i < HALVINGS && free < best; i++) {
          const middle = (free + inside) / 2
          if (gap(R, start - sigma * middle, y, k) > 0) free = middle
          else inside = middle
        }
        best = Math.min(best, free)
      }
    }
    turns.push(best * dims.referenceRadiusWheel * 1000)
  }
  return { least: Math.min(...turns), range: Math.max(...turns) - Math.min(...turns) }
}
