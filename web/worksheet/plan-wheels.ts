/** The two wheels from above, cut in their middle plane, with their marks, pointers and names. */
import { farSidePhase } from '../../sim/gear/wheel-motion.ts'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import type { Flat } from '../models/flat.ts'
import { type Mark, type Weight, circle, outline, place } from '../models/marks.ts'
import { wheelTeeth } from '../models/wheel-outline.ts'
import { type Drawn, FINE, filled, named, rectangle, scaled } from './plan-parts.ts'
import { thinned } from './thinned.ts'

/** Room for "Right wheel", and from it to the shaft [mm on paper] */
export const NAME_WIDTH = 16
const NAME_CLEAR = 1.2
/** Teeth lower than this on paper are drawn with thin lines [mm]. */
const LOW_TEETH = 1.6

/** The right wheel's teeth about its axis, the worm to its left. */
const rightTeeth = (gearing: GearNumbers): Flat[] => wheelTeeth(gearing).map(([z, x]): Flat => [x, z])

/** The left wheel's: the same wheel, turned until it stands in the thread on its side, seen from above. */
function leftTeeth({ layout, gearing }: Drawn): Flat[] {
  const phase = farSidePhase(layout.starts, layout.teeth)
  const [c, s] = [Math.cos(phase), Math.sin(phase)]
  return rightTeeth(gearing).map(([x, z]): Flat => [c * x + s * z, c * z - s * x])
}

/** How far the name of a wheel moves outwards, to stay beside the shaft and what sits on it. */
export function nameAside({ layout, scale }: Drawn): number {
  const { gears, shaft } = layout
  const nearest = scale * Math.max(shaft.collarRadius, shaft.bearingRadius) + NAME_CLEAR + NAME_WIDTH / 2
  return Math.max(0, nearest - scale * gears.centreDistance)
}

function wheelMark(side: 'left' | 'right', r: number): Mark[] {
  if (side === 'left')
    return [-0.13, 0.03].map((x) => filled(rectangle(x * r, 0.58 * r, (x + 0.1) * r, 0.92 * r)))
  const dot = Array.from({ length: 48 }, (_, i): Flat => {
    const turn = (Math.PI * i) / 24
    return [0.13 * r * Math.cos(turn), 0.76 * r + 0.13 * r * Math.sin(turn)]
  })
  return [filled(dot)]
}

export function wheelMarks(drawn: Drawn, side: 'left' | 'right'): Mark[] {
  const { layout, gearing, scale } = drawn
  const { gears, output } = layout
  const teeth = side === 'left' ? leftTeeth(drawn) : rightTeeth(gearing)
  const weight: Weight =
    scale * (gears.throatRadiusWheel - gears.rootRadiusWheel) < LOW_TEETH ? 'thin' : 'thick'
  const r = scale * gears.referenceRadiusWheel
  const outwards = side === 'left' ? -1 : 1
  const name = side === 'left' ? 'Left wheel' : 'Right wheel'
  const marks: Mark[] = [
    outline(weight, thinned(scaled(scale, teeth), FINE)),
    circle('centre', r),
    circle('thin', scale * layout.wheel.hubRadius),
    circle('thick', scale * output.shaftRadius),
    ...wheelMark(side, r),
    ...named(scale * gears.outsideRadiusWheel, name, outwards * nameAside(drawn)),
  ]
  return [place(outwards * scale * gears.centreDistance, 0, marks)]
}
