/**
 * The machine from above for a sheet of paper: worm and wheels cut in the middle plane of the wheels, so that the
 * teeth stand in the threads as they do, at rest, all marks at their pointers. x to the right, z down the paper.
 */
import type { Machine } from '../../sim/machine/machine.ts'
import { type Layout, machineLayout } from '../../sim/pose/layout.ts'
import type { Flat } from '../models/flat.ts'
import { type Drawing, type Mark, TEXT, label, outline, place, stroke } from '../models/marks.ts'
import { axialEdge, wormShape, wormSide } from '../models/worm-outline.ts'
import { BELOW, type Drawn, FINE, filled, named, rectangle, scaled } from './plan-parts.ts'
import { NAME_WIDTH, nameAside, wheelMarks } from './plan-wheels.ts'
import { thinned } from './thinned.ts'

/** A motor longer than so many radii is drawn shorter, with a break. */
const LONGEST_MOTOR = 0.8
/** Left free all round [mm on paper] */
const EDGE = 1.5

interface Room {
  readonly width: number
  readonly height: number
}

interface Bounds {
  /** Half of the width */
  readonly half: number
  readonly back: number
  readonly front: number
}

const motorBack = ({ motor }: Layout): number =>
  motor ? Math.max(motor.back, motor.front - LONGEST_MOTOR * motor.radius) : 0

function boundsOf(layout: Layout): Bounds {
  const { gears, shaft, motor, crank } = layout
  const wheel = gears.outsideRadiusWheel
  const behind = motor ? motorBack(layout) : crank ? crank.z - 2 * shaft.radius : shaft.back
  return {
    half: gears.centreDistance + wheel,
    back: Math.min(behind, -wheel),
    front: Math.max(wheel, shaft.front),
  }
}

/** Cut on both sides, where the teeth are; the turns of the thread between them as they are seen. */
function wormMarks({ gearing, scale }: Drawn): Mark[] {
  const shape = wormShape(gearing)
  const half = shape.threadLength / 2
  const right = axialEdge(shape, 0, -half, half).map(([z, r]): Flat => [r, z])
  const left = axialEdge(shape, Math.PI, -half, half).map(([z, r]): Flat => [-r, z])
  const around = [...right, ...left.toReversed()]
  const edges = wormSide(shape).edges.map((edge) => edge.map(([z, x]): Flat => [x, z]))
  return [
    outline('thick', thinned(scaled(scale, around), FINE)),
    stroke('thin', ...edges.map((edge) => thinned(scaled(scale, edge), FINE))),
  ]
}

function bearingMarks({ layout, scale }: Drawn, z: number): Mark[] {
  const { radius, bearingRadius, bearingWidth: width } = layout.shaft
  return [-1, 1].flatMap((side) => {
    const box = rectangle(side * radius, z - width / 2, side * bearingRadius, z + width / 2)
    const [a, b, c, d] = scaled(scale, box) as [Flat, Flat, Flat, Flat]
    return [outline('thick', [a, b, c, d]), stroke('thin', [a, c], [b, d])]
  })
}

/** Both sides of the shaft from one place to another */
const shaftPiece = ({ layout, scale }: Drawn, from: number, to: number): Mark => {
  const { radius } = layout.shaft
  return stroke(
    'thick',
    ...[-radius, radius].map((x) =>
      scaled(scale, [
        [x, from],
        [x, to],
      ]),
    ),
  )
}

function shaftMarks(drawn: Drawn): Mark[] {
  const { layout, gearing, scale } = drawn
  const { shaft: bar, motor, crank } = layout
  const half = wormShape(gearing).threadLength / 2
  const collarFront = bar.collar + bar.collarWidth
  const dash = 0.16 * layout.gears.tipRadiusWorm
  const end = scaled(scale, [
    [-bar.radius, bar.front],
    [bar.radius, bar.front],
  ])
  return [
    shaftPiece(drawn, motor ? motor.front : crank ? crank.z + bar.radius : bar.back, -half),
    shaftPiece(drawn, half, bar.collar),
    ...(collarFront < bar.front ? [shaftPiece(drawn, collarFront, bar.front)] : []),
    stroke('thick', end),
    outline('thick', scaled(scale, rectangle(-bar.collarRadius, bar.collar, bar.collarRadius, collarFront))),
    filled(scaled(scale, rectangle(-dash, bar.collar, dash, collarFront))),
    ...bearingMarks(drawn, bar.frontBearing),
    ...bearingMarks(drawn, bar.rearBearing),
    ...named(scale * bar.front, 'Worm'),
  ]
}

function turnerMarks(drawn: Drawn): Mark[] {
  const { layout, scale } = drawn
  const { motor, crank, shaft: bar } = layout
  if (crank) {
    const [back, front] = [crank.z - bar.radius, crank.z + bar.radius]
    return [
      outline('thick', scaled(scale, rectangle(-2 * bar.radius, back, crank.arm, front))),
      label(scale * bar.radius + NAME_WIDTH / 2, scale * front + 1.4 * TEXT, 'Crank'),
    ]
  }
  if (!motor) return []
  const [r, back, front] = [scale * motor.radius, scale * motorBack(layout), scale * motor.front]
  const wall = 2 * scale * motor.wall
  const across = (y: number): Flat[] => [
    [-r, y],
    [r, y],
  ]
  const broken = motorBack(layout) > motor.back
  const sides: Flat[][] = [
    [
      [-r, back],
      [-r, front],
    ],
    [
      [r, back],
      [r, front],
    ],
  ]
  return [
    stroke('thick', ...sides, across(front), ...(broken ? [] : [across(back)])),
    stroke('thin', across(front - wall), ...(broken ? [breakLine(r, back)] : [across(back + wall)])),
    label(0, (front + back) / 2 + TEXT / 3, 'Motor'),
  ]
}

/** A zigzag in the middle of a line says that the rest is left out. */
const breakLine = (r: number, y: number): Flat[] => [
  [-1.1 * r, y],
  [-0.12 * r, y],
  [-0.05 * r, y - 0.14 * r],
  [0.05 * r, y + 0.14 * r],
  [0.12 * r, y],
  [1.1 * r, y],
]

/** As large as the room lets it be. */
export function planPicture(machine: Machine, room: Room): Drawing {
  const layout = machineLayout(machine)
  const { half, back, front } = boundsOf(layout)
  const scale = Math.min(
    (room.width - 2 * EDGE) / (2 * half),
    (room.height - BELOW - 2 * EDGE) / (front - back),
  )
  const drawn: Drawn = { layout, gearing: machine.gearing, scale }
  const nameEnd = scale * layout.gears.centreDistance + nameAside(drawn) + NAME_WIDTH / 2
  const width = 2 * (Math.max(scale * half, nameEnd) + EDGE)
  const behind = layout.motor ? layout.motor.front : back
  const axis: Flat[] = [
    [0, scale * behind],
    [0, scale * layout.shaft.front],
  ]
  const marks = [
    ...wheelMarks(drawn, 'left'),
    ...wheelMarks(drawn, 'right'),
    ...wormMarks(drawn),
    ...shaftMarks(drawn),
    ...turnerMarks(drawn),
    stroke('centre', axis),
  ]
  return {
    title: 'Seen from above: the worm between its two wheels, all marks at their pointers',
    width,
    height: scale * (front - back) + BELOW + 2 * EDGE,
    marks: [place(width / 2, EDGE - scale * back, marks)],
  }
}
