/** One warm key from the upper left front, one cool rim from behind, a little sky; the studio in the material does the rest. */
import { useThree } from '@react-three/fiber'
import { useEffect } from 'react'
import type { DirectionalLight } from 'three'
import type { Layout } from '../../sim/pose/layout.ts'
import type { Theme } from '../material/substances.ts'

const STRENGTH = {
  light: { key: 1.55, rim: 0.7, rimColour: '#e8f2ff', sky: 0.24, ground: '#c9d2d8', exposure: 1 },
  dark: { key: 1.7, rim: 2, rimColour: '#a9d3ff', sky: 0.18, ground: '#202830', exposure: 0.9 },
} as const

/** A light looks at its target only once that knows where it is. */
const aim = (light: DirectionalLight) => light.target.updateMatrixWorld()

export interface LightsProps {
  readonly layout: Layout
  readonly theme: Theme
  /** Pixels across the shadow map; 0 is no shadow. */
  readonly shadowMap: number
}

export function Lights({ layout, theme, shadowMap }: LightsProps) {
  const renderer = useThree((state) => state.gl)
  const s = STRENGTH[theme]
  useEffect(() => {
    renderer.toneMappingExposure = s.exposure
  }, [renderer, s])
  const reach = Math.max(layout.tray.halfWidth * 1.7, layout.overallLength * 0.8)
  const [, , middle] = layout.target
  return (
    <>
      <directionalLight
        key={shadowMap}
        color="#fff6ea"
        intensity={s.key}
        position={[-0.9 * reach, 1.7 * reach, middle + 1.25 * reach]}
        castShadow={shadowMap > 0}
        shadow-mapSize={[shadowMap || 16, shadowMap || 16]}
        shadow-radius={shadowMap > 1024 ? 9 : 5}
        shadow-blurSamples={16}
        shadow-bias={-0.0008}
        shadow-normalBias={0.004 * reach}
        shadow-camera-left={-1.35 * reach}
        shadow-camera-right={1.35 * reach}
        shadow-camera-top={1.35 * reach}
        shadow-camera-bottom={-1.35 * reach}
        shadow-camera-near={0.1 * reach}
        shadow-camera-far={5 * reach}
        target-position={[0, layout.target[1], middle]}
        onUpdate={aim}
      />
      <directionalLight
        color={s.rimColour}
        intensity={s.rim}
        position={[1.3 * reach, 0.9 * reach, middle - 2 * reach]}
        target-position={[0, 0, middle]}
        onUpdate={aim}
      />
      <hemisphereLight color="#ffffff" groundColor={s.ground} intensity={s.sky} />
    </>
  )
}
