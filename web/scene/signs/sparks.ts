/** Sparks where the bars leave the brushes: a steady glow, and small points in it. */
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DynamicDrawUsage,
  Group,
  Points,
  ShaderMaterial,
} from 'three'
import type { MotorLayout } from '../../../sim/pose/motor-layout.ts'
import type { Sign } from '../sign.ts'
import fragment from './sparks.frag.glsl?raw'
import { MOST_SPARKS, SPARK_STRIDE, type SparkField, newSparkField, writeSparks } from './spark-field.ts'
import vertex from './sparks.vert.glsl?raw'

const CORE = '#ffffff'
const RIM = '#e3f0ff'
/** Half of a brush's length, in lengths of the commutator, as the stage has it */
const LENGTH_HALF = 0.25
/** How far past the edge sparks are thrown [rad] */
const THROWN = 0.34
/** Over the bars, in radii, so that they are not half in the copper */
const OVER = 1.03
/** Diameters, in commutator radii */
const POINT = 0.2
const GLOW = 1.15
const GLOW_LIGHT = 1
const GLOWS = 3
const PER_EDGE = MOST_SPARKS + GLOWS
/** After the clear walls, which would grey them */
const ORDER = 9
const SEEDS = [20_261, 20_262] as const

export const sparkPaint = (): ShaderMaterial =>
  new ShaderMaterial({
    vertexShader: vertex,
    fragmentShader: fragment,
    uniforms: {
      core: { value: new Color(CORE) },
      rim: { value: new Color(RIM) },
      halfHeight: { value: 1 },
    },
    transparent: true,
    depthWrite: false,
  })

/** Columns of one point each, rewritten in every frame. */
interface SparkColumns {
  readonly position: BufferAttribute
  readonly size: BufferAttribute
  readonly light: BufferAttribute
}

function column(geometry: BufferGeometry, name: string, width: number): BufferAttribute {
  const attribute = new BufferAttribute(new Float32Array(2 * PER_EDGE * width), width)
  attribute.setUsage(DynamicDrawUsage)
  geometry.setAttribute(name, attribute)
  return attribute
}

/** Which points are glows never changes. */
function softColumn(): BufferAttribute {
  const soft = new Float32Array(2 * PER_EDGE)
  for (const edge of [0, 1]) soft.fill(1, edge * PER_EDGE, edge * PER_EDGE + GLOWS)
  return new BufferAttribute(soft, 1)
}

export interface SparkSign extends Sign {
  /** The worse index of the brushes; below 0.5 nothing is drawn. */
  setIndex(index: number): void
}

/** `canvas` - of the stage, for its height in pixels. */
export function sparkSign(
  motor: MotorLayout,
  material: ShaderMaterial,
  canvas: { readonly height: number },
): SparkSign {
  const geometry = new BufferGeometry()
  const columns: SparkColumns = {
    position: column(geometry, 'position', 3),
    size: column(geometry, 'size', 1),
    light: column(geometry, 'light', 1),
  }
  geometry.setAttribute('soft', softColumn())
  const points = new Points(geometry, material)
  points.frustumCulled = false
  points.renderOrder = ORDER
  const group = new Group()
  group.add(points)
  const fields = SEEDS.map(newSparkField)
  let index = 0
  return {
    object: group,
    setIndex(next) {
      index = next
    },
    paint({ frame, apart, caseState, reducedMotion }) {
      group.visible = index > 0 && apart === 0 && caseState !== 'closed'
      if (!group.visible) return
      const { halfHeight } = material.uniforms
      if (halfHeight !== undefined) halfHeight.value = canvas.height / 2
      for (let edge = 0; edge < fields.length; edge++) {
        const field = fields[edge]!
        writeSparks(field, index, reducedMotion ? 0 : frame.modelTime, frame.pace)
        writeEdge(columns, field, motor, edge, frame.sense)
      }
      columns.position.needsUpdate = true
      columns.size.needsUpdate = true
      columns.light.needsUpdate = true
    },
    dispose: () => geometry.dispose(),
  }
}

/** `edge` - 0 on the right brush, 1 on the left one. */
function writeEdge(
  { position, size, light }: SparkColumns,
  { points, count, size: pointSize, glow }: SparkField,
  motor: MotorLayout,
  edge: number,
  sense: 1 | -1,
): void {
  const { commutatorRadius: radius, commutatorFront: front, commutatorBack: back, brushHalf } = motor
  const middle = (front + back) / 2
  const half = LENGTH_HALF * (front - back)
  const from = edge * Math.PI + sense * brushHalf
  for (let n = 0; n < PER_EDGE; n++) {
    const at = edge * PER_EDGE + n
    const spark = n - GLOWS
    const soft = spark < 0
    const along = soft ? (2 * (n + 0.5)) / GLOWS - 1 : points[SPARK_STRIDE * spark]!
    const away = soft ? 0.1 : points[SPARK_STRIDE * spark + 1]!
    // Few fly far.
    const angle = from + sense * THROWN * away * away
    position.array[3 * at] = OVER * radius * Math.cos(angle)
    position.array[3 * at + 1] = OVER * radius * Math.sin(angle)
    position.array[3 * at + 2] = middle + along * half
    size.array[at] = radius * (soft ? GLOW * (0.6 + 0.4 * glow) : POINT * pointSize)
    light.array[at] = soft ? GLOW_LIGHT * glow : spark < count ? points[SPARK_STRIDE * spark + 2]! : 0
  }
}
