import type { GearNumbers, Side } from '../../../sim/gear/gear-numbers.ts'
import { helicalSection, helicalTooth } from '../../../sim/gear/helical-tooth.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { thinnedThreadForm } from '../../../sim/gear/thread-profile.ts'
import { toothLimits } from '../../../sim/gear/tooth-limits.ts'
import { farSidePhase, handSign, wheelSense } from '../../../sim/gear/wheel-motion.ts'
import { soundHalfFace, type WheelSection, wheelSection } from '../../../sim/gear/wheel-section.ts'
import { spaceCutter } from '../../../sim/gear/wheel-space.ts'

const DETAIL = { flank: 6, fillet: 3, root: 2 }
const PLANES = 8

/** Planes of the wheel as it is made, over the face that has teeth. */
export function wheelPlanes(pair: GearNumbers): WheelSection[] {
  const cutter = spaceCutter(pair)
  const half = soundHalfFace(cutter, pair.wheelWidth)
  const planes = Array.from({ length: PLANES + 1 }, (_, j) => half * ((2 * j) / PLANES - 1))
  if (pair.wheelForm === 'throated') return planes.map((y) => wheelSection(cutter, y, DETAIL))
  const tooth = helicalTooth(pair)
  return planes.map((y) => helicalSection(tooth, y, DETAIL))
}

/**
 * Least gap [mm], along the worm's axis, between the points of all teeth of one wheel and the worm as it is made,
 * over a whole pitch in equal steps; negative inside the metal. The wheel moves by its ratio, turned `extra` [rad]
 * further.
 */
export function leastGap(
  pair: GearNumbers,
  planes: readonly WheelSection[],
  side: Side,
  steps: number,
  extra = 0,
): number {
  const dims = pairProportions(pair)
  const { wormTip, wormRoot } = toothLimits(pair)
  const { halfThickness } = thinnedThreadForm(pair)
  const P = handSign(pair.hand) * dims.screwParameter
  const zero = side === 'right' ? 0 : farSidePhase(pair.wormStarts, pair.wheelTeeth)
  const toWorm = side === 'right' ? 0 : Math.PI
  const axis = side === 'right' ? dims.centreDistance : -dims.centreDistance
  const pitch = (2 * Math.PI) / pair.wheelTeeth
  let least = Infinity
  for (let n = 0; n < steps; n++) {
    const phi = (2 * Math.PI * n) / steps / pair.wormStarts
    const turned = zero + extra + (wheelSense(side, pair.hand) * pair.wormStarts * phi) / pair.wheelTeeth
    for (const { y, radius, chi } of planes) {
      // The last point, in the middle of the tip, belongs to no flank.
      for (let i = 0; i + 1 < radius.length; i++) {
        const R = radius[i]!
        // Only teeth near the line of centres can reach the worm.
        const reach = Math.sqrt(Math.max(0, R * R - (dims.centreDistance - wormTip) ** 2)) / R
        const start = chi[i]! + turned - toWorm
        const nearest = start - Math.round(start / pitch) * pitch
        const teeth = Math.ceil((reach * 1.2) / pitch)
        for (let k = -teeth; k <= teeth; k++) {
          const angle = nearest + k * pitch + toWorm
          const x = axis - R * Math.cos(angle)
          const z = R * Math.sin(angle)
          const r = Math.sqrt(x * x + y * y)
          if (r >= wormTip) continue
          const along = z - P * (Math.atan2(y, x) - phi)
          const off = Math.abs(along - Math.round(along / dims.axialPitch) * dims.axialPitch)
          const gap = Math.min(off - halfThickness(r), r - wormRoot)
          if (gap < least) least = gap
        }
      }
    }
  }
  return least
}
