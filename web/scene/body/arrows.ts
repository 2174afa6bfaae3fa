/** Arrows for the sense of rotation: flat arcs outside the rim, drawn for a positive turn about their axis. */
import { type BufferGeometry, Shape, ShapeGeometry } from 'three'

/**
 * An arc in x-y about the origin, its head at the anticlockwise end; angles from +x [rad].
 *
 * radius - of the arc's middle; width - of the band; from, to - where it begins and where its head begins
 */
export function arrowArc(radius: number, width: number, from: number, to: number): BufferGeometry {
  const head = (2.6 * width) / radius
  const shape = new Shape()
  shape.absarc(0, 0, radius + width / 2, from, to, false)
  const at = (r: number, angle: number): [number, number] => [r * Math.cos(angle), r * Math.sin(angle)]
  shape.lineTo(...at(radius + 1.35 * width, to))
  shape.lineTo(...at(radius, to + head))
  shape.lineTo(...at(radius - 1.35 * width, to))
  shape.absarc(0, 0, radius - width / 2, to, from, true)
  shape.closePath()
  return new ShapeGeometry(shape, 28)
}
