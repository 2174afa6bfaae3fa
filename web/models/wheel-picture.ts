/** The wheel twice, on one centre line: its teeth in the mid-plane, and the section along its axis. */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { type WheelBody, wheelBody } from '../../sim/shape/body.ts'
import { STEP, across, pointer, sizeText, upward } from './dimensions.ts'
import { type Flat, hatching } from './flat.ts'
import { type Mark, circle, outline, stroke } from './marks.ts'
import { type PictureOf, mirrored, onPaper } from './view.ts'
import { wheelProfile, wheelTeeth } from './wheel-outline.ts'

const FIRST = 8
const CENTRE_PAST = 4
/** From one hatching line to the next [mm on paper] */
const HATCH = 2.2

export function wheelFacePicture(gearing: GearNumbers, scale: number): PictureOf {
  const { outsideRadiusWheel, throatRadiusWheel, referenceRadiusWheel } = pairProportions(gearing)
  const { rimRadius, hubRadius, boreRadius, webThickness, faceWidth } = wheelBody(gearing)
  const teeth = wheelTeeth(gearing).map(onPaper(scale))
  const throated = gearing.wheelForm === 'throated'
  const outside = scale * (throated ? outsideRadiusWheel : throatRadiusWheel)
  const reach = outside + CENTRE_PAST
  const rings = webThickness < faceWidth ? [rimRadius, hubRadius] : []
  const marks: Mark[] = [
    outline('thick', teeth),
    circle('thick', scale * boreRadius),
    ...rings.map((radius) => circle('thick', scale * radius)),
    circle('centre', scale * referenceRadiusWheel),
    ...(throated ? [circle('thin', outside)] : []),
    stroke(
      'centre',
      [
        [-reach, 0],
        [reach, 0],
      ],
      [
        [0, -reach],
        [0, reach],
      ],
    ),
  ]
  return { heading: 'Wheel, mid-plane', marks, left: reach, right: reach, up: reach, down: reach }
}

/** The cut material of the upper half, from the root down to the bore. */
const cutArea = (root: readonly Flat[], body: readonly Flat[]): Flat[] => [...root, ...body]

function diameters(
  gearing: GearNumbers,
  { boreRadius, faceWidth, hubLength }: WheelBody,
  scale: number,
): Mark[] {
  const pair = pairProportions(gearing)
  const throated = gearing.wheelForm === 'throated'
  const edge = (scale * faceWidth) / 2
  const end = (scale * hubLength) / 2
  const rows: (readonly [name: string, radius: number, from: number])[] = [
    ['d_B', boreRadius, end],
    ['d_2', pair.referenceRadiusWheel, edge],
    ['d_a2', pair.throatRadiusWheel, throated ? 0 : edge],
    ...(throated ? [['d_e2', pair.outsideRadiusWheel, edge] as const] : []),
  ]
  return rows.flatMap(([name, radius, from], i) => {
    const half = scale * radius
    return upward(-half, half, end + FIRST + i * STEP, from, from, `${name} ø${sizeText(2 * radius)}`)
  })
}

export function wheelSectionPicture(gearing: GearNumbers, scale: number): PictureOf {
  const pair = pairProportions(gearing)
  const body = wheelBody(gearing)
  const profile = wheelProfile(gearing)
  const paper = onPaper(scale)
  const throated = gearing.wheelForm === 'throated'
  const outside = scale * (throated ? pair.outsideRadiusWheel : pair.throatRadiusWheel)
  const [edge, end, bore] = [body.faceWidth, body.hubLength, 2 * body.boreRadius].map(
    (size) => (scale * size) / 2,
  )
  const cut = cutArea(profile.root, profile.body)
  const reference = scale * pair.referenceRadiusWheel
  const tooth: Flat[] = [profile.root[0]!, ...profile.tip, profile.root.at(-1)!]
  const halves = [
    (points: readonly Flat[]) => points.map(paper),
    (points: readonly Flat[]) => mirrored(points).map(paper),
  ]
  const marks: Mark[] = [
    ...halves.flatMap((half, i) => [
      outline('thick', half(cut)),
      stroke('thick', half(tooth)),
      stroke('hatch', ...hatching([half(cut)], HATCH, i === 0)),
    ]),
    stroke(
      'thick',
      [
        [-end!, -bore!],
        [-end!, bore!],
      ],
      [
        [end!, -bore!],
        [end!, bore!],
      ],
    ),
    stroke('centre', [
      [-end! - CENTRE_PAST, 0],
      [end! + CENTRE_PAST, 0],
    ]),
    stroke(
      'centre',
      ...[-reference, reference].map((v): Flat[] => [
        [-edge! - 2, v],
        [edge! + 2, v],
      ]),
    ),
    ...across(-edge!, edge!, -outside - FIRST, -outside, -outside, `b_2 ${sizeText(body.faceWidth)}`),
    ...across(-end!, end!, outside + FIRST, bore!, bore!, sizeText(body.hubLength)),
    ...diameters(gearing, body, scale),
    ...(throated ? gorge(gearing, scale, edge!, outside) : []),
  ]
  const columns = throated ? 4 : 3
  return {
    heading: 'Wheel, along its axis',
    marks,
    left: end! + 20,
    right: end! + FIRST + columns * STEP,
    up: outside + FIRST + STEP,
    down: outside + FIRST + 3,
  }
}

/** The radius of the groove round the wheel, about the worm's axis. */
function gorge(gearing: GearNumbers, scale: number, edge: number, outside: number): Mark[] {
  const { gorgeRadius, centreDistance } = pairProportions(gearing)
  const y = -0.6 * Math.min(edge / scale, gorgeRadius)
  const v = centreDistance - Math.sqrt(gorgeRadius ** 2 - y ** 2)
  return pointer([scale * y, -scale * v], [-edge - 5, -outside - 3], `r_g2 ${sizeText(gorgeRadius)}`)
}
