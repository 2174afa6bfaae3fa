/**
 * Lines as thick as a pen's, with a keyline, that are rewritten in every frame. Where a body hides them they
 * shine through it, thinner.
 */
import { DynamicDrawUsage, Group } from 'three'
import { LineMaterial } from 'three/addons/lines/LineMaterial.js'
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js'
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js'

export interface ThickLines {
  readonly group: Group
  /** x, y, z of the start and of the end of each segment [mm] */
  readonly segments: Float32Array
  /** Shows the first so many segments. */
  show(count: number): void
  /** [px] */
  setWidth(width: number): void
  dispose(): void
}

interface Stroke {
  readonly colour: string
  /** Part of the width, and what is added on both sides together [px] */
  readonly part: number
  readonly wider: number
  readonly through: boolean
}

const KEYLINE = 2.4
const HIDDEN_PART = 0.72
/** Signs come after the clear walls, which would grey them. */
const FIRST_ORDER = 9

const strokesOf = (colour: string, keyline: string): readonly Stroke[] => [
  { colour: keyline, part: HIDDEN_PART, wider: KEYLINE / 2, through: true },
  { colour, part: HIDDEN_PART, wider: 0, through: true },
  { colour: keyline, part: 1, wider: KEYLINE, through: false },
  { colour, part: 1, wider: 0, through: false },
]

function strokeMaterial({ colour, through }: Stroke): LineMaterial {
  const material = new LineMaterial({ color: colour, transparent: true, depthTest: !through })
  material.depthWrite = false
  material.toneMapped = false
  // A line on a flank faces the eye, so half of it would lie inside the flank.
  material.polygonOffset = true
  material.polygonOffsetFactor = -2
  material.polygonOffsetUnits = -24
  return material
}

export interface LinePaint {
  readonly strokes: readonly Stroke[]
  readonly materials: readonly LineMaterial[]
  dispose(): void
}

export function linePaint(colour: string, keyline: string): LinePaint {
  const strokes = strokesOf(colour, keyline)
  const materials = strokes.map(strokeMaterial)
  return {
    strokes,
    materials,
    dispose() {
      for (const material of materials) material.dispose()
    },
  }
}

export function thickLines(most: number, { strokes, materials }: LinePaint): ThickLines {
  const group = new Group()
  const segments = new Float32Array(6 * most)
  const geometry = new LineSegmentsGeometry().setPositions(segments)
  const { data } = geometry.getAttribute('instanceStart') as unknown as { data: InterleavedData }
  data.setUsage(DynamicDrawUsage)
  materials.forEach((material, at) => {
    const lines = new LineSegments2(geometry, material)
    lines.frustumCulled = false
    lines.renderOrder = FIRST_ORDER + at
    group.add(lines)
  })
  return {
    group,
    segments: data.array,
    show(count) {
      geometry.instanceCount = count
      group.visible = count > 0
      data.needsUpdate = true
    },
    setWidth(width) {
      for (let at = 0; at < materials.length; at++)
        materials[at]!.linewidth = width * strokes[at]!.part + strokes[at]!.wider
    },
    dispose: () => geometry.dispose(),
  }
}

/** What is used of the buffer behind both ends of the segments. */
interface InterleavedData {
  readonly array: Float32Array
  needsUpdate: boolean
  setUsage(usage: number): void
}
