/**
 * Marking compound: where the worm bears on the wheels' driving flanks over a whole mesh cycle, rubbed off its thread
 * onto every tooth.
 */
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  Group,
  InstancedMesh,
  Matrix4,
  ShaderMaterial,
} from 'three'
import { type BearingPattern, COMPOUND_FILM } from '../../../sim/gear/bearing-pattern.ts'
import type { GearNumbers, Side } from '../../../sim/gear/gear-numbers.ts'
import { wheelReferenceRadius } from '../../../sim/gear/proportions.ts'
import type { Flank } from '../../../sim/gear/wheel-flank.ts'
import { farSidePhase, handSign } from '../../../sim/gear/wheel-motion.ts'
import { PART_NAMES } from '../../../sim/pose/parts.ts'
import { COMPOUND } from '../../material/compound.ts'
import { type FlankPatterns, patternOf } from '../../shape-work/flank-patterns.ts'
import type { Sign } from '../sign.ts'
import fragment from './compound.frag.glsl?raw'
import vertex from './compound.vert.glsl?raw'

/** The coat lies this high over the drawn flank [mm]. */
const LIFT = 0.02
/** Gaps beyond this many films are all alike; between them the shader goes evenly. */
const FURTHEST = 4

/** One flank, in the frame of the wheel; `turned` about +y, as the wheel was made [rad]. */
function flankPatch(pattern: BearingPattern, turned: number, towardsSpace: 1 | -1): BufferGeometry {
  const { planes, points, y, radius, chi, gap } = pattern
  const positions = new Float32Array(3 * planes * points)
  const indices: number[] = []
  for (let j = 0; j < planes; j++) {
    for (let i = 0; i < points; i++) {
      const k = j * points + i
      const angle = chi[k]! + turned + (towardsSpace * LIFT) / radius[k]!
      positions[3 * k] = -radius[k]! * Math.cos(angle)
      positions[3 * k + 1] = y[j]!
      positions[3 * k + 2] = radius[k]! * Math.sin(angle)
      if (i + 1 === points || j + 1 === planes) continue
      indices.push(k, k + 1, k + points, k + 1, k + points + 1, k + points)
    }
  }
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  const films = gap.map((each) => Math.min(FURTHEST, each / COMPOUND_FILM))
  geometry.setAttribute('gap', new BufferAttribute(films, 1))
  geometry.setIndex(indices)
  geometry.computeVertexNormals()
  return geometry
}

export const coatMaterial = (): ShaderMaterial =>
  new ShaderMaterial({
    vertexShader: vertex,
    fragmentShader: fragment,
    uniforms: { colour: { value: new Color(COMPOUND) } },
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
    polygonOffset: true,
    polygonOffsetFactor: -2,
    polygonOffsetUnits: -8,
  })

function coatedTeeth(geometry: BufferGeometry, material: ShaderMaterial, teeth: number): InstancedMesh {
  const mesh = new InstancedMesh(geometry, material, teeth)
  for (let tooth = 0; tooth < teeth; tooth++)
    mesh.setMatrixAt(tooth, new Matrix4().makeRotationY((2 * Math.PI * tooth) / teeth))
  mesh.frustumCulled = false
  mesh.renderOrder = 1
  return mesh
}

const SIDES = [
  { side: 'left', part: PART_NAMES.indexOf('leftWheel') },
  { side: 'right', part: PART_NAMES.indexOf('rightWheel') },
] as const satisfies readonly { side: Side; part: number }[]

/** `sense` - of the worm about +z, which chooses the flanks that drive. */
export function compoundSign(
  gearing: GearNumbers,
  patterns: FlankPatterns,
  sense: 1 | -1,
  material: ShaderMaterial,
): Sign {
  const { wormStarts: z1, wheelTeeth: z2, axialModule } = gearing
  const sigma: Flank = sense * handSign(gearing.hand) > 0 ? -1 : 1
  const group = new Group()
  const thinned = gearing.thinned === 'wheel' ? gearing.backlash / 2 : 0
  const play = thinned / wheelReferenceRadius(axialModule, z2)
  const wheels = SIDES.map(({ side }) => {
    const own = side === 'left' ? -1 : 1
    const turned = own * sigma * play + (side === 'left' ? farSidePhase(z1, z2) : 0)
    const pattern = patternOf(patterns, side, sigma)
    const towardsSpace = own * sigma > 0 ? -1 : 1
    const wheel = coatedTeeth(flankPatch(pattern, turned, towardsSpace), material, z2)
    group.add(wheel)
    return wheel
  })
  return {
    object: group,
    paint({ parts }) {
      for (let n = 0; n < SIDES.length; n++) {
        const part = parts.groups[SIDES[n]!.part]
        const wheel = wheels[n]!
        if (part === null || part === undefined) continue
        wheel.position.copy(part.position)
        wheel.quaternion.copy(part.quaternion)
      }
    },
    dispose() {
      for (const wheel of wheels) {
        wheel.geometry.dispose()
        wheel.dispose()
      }
    },
  }
}
