/**
 * One lit material for every solid substance. A vertex names its substance by number and the shader looks up how it
 * looks, so that a part of many substances is one draw call and a change of theme is a change of numbers.
 */
import {
  Color,
  type IUniform,
  MeshStandardMaterial,
  ShaderMaterial,
  Vector2,
  Vector4,
  type WebGLProgramParametersWithUniforms,
} from 'three'
import bristleFragment from './bristle.frag.glsl?raw'
import bristleVertex from './bristle.vert.glsl?raw'
import studio from './studio.frag.glsl?raw'
import fragment from './substance.frag.glsl?raw'
import vertex from './substance.vert.glsl?raw'
import { SUBSTANCE_NAMES, type Theme, colourIn, substanceOf } from './substances.ts'
import { LOOK_HERE } from './sign-colours.ts'

/** How strongly the studio shines. */
const STUDIO: Record<Theme, number> = { light: 0.55, dark: 0.42 }

export type Stretch = readonly [from: number, to: number]

const NOWHERE: Stretch = [1, -1]
export const EVERYWHERE: Stretch = [-1e6, 1e6]

/** How far what is not lit steps back, and into what. */
const FADED = 0.55
const FADED_INTO: Record<Theme, string> = { light: '#c2cbd2', dark: '#161c21' }
/** How much brighter than a part that is spoken of */
const LIT = 1.5

export interface SubstanceMaterials {
  readonly plain: MeshStandardMaterial
  /** The same, lifted, for the part that is spoken of. */
  readonly selected: MeshStandardMaterial
  /** The same, for where the light on the power's way stands. */
  readonly lit: MeshStandardMaterial
  /** Bristles where every pixel counts. */
  readonly plainBristle: ShaderMaterial
  setTheme(theme: Theme): void
  setStripe(painted: boolean): void
  /** Lights a stretch along z of what has the lit material [mm], and lets all else step back; null puts it out. */
  setLight(stretch: Stretch | null): void
  dispose(): void
}

interface SubstanceUniforms extends Record<string, IUniform> {
  readonly substanceColour: IUniform<Color[]>
  readonly substanceSurface: IUniform<Vector4[]>
  readonly stripeColour: IUniform<Color>
  readonly stripe: IUniform<number>
  readonly highlightColour: IUniform<Color>
  readonly faded: IUniform<number>
  readonly fadedColour: IUniform<Color>
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
    faded: { value: 0 },
    fadedColour: { value: new Color(FADED_INTO.light) },
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

/** What the materials do not share. */
interface OwnUniforms {
  readonly highlight: IUniform<number>
  readonly meant: IUniform<Vector2>
}

const ownUniforms = (highlight: number, meant: Stretch): OwnUniforms => ({
  highlight: { value: highlight },
  meant: { value: new Vector2(...meant) },
})

function patch(
  shader: WebGLProgramParametersWithUniforms,
  uniforms: SubstanceUniforms,
  own: OwnUniforms,
): void {
  Object.assign(shader.uniforms, uniforms, own)
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

function substanceMaterial(uniforms: SubstanceUniforms, own: OwnUniforms): MeshStandardMaterial {
  const material = new MeshStandardMaterial()
  material.defines = { ...material.defines, SUBSTANCES: SUBSTANCE_NAMES.length }
  material.onBeforeCompile = (shader) => patch(shader, uniforms, own)
  material.customProgramCacheKey = () => 'substance'
  return material
}

export function createSubstanceMaterials(): SubstanceMaterials {
  const uniforms = substanceUniforms()
  const plain = substanceMaterial(uniforms, ownUniforms(0, NOWHERE))
  const selected = substanceMaterial(uniforms, ownUniforms(1, EVERYWHERE))
  const light = ownUniforms(LIT, NOWHERE)
  const lit = substanceMaterial(uniforms, light)
  const bristleColour = { value: new Color() }
  let theme: Theme = 'light'
  /** Their own shader has no light in it. */
  const paintBristles = () =>
    bristleColour.value.set(colourIn('bristle', theme)).lerp(uniforms.fadedColour.value, uniforms.faded.value)
  const plainBristle = new ShaderMaterial({
    vertexShader: bristleVertex,
    fragmentShader: bristleFragment,
    uniforms: { bristleColour },
  })
  return {
    plain,
    selected,
    lit,
    plainBristle,
    setTheme(next) {
      theme = next
      uniforms.studio.value = STUDIO[theme]
      uniforms.fadedColour.value.set(FADED_INTO[theme])
      SUBSTANCE_NAMES.forEach((name, index) =>
        uniforms.substanceColour.value[index]?.set(colourIn(name, theme)),
      )
      paintBristles()
    },
    setStripe(painted) {
      uniforms.stripe.value = painted ? 1 : 0
    },
    setLight(stretch) {
      uniforms.faded.value = stretch === null ? 0 : FADED
      light.meant.value.set(...(stretch ?? NOWHERE))
      paintBristles()
    },
    dispose() {
      plain.dispose()
      selected.dispose()
      lit.dispose()
      plainBristle.dispose()
    },
  }
}
