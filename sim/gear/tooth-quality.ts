/** What the cutter leaves of the wheel's teeth, looked at in planes across the face. */
import { junctionRadius, soundHalfFace, soundTipRadius, toothWidth } from './wheel-section.ts'
import { blankRadius, noEdge, type SpaceCutter, writeSpaceEdge } from './wheel-space.ts'

/** Planes from the middle of the face to each side. */
const PLANES = 6
/** Part of the worm's tip radius by which the flank in use may fall short unnoticed (our choice). */
const UNNOTICED = 0.003

/**
 * Distance [mm] from the mid-plane to the first plane in which undercut has taken the foot of the flank in use; null
 * where every such flank is whole. Rows of the cutter beyond the worm's tip make only fillet and do not count.
 */
export function undercutFrom(cutter: SpaceCutter, wheelWidth: number): number | null {
  const half = soundHalfFace(cutter, wheelWidth)
  const edge = noEdge()
  for (let i = 0; i <= PLANES; i++) {
    for (const y of [(half * i) / PLANES, (-half * i) / PLANES]) {
      const tip = soundTipRadius(cutter, y)
      const inUse = Math.sqrt(cutter.limits.wormTip ** 2 - y * y) - UNNOTICED * cutter.limits.wormTip
      for (const sigma of [-1, 1] as const) {
        const R = junctionRadius(cutter, sigma, y, tip)
        writeSpaceEdge(edge, cutter, sigma, y, R)
        const x = cutter.generation.centreDistance - R * Math.cos(edge.contact)
        if (edge.corner || x < inUse) return Math.abs(y)
      }
    }
  }
  return null
}

/** Width [mm] of the narrowest tip over the face; 0 where teeth come to a point below the blank. */
export function leastTipWidth(cutter: SpaceCutter, wheelWidth: number): number {
  const half = soundHalfFace(cutter, wheelWidth)
  let least = Infinity
  for (let i = -PLANES; i <= PLANES; i++) {
    const y = (half * i) / PLANES
    const tip = soundTipRadius(cutter, y)
    least = Math.min(least, tip < blankRadius(cutter, y) ? 0 : toothWidth(cutter, y, tip))
  }
  return least
}
