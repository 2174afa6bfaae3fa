import type { Manifold } from 'manifold-3d'
import type { Flank } from '../../../sim/gear/wheel-flank.ts'
import { spacePoints, wheelSection } from '../../../sim/gear/wheel-section.ts'
import {
  blankRadius,
  noEdge,
  rootRadius,
  type SpaceCutter,
  writeSpaceEdge,
} from '../../../sim/gear/wheel-space.ts'
import type { Cutting } from './cut-by-worm.ts'

/** How far the cut stands above the closed form [mm]: metal that the steps left. */
export interface LeftOver {
  readonly flank: number
  /** Flanks, fillets and root together */
  readonly most: number
  /** Negative where the cut has gone deeper than the closed form */
  readonly least: number
}

/** Vertices this near [mm] to the inside, or to the tip, whose facets are the blank's, are left out. */
const AWAY = 0.15
/** [mm] */
const DIFFERENCE = 1e-4

function chiAt(cutter: SpaceCutter, sigma: Flank, y: number, R: number): number {
  const edge = noEdge()
  writeSpaceEdge(edge, cutter, sigma, y, Math.max(R, rootRadius(cutter, y)))
  return edge.chi
}

/** Distance [mm] of a place to one side of the space, square to it, positive inside the space. */
function depthBehind(cutter: SpaceCutter, sigma: Flank, y: number, R: number, chi: number): number {
  const slope = (dy: number, dR: number) =>
    (chiAt(cutter, sigma, y + dy, R + dR) - chiAt(cutter, sigma, y - dy, R - dR)) / (2 * DIFFERENCE)
  const angle = sigma * (chiAt(cutter, sigma, y, R) - chi)
  return angle / Math.hypot(1 / R, slope(0, DIFFERENCE), slope(DIFFERENCE, 0))
}

/** The depth to the nearest of both sides and the root, and whether that is a flank. */
function depthInSpace(cutter: SpaceCutter, y: number, R: number, chi: number): [number, onFlank: boolean] {
  const toRoot = R - rootRadius(cutter, y)
  if (toRoot <= 0) return [toRoot, false]
  const edge = noEdge()
  let nearest: [number, boolean] = [toRoot, false]
  for (const sigma of [-1, 1] as const) {
    const depth = depthBehind(cutter, sigma, y, R, chi)
    if (depth >= nearest[0]) continue
    writeSpaceEdge(edge, cutter, sigma, y, R)
    nearest = [depth, !edge.corner]
  }
  return nearest
}

/** Looks at every vertex of the middle space. */
export function leftOver({ cutter, insideRadius }: Cutting, solid: Manifold): LeftOver {
  const places = solid.getMesh().vertProperties
  let [flank, most, least] = [0, 0, 0]
  for (let v = 0; v < places.length; v += 3) {
    const [x, y, z] = [places[v]!, places[v + 1]!, places[v + 2]!]
    const R = Math.hypot(x, z)
    const chi = Math.atan2(z, -x)
    if (Math.abs(chi) > cutter.toothPitch / 2 || R < insideRadius + AWAY) continue
    if (R > blankRadius(cutter, y) - AWAY) continue
    const [depth, onFlank] = depthInSpace(cutter, y, R, chi)
    most = Math.max(most, depth)
    least = Math.min(least, depth)
    if (onFlank) flank = Math.max(flank, depth)
  }
  return { flank, most, least }
}

/** Volume [mm3] of the pitch about the middle space. */
export function middleVolume({ cutter }: Cutting, solid: Manifold): number {
  const c = Math.cos(cutter.toothPitch / 2)
  const s = Math.sin(cutter.toothPitch / 2)
  const half = solid.trimByPlane([-s, 0, c], 0)
  const pitch = half.trimByPlane([-s, 0, -c], 0)
  const volume = pitch.volume()
  half.delete()
  pitch.delete()
  return volume
}

const EXACT = { flank: 120, fillet: 120, root: 16 }
/** Even, for Simpson's rule over the face */
const PLANES = 192

/** The same by the closed form. */
export function exactVolume({ cutter, faceWidth, insideRadius }: Cutting): number {
  const points = spacePoints(EXACT)
  let volume = 0
  for (let j = 0; j <= PLANES; j++) {
    const { radius, chi } = wheelSection(cutter, faceWidth * (j / PLANES - 1 / 2), EXACT)
    const land = cutter.toothPitch - (chi[points - 1]! - chi[0]!)
    let area = (radius[0]! ** 2 * land - insideRadius ** 2 * cutter.toothPitch) / 2
    for (let i = 0; i + 1 < points; i++) {
      area += (radius[i]! * radius[i + 1]! * Math.sin(chi[i + 1]! - chi[i]!)) / 2
    }
    const weight = j % PLANES === 0 ? 1 : j % 2 === 1 ? 4 : 2
    volume += (area * weight * faceWidth) / (3 * PLANES)
  }
  return volume
}
