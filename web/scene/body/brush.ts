/** An output: a hub with rows of bristles or a few blades, in its own frame about y; each kind are instances of one. */
import {
  type BufferGeometry,
  CylinderGeometry,
  Euler,
  InstancedMesh,
  type Material,
  Matrix4,
  Quaternion,
  Vector3,
} from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import { type Detail, roundSegments } from '../detail.ts'
import { plate, polygon } from '../plate.ts'
import { part, piece, rodY, turnedY } from '../solid.ts'

export function brushHub(layout: Layout, detail: Detail): BufferGeometry {
  const { hubRadius: radius, brushHeight: height, shaftRadius } = layout.output
  const segments = roundSegments(detail)
  const half = height / 2
  const outline: [number, number][] = [
    [0, -half],
    [0.92 * radius, -half],
    [radius, -0.92 * half],
    [radius, 0.92 * half],
    [0.92 * radius, half],
    [0, half],
  ]
  return part([
    piece('plastic', turnedY(outline, segments)),
    piece('barSteel', rodY(1.6 * shaftRadius, half, half + 0.12 * height, 6)),
  ])
}

/** Even, repeatable scatter in -0.5..0.5: Park and Miller's minimal standard generator. */
function scatter(): () => number {
  let seed = 7
  return () => {
    seed = (seed * 16807) % 2147483647
    return seed / 2147483647 - 0.5
  }
}

/** So few rows are blades. */
const MOST_BLADES = 3
export const hasBlades = ({ output }: Layout): boolean => output.tufts <= MOST_BLADES

/** Angle about +y, from +x, of a row at the angle `chi` from -x on towards the viewer: half a turn further. */
const aboutYOfRow = (chi: number, row: number, count: number): number =>
  Math.PI + chi + (row * 2 * Math.PI) / count

/** Blades that taper to a rounded tip, `tuftThickness` thick. */
function blades({ output }: Layout, firstRow: number, material: Material, detail: Detail): InstancedMesh {
  const { hubRadius, brushRadius, brushHeight, tufts, tuftThickness } = output
  const [foot, tip] = [0.42 * brushHeight, 0.27 * brushHeight]
  const round = Math.min(tip, 0.2 * (brushRadius - hubRadius))
  const corner = detail === 'high' ? 8 : 4
  const upper = Array.from({ length: corner + 1 }, (_, i): [number, number] => {
    const angle = (i / corner) * (Math.PI / 2)
    return [brushRadius - round * (1 - Math.cos(angle)), tip - round * (1 - Math.sin(angle))]
  })
  upper.push([0.9 * hubRadius, foot])
  const lower = upper.map(([x, y]): [number, number] => [x, -y]).reverse()
  const outline = [...upper, ...lower]
  const blade = part([piece('collar', plate(polygon(outline), -tuftThickness / 2, tuftThickness, corner))])
  const mesh = new InstancedMesh(blade, material, tufts)
  for (let row = 0; row < tufts; row++)
    mesh.setMatrixAt(row, new Matrix4().makeRotationY(aboutYOfRow(firstRow, row, tufts)))
  return mesh
}

/** Straight rows, `tuftThickness` thick, that no bristle leaves. */
function bristleRows(
  { output }: Layout,
  firstRow: number,
  material: Material,
  detail: Detail,
): InstancedMesh {
  const { hubRadius, brushRadius, brushHeight, tufts, tuftThickness } = output
  const high = detail === 'high'
  const [levels, sides] = high ? [20, 5] : [11, 3]
  const length = brushRadius - 0.9 * hubRadius
  const thick = Math.min((high ? 0.011 : 0.017) * brushRadius, tuftThickness / 4)
  const across = Math.min(high ? 12 : 7, Math.max(2, Math.round(tuftThickness / (2.2 * thick))))
  const bristle = part([
    piece('bristle', new CylinderGeometry(thick, thick, length, sides, 1, true).rotateZ(-Math.PI / 2), {
      x: 0.9 * hubRadius + length / 2,
    }),
  ])
  const mesh = new InstancedMesh(bristle, material, tufts * levels * across)
  const random = scatter()
  const [inside, level] = [tuftThickness - 2 * thick, (0.9 * brushHeight) / (levels - 1)]
  const [matrix, turned, place, size] = [new Matrix4(), new Quaternion(), new Vector3(), new Vector3(1, 1, 1)]
  let at = 0
  for (let row = 0; row < tufts; row++) {
    for (let j = 0; j < levels; j++) {
      for (let i = 0; i < across; i++) {
        const off = inside * (i / (across - 1) - 0.5)
        // leans towards the middle of its row, by what lies between
        const lean = ((0.4 * inside) / across / brushRadius) * random()
        const aboutY = aboutYOfRow(firstRow, row, tufts)
        turned.setFromEuler(new Euler(0, aboutY + lean, 0.07 * random(), 'YXZ'))
        place.set(
          off * Math.sin(aboutY),
          level * (j - (levels - 1) / 2 + 0.5 * random()),
          off * Math.cos(aboutY),
        )
        size.x = 1 - 0.06 * (random() + 0.5)
        mesh.setMatrixAt(at++, matrix.compose(place, turned, size))
      }
    }
  }
  return mesh
}

/** What sweeps; `firstRow` - angle of the first row as the layout tells it [rad] */
export const sweepers = (
  layout: Layout,
  firstRow: number,
  material: Material,
  detail: Detail,
): InstancedMesh =>
  hasBlades(layout)
    ? blades(layout, firstRow, material, detail)
    : bristleRows(layout, firstRow, material, detail)
