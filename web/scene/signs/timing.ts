/** The space that both outputs sweep through, at the level of their rows; hatched where rows meet in it. */
import { BufferAttribute, BufferGeometry, Group, Mesh, ShaderMaterial, Color } from 'three'
import type { Layout } from '../../../sim/pose/layout.ts'
import { INK, WHITE } from '../../material/sign-colours.ts'
import type { Theme } from '../../material/substances.ts'
import type { TimingSign } from '../../../sim/pose/swept-overlap.ts'
import type { Sign } from '../sign.ts'
import hatchFragment from './hatch.frag.glsl?raw'
import hatchVertex from './hatch.vert.glsl?raw'
import { type LinePaint, linePaint, thickLines } from './thick-lines.ts'

const WIDTH = 2.6
const LINE: Record<Theme, string> = { light: INK, dark: '#f4f7f9' }
const KEYLINE: Record<Theme, string> = { light: WHITE, dark: INK }

/** Walls and lid of the space. */
function prism(outline: TimingSign['outline'], bottom: number, top: number): BufferGeometry {
  const n = outline.length
  const positions: number[] = []
  const indices: number[] = []
  for (const [x, z] of outline) positions.push(x, bottom, z, x, top, z)
  for (let i = 0; i < n; i++) {
    const [a, b] = [2 * i, 2 * ((i + 1) % n)]
    indices.push(a, b, b + 1, a, b + 1, a + 1)
    if (i > 1) for (const level of [0, 1]) indices.push(level, 2 * (i - 1) + level, 2 * i + level)
  }
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(positions), 3))
  return geometry.setIndex(indices)
}

/** Upper and lower edge, and the two corners where the sweeps cross. */
function writeEdges(out: Float32Array, outline: TimingSign['outline'], bottom: number, top: number): number {
  let at = 0
  const put = (x: number, y: number, z: number, u: number, v: number, w: number) => {
    out.set([x, y, z, u, v, w], 6 * at++)
  }
  outline.forEach(([x, z], i) => {
    const [u, w] = outline[(i + 1) % outline.length]!
    put(x, top, z, u, top, w)
    put(x, bottom, z, u, bottom, w)
  })
  for (const i of [0, outline.length / 2]) {
    const [x, z] = outline[i]!
    put(x, bottom, z, x, top, z)
  }
  return at
}

export interface OverlapPaint {
  readonly lines: LinePaint
  readonly hatch: ShaderMaterial
  dispose(): void
}

export function overlapPaint(theme: Theme): OverlapPaint {
  const lines = linePaint(LINE[theme], KEYLINE[theme])
  const hatch = new ShaderMaterial({
    vertexShader: hatchVertex,
    fragmentShader: hatchFragment,
    uniforms: { colour: { value: new Color(LINE[theme]) }, pitch: { value: 1 }, hatched: { value: 0 } },
    transparent: true,
    depthWrite: false,
  })
  return {
    lines,
    hatch,
    dispose() {
      lines.dispose()
      hatch.dispose()
    },
  }
}

export function overlapSign(layout: Layout, { outline, clash }: TimingSign, paint: OverlapPaint): Sign {
  const { brush, brushHeight, brushRadius } = layout.output
  const [bottom, top] = [brush - 0.52 * brushHeight, brush + 0.52 * brushHeight]
  const lines = thickLines(2 * outline.length + 2, paint.lines)
  const edges = writeEdges(lines.segments, outline, bottom, top)
  lines.setWidth(WIDTH)
  lines.show(edges)
  const geometry = prism(outline, bottom, top)
  const material = paint.hatch
  const { pitch, hatched } = material.uniforms
  if (pitch !== undefined) pitch.value = brushRadius / 14
  if (hatched !== undefined) hatched.value = clash ? 1 : 0
  const walls = new Mesh(geometry, material)
  walls.renderOrder = 8
  const group = new Group()
  group.add(walls, lines.group)
  return {
    object: group,
    paint({ apart }) {
      group.visible = apart === 0
    },
    dispose() {
      geometry.dispose()
      lines.dispose()
    },
  }
}
