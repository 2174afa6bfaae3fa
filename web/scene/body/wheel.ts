/** A wheel with its output shaft, in its own frame about y, and the marks painted on it. */
import { type BufferGeometry, CylinderGeometry } from 'three'
import type { Side } from '../../../sim/gear/gear-numbers.ts'
import type { Layout } from '../../../sim/pose/layout.ts'
import { type Detail, roundSegments } from '../detail.ts'
import { type Piece, box, part, piece, rodY, turnedY } from '../solid.ts'

/** Where the paint goes: on the face as far as the teeth begin, or on a disc over the teeth where they leave no room. */
export interface MarkField {
  readonly height: number
  readonly inner: number
  readonly outer: number
  readonly overTeeth: boolean
}

export function markField(layout: Layout): MarkField {
  const { gears, wheel, output } = layout
  const face = wheel.faceWidth / 2
  const inner = 1.06 * wheel.hubRadius
  const outer = 0.985 * gears.rootRadiusWheel
  const overTeeth = outer - inner < 0.38 * gears.referenceRadiusWheel
  if (!overTeeth) return { height: face, inner, outer, overTeeth }
  const disc = 0.97 * gears.throatRadiusWheel
  return {
    height: wheel.hubLength / 2 + 0.03 * wheel.faceWidth,
    inner: 1.5 * output.shaftRadius,
    outer: disc,
    overTeeth,
  }
}

/** `teeth` - the toothed body, already turned so that it meets the worm at zero turns. */
export function wheelBody(layout: Layout, teeth: BufferGeometry, detail: Detail): BufferGeometry {
  const { gears, wheel, output } = layout
  const segments = roundSegments(detail)
  const r = output.shaftRadius
  const { height, outer, overTeeth } = markField(layout)
  const hubTop = Math.max(wheel.hubLength / 2, height)
  const rise = output.shaftTop - hubTop
  const rim = overTeeth ? gears.throatRadiusWheel : outer
  const from = overTeeth ? wheel.faceWidth / 2 : height - 0.1
  const disc: [number, number][] = [
    [rim, from],
    [rim, height - 0.04],
    [0, height - 0.04],
  ]
  const boss: [number, number][] = [
    [1.75 * r, hubTop - 0.1],
    [1.65 * r, hubTop + 0.3 * rise],
    [0, hubTop + 0.3 * rise],
  ]
  const pieces: Piece[] = [
    piece('nylon', teeth),
    piece('nylonRecess', turnedY(disc, segments)),
    piece('nylon', turnedY(boss, segments)),
    piece('barSteel', rodY(r, output.shaftBottom, output.shaftTop - 0.15 * r, segments)),
    piece('barSteel', new CylinderGeometry(0.8 * r, r, 0.15 * r, segments), {
      y: output.shaftTop - 0.075 * r,
    }),
    piece('brightSteel', new CylinderGeometry(1.45 * r, 1.45 * r, 0.34 * rise, 6, 1), {
      y: hubTop + 0.47 * rise,
    }),
  ]
  return part(pieces)
}

/** Paint lies this high over the face, with its keyline half as high [mm]. */
const PAINT = 0.5

/** Left: two dashes; right: a dot. Both point to +z, at the pointer, when the wheel is at zero. */
export function wheelMarks(layout: Layout, side: Side, detail: Detail): BufferGeometry {
  const { inner, outer, height } = markField(layout)
  const length = outer - inner
  const middle = (inner + outer) / 2
  const line = Math.max(0.35, 0.05 * length)
  if (side === 'right') {
    const radius = Math.min(length / 2, 0.36 * outer) - line
    const segments = roundSegments(detail)
    return part([
      piece('ink', rodY(radius + line, height - 0.2, height + PAINT / 2, segments), {
        z: outer - radius - line,
      }),
      piece('rightPaint', rodY(radius, height, height + PAINT, segments), { z: outer - radius - line }),
    ])
  }
  const width = Math.min(0.34 * length, 0.17 * outer)
  const dashes = [-1, 1].flatMap((way) => {
    const x = way * (0.5 * width + Math.max(0.42 * width, 1.4 * line))
    return [
      piece('ink', box(width + 2 * line, PAINT, length), { x, y: height, z: middle }),
      piece('leftPaint', box(width, PAINT, length - 2 * line), { x, y: height + PAINT / 2, z: middle }),
    ]
  })
  return part(dashes)
}
