/**
 * One lit material for every solid substance. A vertex names its substance by number and the shader looks up how it
 * looks, so that a part of many substances is one draw call and a change of theme is a change of numbers.
 */
import {
  Color,
  type IUniform,
  MeshStandardMaterial,
  ShaderMaterial,
  Vector4,
  type WebGLProgramParametersWithUniforms,
} from 'three'
import bristleFragment from './bristle.frag.glsl?raw'
import bristleVertex from './bristle.vert.glsl?raw'
import studio from './studio.frag.glsl?raw'
import fragment from './substance.frag.glsl?raw'
import vertex from './substance.vert.glsl?raw'
import { SUBSTANCE_NAMES, type Theme, colourIn, substanceOf } from './substances.ts'

const LOOK_HERE = '#f0e442'
/** How strongly the studio shines. */
const STUDIO: Record<Theme, number> = { light: 0.55, dark: 0.42 }

export interface SubstanceMaterials {
  readonly plain: MeshStandardMaterial
  /** The same, lifted, for the part that is spoken of. */
  readonly selected: MeshStandardMaterial
  /** Bristles where every pixel counts. */
  readonly plainBristle: ShaderMaterial
  setTheme(theme: Theme): void
  setStripe(painted: boolean): void
  dispose(): void
}

interface SubstanceUniforms extends Record<string, IUniform> {
  readonly substanceColour: IUniform<Color[]>
  readonly substanceSurface: IUniform<Vector4[]>
  readonly stripeColour: IUniform<Color>
  readonly stripe: IUniform<number>
  readonly highlightColour: IUniform<Color>
  readonly studio: IUniform<number>
}

function substanceUniforms(): SubstanceUniforms {
  const names = SUBSTANCE_NAMES.map(substanceOf)
  return {
    substanceColour: { value: names.map(({ colour }) => new Color(colour)) },
    substanceSurface: {
      value: names.map((s) => new Vector4(s.metalness, s.roughness, s.unlit ? 1 : 0, s.striped ? 1 : 0)),
    },
    stripeColour: { value: new Color(substanceOf('wormPaint').colour) },
    stripe: { value: 1 },
    highlightColour: { value: new Color(LOOK_HERE) },
    studio: { value: STUDIO.light },
  }
}

const TONE_MAPPING = `#if defined( TONE_MAPPING )
  gl_FragColor.rgb = mix( toneMapping( gl_FragColor.rgb ), gl_FragColor.rgb, max( vSurface.z, onStripe() ) );
#endif`

/** In place of an environment texture, which costs the processor twice the whole rest of the picture. */
const STUDIO_LIGHT = `
  iblIrradiance += studioIrradiance( inverseTransformDirection( geometryNormal, viewMatrix ) );
  vec3 mirrored = normalize( mix( reflect( - geometryViewDir, geometryNormal ), geometryNormal, pow4( material.roughness ) ) );
  radiance += studioRadiance( inverseTransformDirection( mirrored, viewMatrix ), material.roughness );`

function patch(
  shader: WebGLProgramParametersWithUniforms,
  uniforms: SubstanceUniforms,
  highlight: number,
): void {
  Object.assign(shader.uniforms, uniforms, { highlight: { value: highlight } })
  shader.vertexShader = shader.vertexShader
    .replace('#include <common>', `#include <common>\n${vertex}`)
    .replace('#include <begin_vertex>', '#include <begin_vertex>\nchooseSubstance( position );')
  shader.fragmentShader = shader.fragmentShader
    .replace('#include <common>', `#include <common>\n${studio}\n${fragment}`)
    .replace('#include <color_fragment>', '#include <color_fragment>\ndiffuseColor.rgb *= vSubstanceColour;')
    .replace('#include <metalnessmap_fragment>', 'float metalnessFactor = vSurface.x;')
    .replace('#include <roughnessmap_fragment>', 'float roughnessFactor = vSurface.y;')
    .replace(
      '#include <opaque_fragment>',
      'outgoingLight = painted( outgoingLight, normal, normalize( vViewPosition ) );\n#include <opaque_fragment>',
    )
    .replace('#include <lights_fragment_maps>', STUDIO_LIGHT)
    .replace('#include <tonemapping_fragment>', TONE_MAPPING)
}

function substanceMaterial(uniforms: SubstanceUniforms, highlight: number): MeshStandardMaterial {
  const material = new MeshStandardMaterial()
  material.defines = { ...material.defines, SUBSTANCES: SUBSTANCE_NAMES.length }
  material.onBeforeCompile = (shader) => patch(shader, uniforms, highlight)
  material.customProgramCacheKey = () => 'substance'
  return material
}

export function createSubstanceMaterials(): SubstanceMaterials {
  const uniforms = substanceUniforms()
  const plain = substanceMaterial(uniforms, 0)
  const selected = substanceMaterial(uniforms, 1)
  const bristleColour = { value: new Color() }
  const plainBristle = new ShaderMaterial({
    vertexShader: bristleVertex,
    fragmentShader: bristleFragment,
    uniforms: { bristleColour },
  })
  return {
    plain,
    selected,
    plainBristle,
    setTheme(theme) {
      uniforms.studio.value = STUDIO[theme]
      SUBSTANCE_NAMES.forEach((name, index) =>
        uniforms.substanceColour.value[index]?.set(colourIn(name, theme)),
      )
      bristleColour.value.set(colourIn('bristle', theme))
    },
    setStripe(painted) {
      uniforms.stripe.value = painted ? 1 : 0
    },
    dispose() {
      plain.dispose()
      selected.dispose()
      plainBristle.dispose()
    },
  }
}
