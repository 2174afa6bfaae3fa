/** Worm and wheel where they mesh, cut in the mid-plane of the wheel, larger than the rest. */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { STEP, across, pointer, sizeText } from './dimensions.ts'
import { type Flat, type Window, areaInside, hatching, linesInside } from './flat.ts'
import { type Mark, outline, stroke } from './marks.ts'
import { type PictureOf, onPaper } from './view.ts'
import { wheelTeeth } from './wheel-outline.ts'
import { type WormShape, axialEdge, wormShape } from './worm-outline.ts'

const FIRST = 8
const HATCH = 1.8
/** Half of the window, in axial pitches along the worm and in modules across. */
const HALF_PITCHES = 1.2
const HALF_MODULES = 3.2

/** Along the worm [mm], what the window shows. */
export const meshWindow = (gearing: GearNumbers): number =>
  2 * HALF_PITCHES * pairProportions(gearing).axialPitch

const rounded = (middle: number, radius: number, window: Window): Flat[][] => {
  const points = Array.from({ length: 361 }, (_, i): Flat => {
    const turn = (Math.PI * (i - 180)) / 360
    return [radius * Math.sin(turn), middle - radius * Math.cos(turn)]
  })
  return linesInside(points, window)
}

/** The near side of the worm's section as an area down to its axis. */
function wormArea(worm: WormShape, window: Window): { readonly edge: Flat[]; readonly area: Flat[] } {
  const edge = axialEdge(worm, 0, window.left, window.right)
  return { edge, area: areaInside([...edge, [window.right, 0], [window.left, 0]], window) }
}

export function meshPicture(gearing: GearNumbers, scale: number): PictureOf {
  const pair = pairProportions(gearing)
  const worm = wormShape(gearing)
  const m = gearing.axialModule
  const pitchPoint = pair.centreDistance - pair.referenceRadiusWheel
  const window: Window = {
    left: -HALF_PITCHES * pair.axialPitch,
    right: HALF_PITCHES * pair.axialPitch,
    bottom: pitchPoint - HALF_MODULES * m,
    top: pitchPoint + HALF_MODULES * m,
  }
  const paper = (point: Flat): Flat => onPaper(scale)([point[0], point[1] - pitchPoint])
  const drawn = (weight: 'thick' | 'centre', lines: readonly (readonly Flat[])[]): Mark =>
    stroke(weight, ...lines.map((line) => line.map(paper)))
  const wheel = wheelTeeth(gearing).map(([u, v]): Flat => [u, v + pair.centreDistance])
  const { edge, area } = wormArea(worm, window)
  const frame: Flat[] = [
    [window.left, window.bottom],
    [window.right, window.bottom],
    [window.right, window.top],
    [window.left, window.top],
  ]
  const half = scale * window.right
  const down = scale * (pitchPoint - window.bottom)
  const reach: Flat[] = [
    [window.left, pair.referenceRadiusWorm],
    [window.right, pair.referenceRadiusWorm],
  ]
  const marks: Mark[] = [
    stroke('hatch', ...hatching([areaInside(wheel, window).map(paper)], HATCH, true)),
    stroke('hatch', ...hatching([area.map(paper)], HATCH, false)),
    drawn('thick', [...linesInside([...wheel, wheel[0]!], window), edge]),
    drawn('centre', [reach, ...rounded(pair.centreDistance, pair.referenceRadiusWheel, window)]),
    outline('thin', frame.map(paper)),
    ...pitchDimension(pair.axialPitch, scale, down),
    ...clearances(gearing, scale, pitchPoint, half),
  ]
  return {
    heading: 'Mesh, mid-plane',
    marks,
    left: half + 2,
    right: half + 22,
    up: down + 2,
    down: down + FIRST + STEP,
  }
}

const pitchDimension = (px: number, scale: number, down: number): Mark[] =>
  across(0, scale * px, down + FIRST, down, down, `p_x ${sizeText(px)}`)

/** Under the thread and under the tooth, told beside the window. */
function clearances(gearing: GearNumbers, scale: number, pitchPoint: number, half: number): Mark[] {
  const pair = pairProportions(gearing)
  const below = (pair.gorgeRadius + pair.rootRadiusWorm) / 2 - pitchPoint
  const above = (pair.hobTipRadius + pair.tipRadiusWorm) / 2 - pitchPoint
  const c1 = pair.gorgeRadius - pair.rootRadiusWorm
  const c2 = pair.hobTipRadius - pair.tipRadiusWorm
  const beside = scale * (pair.axialPitch / 2)
  return [
    ...pointer([beside, -scale * below], [half + 2, -scale * below + 3], `c_1 ${sizeText(c1)}`),
    ...pointer(
      [scale * pair.axialPitch, -scale * above],
      [half + 2, -scale * above - 3],
      `c_2 ${sizeText(c2)}`,
    ),
  ]
}
