/**
 * What the cutter leaves of the wheel's teeth, looked at in planes from the middle of the face to one side.
 * The other side is the same: a wheel turned half round about a tooth space is itself.
 */
import { junctionRadius, soundTipRadius, toothWidth } from './wheel-section.ts'
import { blankRadius, noEdge, type SpaceCutter, writeSpaceEdge } from './wheel-space.ts'

const PLANES = 6
/** Part of the worm's tip radius by which the flank in use may fall short unnoticed (our choice). */
const UNNOTICED = 0.003

export interface FacePlane {
  readonly y: number
  /** Radius [mm] up to which the tooth has width */
  readonly tip: number
}

/** Planes over half a face width [mm] that has teeth. */
export const facePlanes = (cutter: SpaceCutter, halfFace: number): readonly FacePlane[] =>
  Array.from({ length: PLANES + 1 }, (_, i) => {
    const y = (halfFace * i) / PLANES
    return { y, tip: soundTipRadius(cutter, y) }
  })

/**
 * Distance [mm] from the mid-plane to the first plane in which undercut has taken the foot of the flank in
 * use; null where every such flank is whole. Rows of the cutter beyond the worm's tip make only fillet and do
 * not count.
 */
export function undercutFrom(cutter: SpaceCutter, planes: readonly FacePlane[]): number | null {
  const edge = noEdge()
  for (const { y, tip } of planes) {
    const inUse = Math.sqrt(cutter.limits.wormTip ** 2 - y * y) - UNNOTICED * cutter.limits.wormTip
    for (const sigma of [-1, 1] as const) {
      const R = junctionRadius(cutter, sigma, y, tip)
      writeSpaceEdge(edge, cutter, sigma, y, R)
      const x = cutter.generation.centreDistance - R * Math.cos(edge.contact)
      if (edge.corner || x < inUse) return y
    }
  }
  return null
}

/** Width [mm] of the narrowest tip over the face; 0 where teeth come to a point below the blank. */
export function leastTipWidth(cutter: SpaceCutter, planes: readonly FacePlane[]): number {
  const widths = planes.map(({ y, tip }) => (tip < blankRadius(cutter, y) ? 0 : toothWidth(cutter, y, tip)))
  return Math.min(...widths)
}
