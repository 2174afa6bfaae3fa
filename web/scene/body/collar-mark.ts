/** The worm's mark: one dash across the front collar, pointing up at zero, with a white keyline. */
import type { BufferGeometry } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import { box, part, piece } from '../solid.ts'

/** The paint is this thick [mm]. */
const PAINT = 0.5

export function collarMark(layout: Layout): BufferGeometry {
  const { shaft } = layout
  const inner = 1.12 * shaft.radius
  const outer = 0.98 * shaft.collarRadius
  const width = 0.36 * shaft.collarRadius
  const line = 0.16 * width
  const z = shaft.collar + shaft.collarWidth / 2
  const y = (inner + outer) / 2
  return part([
    piece('white', box(width + 2 * line, outer - inner, PAINT), { y, z }),
    piece('wormPaint', box(width, outer - inner - 2 * line, PAINT), { y, z: z + PAINT / 2 }),
    piece('white', box(width + 2 * line, PAINT, 0.98 * shaft.collarWidth), {
      y: shaft.collarRadius,
      z: shaft.collar,
    }),
    piece('wormPaint', box(width, PAINT, 0.98 * shaft.collarWidth), {
      y: shaft.collarRadius + 0.3,
      z: shaft.collar,
    }),
  ])
}
