/** Where the two wheels stand about the worm, seen along the wheels' axes: sizes by circles and a bar. */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { across, sizeText } from './dimensions.ts'
import type { Flat } from './flat.ts'
import { type Mark, circle, outline, place, stroke } from './marks.ts'
import { type PictureOf, onPaper } from './view.ts'
import { wormShape } from './worm-outline.ts'

const FIRST = 7
const CENTRE_PAST = 2

const outsideOf = (gearing: GearNumbers): number => {
  const { outsideRadiusWheel, throatRadiusWheel } = pairProportions(gearing)
  return gearing.wheelForm === 'throated' ? outsideRadiusWheel : throatRadiusWheel
}

/** The scale at which it takes a given width on paper [mm]. */
export const arrangementScale = (gearing: GearNumbers, width: number): number =>
  (width - 2 * CENTRE_PAST) / (2 * (pairProportions(gearing).centreDistance + outsideOf(gearing)))

export function arrangementPicture(gearing: GearNumbers, scale: number): PictureOf {
  const pair = pairProportions(gearing)
  const worm = wormShape(gearing)
  const a = scale * pair.centreDistance
  const outside = scale * outsideOf(gearing)
  const reach = outside + CENTRE_PAST
  const tall = Math.max(outside, scale * (worm.threadLength / 2 + worm.stubLength)) + CENTRE_PAST
  const bar: Flat[] = [
    [-worm.tip, worm.threadLength / 2],
    [worm.tip, worm.threadLength / 2],
    [worm.tip, -worm.threadLength / 2],
    [-worm.tip, -worm.threadLength / 2],
  ]
  const wheel: Mark[] = [
    circle('thick', outside),
    circle('centre', scale * pair.referenceRadiusWheel),
    circle('thick', (scale * gearing.boreDiameter) / 2),
    stroke('centre', [
      [0, -reach],
      [0, reach],
    ]),
  ]
  const marks: Mark[] = [
    place(-a, 0, wheel),
    place(a, 0, wheel),
    outline('thick', bar.map(onPaper(scale))),
    stroke(
      'centre',
      [
        [-a - reach, 0],
        [a + reach, 0],
      ],
      [
        [0, -tall],
        [0, tall],
      ],
    ),
    ...across(0, a, tall + FIRST, tall, reach, `a ${sizeText(pair.centreDistance)}`),
  ]
  return {
    heading: 'Arrangement, not to scale',
    marks,
    left: a + reach,
    right: a + reach,
    up: tall,
    down: tall + FIRST + 3,
  }
}
