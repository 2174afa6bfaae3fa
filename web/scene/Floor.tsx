/** Only what falls on the floor: a mapped shadow, or a soft patch where that is too dear. */
import { useEffect, useMemo } from 'react'
import type { Layout } from '../../sim/pose/layout.ts'
import type { Theme } from '../material/substances.ts'
import { contactShadowTexture } from './contact-shadow.ts'

const DARKNESS = { light: { mapped: 0.2, patch: 0.3 }, dark: { mapped: 0.5, patch: 0.62 } } as const

export function Floor({ layout, theme, mapped }: { layout: Layout; theme: Theme; mapped: boolean }) {
  const texture = useMemo(contactShadowTexture, [])
  useEffect(() => () => texture.dispose(), [texture])
  const { tray, floor, overallLength } = layout
  const [, , middle] = layout.target
  const flat = [-Math.PI / 2, 0, 0] as const
  if (mapped) {
    return (
      <mesh rotation={flat} position={[0, floor, middle]} receiveShadow>
        <planeGeometry args={[8 * overallLength, 8 * overallLength]} />
        <shadowMaterial opacity={DARKNESS[theme].mapped} />
      </mesh>
    )
  }
  const [width, length] = [3.1 * tray.halfWidth, 1.42 * (tray.front - tray.back)]
  return (
    <mesh rotation={flat} position={[0.16 * tray.halfWidth, floor, middle - 0.03 * length]} renderOrder={-1}>
      <planeGeometry args={[width, length]} />
      <meshBasicMaterial
        map={texture}
        color="#000000"
        transparent
        opacity={DARKNESS[theme].patch}
        depthWrite={false}
        toneMapped={false}
      />
    </mesh>
  )
}
