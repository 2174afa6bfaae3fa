/** Side view of the worm with its dimensions. */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { STEP, across, sizeText, upward } from './dimensions.ts'
import type { Flat } from './flat.ts'
import { type Mark, outline, stroke } from './marks.ts'
import { type PictureOf, onPaper } from './view.ts'
import { type WormShape, type WormSide, axialEdge, wormShape } from './worm-outline.ts'

/** Room between an outline and its first dimension line. */
const FIRST = 8
const CENTRE_PAST = 4

function shaftEnd({ shaftRadius: rs, threadLength, stubLength }: WormShape, side: 1 | -1): Flat[] {
  const [from, to] = [(side * threadLength) / 2, side * (threadLength / 2 + stubLength)]
  return [
    [from, rs],
    [to, rs],
    [to, -rs],
    [from, -rs],
  ]
}

/** Middles of the first two threads on the upper edge, left to right. */
function neighbours(worm: WormShape): readonly [number, number] {
  const crests = axialEdge(worm, 0, -worm.threadLength / 2, worm.threadLength / 2).filter(
    ([, r]) => r > worm.tip - 1e-9,
  )
  const middles = crests.map(([z]) => Math.round(z / worm.axialPitch) * worm.axialPitch)
  const first = Math.min(...middles)
  return [first, first + worm.axialPitch]
}

/** `side` - what `wormSide` gives for this worm; it takes longer than all the rest. */
export function wormPicture(gearing: GearNumbers, side: WormSide, scale: number): PictureOf {
  const worm = wormShape(gearing)
  const paper = onPaper(scale)
  const { upper, lower, edges } = side
  const pair = pairProportions(gearing)
  const half = (scale * worm.threadLength) / 2
  const whole = half + scale * worm.stubLength
  const tip = scale * worm.tip
  const shaft = scale * worm.shaftRadius
  const reference = scale * pair.referenceRadiusWorm
  const [first, second] = neighbours(worm)
  const at = (v: number): Flat[] => [
    [-half - CENTRE_PAST, v],
    [half + CENTRE_PAST, v],
  ]
  const marks: Mark[] = [
    outline('thick', [...upper.map(paper), ...[...lower].reverse().map(paper)]),
    stroke('thick', shaftEnd(worm, 1).map(paper), shaftEnd(worm, -1).map(paper)),
    stroke('thin', ...edges.map((edge) => edge.map(paper))),
    stroke(
      'centre',
      [
        [-whole - CENTRE_PAST, 0],
        [whole + CENTRE_PAST, 0],
      ],
      at(reference),
      at(-reference),
    ),
    ...across(-half, half, tip + FIRST, shaft, shaft, `b_1 ${sizeText(worm.threadLength)}`),
    ...across(-whole, whole, tip + FIRST + STEP, shaft, shaft, sizeText(2 * (whole / scale))),
    ...across(scale * first, scale * second, -tip - FIRST, -tip, -tip, `p_x ${sizeText(worm.axialPitch)}`),
    ...upward(-shaft, shaft, whole + FIRST, whole, whole, `ø${sizeText(2 * worm.shaftRadius)}`),
    ...upward(-tip, tip, whole + FIRST + STEP, half, half, `d_a1 ø${sizeText(2 * worm.tip)}`),
    ...upward(
      -reference,
      reference,
      -whole - FIRST,
      -half,
      -half,
      `d_1 ø${sizeText(2 * pair.referenceRadiusWorm)}`,
    ),
  ]
  return {
    heading: `Worm, ${gearing.hand} hand`,
    marks,
    left: whole + FIRST + STEP,
    right: whole + FIRST + STEP + 3,
    up: tip + FIRST + STEP,
    down: tip + FIRST + STEP + 3,
  }
}
