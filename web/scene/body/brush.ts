/** A boot brush: a hub with rows of bristles, in its own frame about y; the bristles are instances of one. */
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

/** One row is a fan of bristles this wide [rad] at most. */
const ROW_WIDTH = 0.42

/** `firstRow` - angle of the first row about +y, from +x [rad] */
export function bristles(
  layout: Layout,
  firstRow: number,
  material: Material,
  detail: Detail,
): InstancedMesh {
  const { hubRadius, brushRadius, brushHeight, tufts } = layout.output
  const [levels, across, sides] = detail === 'high' ? [13, 12, 5] : [8, 7, 3]
  const length = brushRadius - 0.9 * hubRadius
  const thick = (detail === 'high' ? 0.011 : 0.019) * brushRadius
  const bristle = part([
    piece('bristle', new CylinderGeometry(thick, thick, length, sides, 1, true).rotateZ(-Math.PI / 2), {
      x: 0.9 * hubRadius + length / 2,
    }),
  ])
  const mesh = new InstancedMesh(bristle, material, tufts * levels * across)
  const random = scatter()
  const width = Math.min(ROW_WIDTH, (0.42 * 2 * Math.PI) / tufts)
  const matrix = new Matrix4()
  const turned = new Quaternion()
  let at = 0
  for (let row = 0; row < tufts; row++) {
    for (let level = 0; level < levels; level++) {
      for (let i = 0; i < across; i++) {
        const aboutY =
          firstRow + (row * 2 * Math.PI) / tufts + width * (i / (across - 1) - 0.5) + 0.035 * random()
        turned.setFromEuler(new Euler(0, aboutY, 0.07 * random(), 'YXZ'))
        const y = brushHeight * 0.9 * (level / (levels - 1) - 0.5)
        const stretch = 1 + 0.07 * random()
        mesh.setMatrixAt(at++, matrix.compose(new Vector3(0, y, 0), turned, new Vector3(stretch, 1, 1)))
      }
    }
  }
  return mesh
}
