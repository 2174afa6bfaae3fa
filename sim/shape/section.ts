/**
 * Flat drawings of worm and wheel for a plan seen from above (+y towards the reader, x to the right, z down the page).
 * Lengths in mm; points as x, z pairs.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { pairProportions } from '../gear/proportions.ts'
import { threadForm } from '../gear/thread-profile.ts'
import { toothLimits } from '../gear/tooth-limits.ts'
import { spacePoints, wheelSection } from '../gear/wheel-section.ts'
import { spaceCutter } from '../gear/wheel-space.ts'
import { handSign } from '../gear/wheel-motion.ts'
import { wormBody } from './body.ts'

const OUTLINE = { flank: 5, fillet: 3, root: 1 }
const EDGE_PIECES = 24

/** Closed outline of the wheel in its mid-plane, in the frame of `wheelMesh`: turn and move it as the mesh is. */
export function wheelOutline(gearing: GearNumbers): Float64Array {
  const { radius, chi } = wheelSection(spaceCutter(gearing), 0, OUTLINE)
  const points = spacePoints(OUTLINE)
  const outline = new Float64Array(2 * points * gearing.wheelTeeth)
  for (let k = 0, at = 0; k < gearing.wheelTeeth; k++) {
    const turn = (2 * Math.PI * k) / gearing.wheelTeeth
    for (let i = 0; i < points; i++) {
      outline[at++] = -radius[i]! * Math.cos(chi[i]! + turn)
      outline[at++] = radius[i]! * Math.sin(chi[i]! + turn)
    }
  }
  return outline
}

export interface WormSilhouette {
  /** The part of the drawing to show, from -halfLength to +halfLength in z; the lines go a pitch further. */
  readonly halfLength: number
  readonly tipRadius: number
  readonly shaftRadius: number
  /** Both sides of the thread against the background, from low to high z, at +x and at -x */
  readonly rightProfile: Float64Array
  readonly leftProfile: Float64Array
  /** Edges of the thread on the side towards the reader, at its tip and at its root */
  readonly tipEdges: readonly Float64Array[]
  readonly rootEdges: readonly Float64Array[]
}

/**
 * The worm from above at zero turns. A turned helicoid looks the same as a shifted one, so the drawing is made once
 * and each frame only moves it along z by `silhouetteShift`, inside a window of +/- halfLength.
 */
export function wormSilhouette(gearing: GearNumbers): WormSilhouette {
  const { axialPitch, screwParameter } = pairProportions(gearing)
  const { wormTip, wormRoot } = toothLimits(gearing)
  const { threadLength, shaftRadius } = wormBody(gearing)
  const P = handSign(gearing.hand) * screwParameter
  const threads = Math.ceil(threadLength / 2 / axialPitch) + 1
  // The far profile stands half a turn on; a whole number of pitches makes no difference to it.
  const halfTurn = (gearing.wormStarts % 2) * (axialPitch / 2)
  const { halfThickness } = threadForm(gearing)
  const edges = (r: number) => threadEdges(P, r, halfThickness(r), threadLength / 2, axialPitch)
  const profile = (side: 1 | -1, offset: number) => {
    const points: number[] = []
    for (let k = -threads; k <= threads; k++) {
      const z = k * axialPitch + offset
      for (const [r, sigma] of [
        [wormRoot, -1],
        [wormTip, -1],
        [wormTip, 1],
        [wormRoot, 1],
      ] as const) {
        points.push(side * r, z + sigma * halfThickness(r))
      }
    }
    return Float64Array.from(points)
  }
  return {
    halfLength: threadLength / 2,
    tipRadius: wormTip,
    shaftRadius,
    rightProfile: profile(1, 0),
    leftProfile: profile(-1, halfTurn),
    tipEdges: edges(wormTip),
    rootEdges: edges(wormRoot),
  }
}

/** Edges at radius r of every thread that shows in the window, each as a line from +x over the front to -x. */
function threadEdges(P: number, r: number, h: number, halfLength: number, pitch: number): Float64Array[] {
  const rise = P * Math.PI
  const first = Math.ceil((-halfLength - pitch - h - Math.max(0, rise)) / pitch)
  const last = Math.floor((halfLength + pitch + h - Math.min(0, rise)) / pitch)
  const edges: Float64Array[] = []
  for (let k = first; k <= last; k++) {
    for (const sigma of [-1, 1]) {
      const edge = new Float64Array(2 * (EDGE_PIECES + 1))
      for (let i = 0; i <= EDGE_PIECES; i++) {
        const theta = (Math.PI * i) / EDGE_PIECES
        edge[2 * i] = r * Math.cos(theta)
        edge[2 * i + 1] = P * theta + sigma * h + k * pitch
      }
      edges.push(edge)
    }
  }
  return edges
}

/** How far along z [mm] to move the drawing when the worm stands at `fraction` of a turn; within half a pitch. */
export function silhouetteShift(gearing: GearNumbers, fraction: number): number {
  const pitches = handSign(gearing.hand) * gearing.wormStarts * fraction
  return (Math.round(pitches) - pitches) * Math.PI * gearing.axialModule
}
