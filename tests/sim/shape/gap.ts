import type { GearNumbers, Side } from '../../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { threadForm } from '../../../sim/gear/thread-profile.ts'
import { toothLimits } from '../../../sim/gear/tooth-limits.ts'
import { farSidePhase, handSign, wheelSense } from '../../../sim/gear/wheel-motion.ts'
import type { WheelSurface } from '../../../sim/shape/wheel-surface.ts'

export interface Gaps {
  /**
   * Least distance [mm] along the worm's axis between a wheel point and the thread; negative inside the
   * metal.
   */
  least: number
  /** Largest, over the worm angles, of the smallest distance at that angle on each of the two flanks. */
  closest: number
}

/**
 * Distance of every point of the wheel's teeth to the analytic worm, in double precision, at `angles` worm
 * angles over one pitch. `extra` turns the wheel [rad] further than its place, to see that the measure sees
 * it.
 */
export function meshGaps(
  gearing: GearNumbers,
  surface: WheelSurface,
  side: Side,
  angles = 12,
  extra = 0,
): Gaps {
  const pair = pairProportions(gearing)
  const { wormTip, wormRoot } = toothLimits(gearing)
  const { halfThickness } = threadForm(gearing)
  const P = handSign(gearing.hand) * pair.screwParameter
  const ratio = gearing.wormStarts / gearing.wheelTeeth
  const zero = side === 'right' ? 0 : farSidePhase(gearing.wormStarts, gearing.wheelTeeth)
  const axis = side === 'right' ? pair.centreDistance : -pair.centreDistance
  const gaps: Gaps = { least: Infinity, closest: -Infinity }
  for (let n = 0; n < angles; n++) {
    const phi = (2 * Math.PI * n) / angles / gearing.wormStarts
    const wheel = zero + extra + wheelSense(side, gearing.hand) * ratio * phi
    const nearest = [Infinity, Infinity]
    for (const { y, radius, chi } of surface.sections) {
      for (let k = 0; k < gearing.wheelTeeth; k++) {
        for (let i = 0; i < radius.length; i++) {
          const angle = chi[i]! + (2 * Math.PI * k) / gearing.wheelTeeth + wheel
          const x = axis - radius[i]! * Math.cos(angle)
          const z = radius[i]! * Math.sin(angle)
          const r = Math.hypot(x, y)
          if (r >= wormTip || Math.abs(z) > pair.threadLength / 2) continue
          const along = z - P * (Math.atan2(y, x) - phi)
          const fromThread = along - Math.round(along / pair.axialPitch) * pair.axialPitch
          const gap = Math.min(Math.abs(fromThread) - halfThickness(r), r - wormRoot)
          const flank = fromThread > 0 ? 0 : 1
          nearest[flank] = Math.min(nearest[flank]!, gap)
        }
      }
    }
    gaps.least = Math.min(gaps.least, ...nearest)
    gaps.closest = Math.max(gaps.closest, ...nearest)
  }
  return gaps
}
