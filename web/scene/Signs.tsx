/** Arrows for the sense of rotation and arcs for marks that are too fast to be followed. */
import { useMemo, useEffect } from 'react'
import { Color, DoubleSide, Matrix4, Quaternion, RingGeometry, ShaderMaterial, Vector3 } from 'three'
import type { Layout } from '../../sim/pose/layout.ts'
import { MARK_COLOURS, type Theme, colourIn } from '../material/substances.ts'
import blurFragment from './blur.frag.glsl?raw'
import blurVertex from './blur.vert.glsl?raw'
import { arrowArc } from './body/arrows.ts'
import { markField } from './body/wheel.ts'
import type { MovingParts, Turner } from './moving-parts.ts'
import { turnedY } from './solid.ts'

/** Turns flat things in x-y so that they lie round a wheel: x to the viewer, y to the right, z up. */
const ROUND_WHEEL = new Quaternion().setFromRotationMatrix(
  new Matrix4().makeBasis(new Vector3(0, 0, 1), new Vector3(1, 0, 0), new Vector3(0, 1, 0)),
)
/** The worm's mark points up: x up, y to the left, z to the viewer. */
const ROUND_WORM = new Quaternion().setFromRotationMatrix(
  new Matrix4().makeBasis(new Vector3(0, 1, 0), new Vector3(-1, 0, 0), new Vector3(0, 0, 1)),
)

/** Arrows are tilted by this towards the first view, so that they do not thin out [rad]. */
const TILT = 0.42
const HALF = 0.66
const WORM_HALF = 0.74
const WORM_TILT = 0.25
/** After the clear walls, which would grey them. */
const OVER_WALLS = 8

export interface SignsProps {
  readonly layout: Layout
  readonly theme: Theme
  readonly parts: MovingParts
}

export function Arrows({ layout, theme, parts }: SignsProps) {
  const { gears, shaft, wheel } = layout
  const geometries = useMemo(() => {
    const a = layout.gears.centreDistance
    const radius = layout.gears.outsideRadiusWheel + 0.12 * a + 3
    const width = 0.06 * a + 2
    const worm = 1.56 * layout.shaft.collarRadius
    const thick = 0.26 * layout.shaft.collarRadius
    return {
      left: arrowArc(radius, width, -Math.PI / 2 - HALF, -Math.PI / 2 + HALF * 0.7),
      right: arrowArc(radius, width, Math.PI / 2 - HALF, Math.PI / 2 + HALF * 0.7),
      worm: arrowArc(worm, thick, -Math.PI / 2 - WORM_HALF, -Math.PI / 2 + WORM_HALF * 0.7),
    }
  }, [layout])
  useEffect(() => () => Object.values(geometries).forEach((geometry) => geometry.dispose()), [geometries])
  const colours = MARK_COLOURS[theme]
  /** Under the collar, clear of its pointer and of the wheels' marks. */
  const front = shaft.collar + shaft.collarWidth / 2
  return (
    <>
      {(['left', 'right'] as const).map((side) => (
        <group
          key={side}
          position={[(side === 'left' ? -1 : 1) * gears.centreDistance, wheel.faceWidth * 0.35, 0]}
          rotation={[TILT, 0, 0]}
        >
          <group quaternion={ROUND_WHEEL}>
            <mesh
              ref={(mesh) => void (parts.arrows[side] = mesh)}
              geometry={geometries[side]}
              renderOrder={OVER_WALLS}
            >
              <meshBasicMaterial color={colours[side]} side={DoubleSide} toneMapped={false} transparent />
            </mesh>
          </group>
        </group>
      ))}
      <mesh
        ref={(mesh) => void (parts.arrows.worm = mesh)}
        geometry={geometries.worm}
        renderOrder={OVER_WALLS}
        position={[0, 0, front]}
        rotation={[WORM_TILT, 0, 0]}
      >
        <meshBasicMaterial color={colours.worm} side={DoubleSide} toneMapped={false} transparent />
      </mesh>
    </>
  )
}

function blurMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: blurVertex,
    fragmentShader: blurFragment,
    uniforms: { turned: { value: 0 }, colour: { value: new Color() } },
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
  })
}

/** Lies on the turning part itself, so that it begins at the mark wherever that is. */
export function BlurArc({ turner, layout, theme, parts }: SignsProps & { readonly turner: Turner }) {
  const material = useMemo(blurMaterial, [])
  const ring = useMemo(() => {
    if (turner === 'worm')
      return new RingGeometry(1.1 * layout.shaft.radius, 0.98 * layout.shaft.collarRadius, 64)
    const field = markField(layout)
    return new RingGeometry(field.inner, field.outer, 72)
  }, [layout, turner])
  useEffect(() => () => material.dispose(), [material])
  useEffect(() => () => ring.dispose(), [ring])
  useEffect(() => {
    const uniform = material.uniforms['colour']
    if (uniform !== undefined) (uniform.value as Color).set(MARK_COLOURS[theme][turner])
  }, [material, theme, turner])
  const lift: [number, number, number] =
    turner === 'worm'
      ? [0, 0, layout.shaft.collar + layout.shaft.collarWidth / 2 + 0.4]
      : [0, markField(layout).height + 0.4, 0]
  return (
    <mesh
      ref={(mesh) => {
        parts.blurs[turner] = mesh
        parts.blurMaterials[turner] = material
      }}
      geometry={ring}
      material={material}
      position={lift}
      quaternion={turner === 'worm' ? ROUND_WORM : ROUND_WHEEL}
      visible={false}
      renderOrder={2}
    />
  )
}

/** Drawn over the teeth when they pass too fast to be told apart: they would seem to stand or to run backwards. */
export function ToothVeil({ turner, layout, theme, parts }: SignsProps & { readonly turner: Turner }) {
  const geometry = useMemo(() => {
    const { rootRadiusWheel: root, outsideRadiusWheel: outside } = layout.gears
    const half = layout.wheel.faceWidth / 2 + 0.1
    const outline: [number, number][] = [
      [root, -half],
      [outside, -half],
      [outside, half],
      [root, half],
    ]
    return turnedY(outline, 72)
  }, [layout])
  useEffect(() => () => geometry.dispose(), [geometry])
  return (
    <mesh
      ref={(mesh) => void (parts.veils[turner] = mesh)}
      geometry={geometry}
      visible={false}
      renderOrder={1}
    >
      <meshBasicMaterial
        color={colourIn('nylonRecess', theme)}
        transparent
        opacity={0.5}
        depthWrite={false}
      />
    </mesh>
  )
}
