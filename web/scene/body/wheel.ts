/** A wheel with its output shaft, in its own frame about y, and the marks painted on it. */
import { type BufferGeometry, CylinderGeometry } from 'three'
import type { Side } from '../../../sim/machine/machine.ts'
import type { Layout } from '../../../sim/pose/layout.ts'
import { type Detail, roundSegments } from '../detail.ts'
import { type Piece, box, part, piece, rodY, turnedY } from '../solid.ts'

/** Where the paint goes: on the face when the teeth leave room for it, else on a disc that bridges the tooth spaces. */
export interface MarkField {
  readonly height: number
  readonly inner: number
  readonly outer: number
  readonly disc: number | null
}

export function markField(layout: Layout): MarkField {
  const { gears, output } = layout
  const face = gears.wheelWidth / 2
  const r2 = gears.referenceRadiusWheel
  const inner = hubRadius(layout) + 0.06 * r2
  const smallWheel = gears.rootRadiusWheel - inner < 0.42 * r2
  const thick = 0.12 * gears.wheelWidth
  return {
    height: smallWheel ? face + thick : face,
    inner: smallWheel ? 1.5 * output.shaftRadius : inner,
    outer: smallWheel ? 0.97 * gears.throatRadiusWheel : gears.rootRadiusWheel - 0.02 * r2,
    disc: smallWheel ? gears.throatRadiusWheel : null,
  }
}

const hubRadius = (layout: Layout): number =>
  Math.min(1.9 * layout.output.shaftRadius, 0.55 * layout.gears.rootRadiusWheel)

/** `teeth` - the toothed body, already turned so that it meets the worm at zero turns. */
export function wheelBody(layout: Layout, teeth: BufferGeometry, detail: Detail): BufferGeometry {
  const { gears, output } = layout
  const segments = roundSegments(detail)
  const face = gears.wheelWidth / 2
  const r = output.shaftRadius
  const hub = hubRadius(layout)
  const field = markField(layout)
  const rise = output.shaftTop - face
  const pieces: Piece[] = [
    piece('nylon', teeth),
    piece('barSteel', rodY(r, output.shaftBottom, output.shaftTop - 0.15 * r, segments)),
    piece('barSteel', new CylinderGeometry(0.8 * r, r, 0.15 * r, segments), { y: output.shaftTop - 0.075 * r }),
    piece('nylon', turnedY([[hub, face - 0.2], [0.94 * hub, face + 0.34 * rise], [r, face + 0.34 * rise]], segments)),
    piece('brightSteel', new CylinderGeometry(1.5 * r, 1.5 * r, 0.34 * rise, 6, 1), { y: face + 0.52 * rise }),
  ]
  if (field.disc !== null) {
    pieces.push(piece('nylonRecess', turnedY([[field.disc, face], [field.disc, field.height], [0, field.height]], segments)))
  }
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
      piece('ink', rodY(radius + line, height - 0.2, height + PAINT / 2, segments), { z: outer - radius - line }),
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
