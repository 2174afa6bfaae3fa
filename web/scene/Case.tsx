/** The case: closed, or only its far walls and edges, or off. */
import { useEffect, useMemo } from 'react'
import { BackSide, Color, ShaderMaterial, Vector4 } from 'three'
import type { SubstanceMaterials } from '../material/materials.ts'
import type { Theme } from '../material/substances.ts'
import edgeFragment from './case-edge.frag.glsl?raw'
import edgeVertex from './case-edge.vert.glsl?raw'
import type { MachineBodies } from './machine-bodies.ts'
import type { CaseState } from './stage-props.ts'

const WALL = {
  light: { colour: '#b4c6d2', opacity: 0.26 },
  dark: { colour: '#7fa0b4', opacity: 0.1 },
} as const
const EDGE = {
  light: { colour: '#7d8c97', opacity: 0.62 },
  dark: { colour: '#9fb4c0', opacity: 0.55 },
} as const

function edgeMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: edgeVertex,
    fragmentShader: edgeFragment,
    uniforms: {
      colour: { value: new Color() },
      opacity: { value: 1 },
      plan: { value: new Vector4() },
      rim: { value: 0 },
    },
    transparent: true,
    depthWrite: false,
  })
}

export interface CaseProps {
  readonly bodies: MachineBodies
  readonly materials: SubstanceMaterials
  readonly theme: Theme
  readonly state: CaseState
  readonly selected: boolean
}

export function Case({ bodies, materials, theme, state, selected }: CaseProps) {
  const edges = useMemo(edgeMaterial, [])
  useEffect(() => () => edges.dispose(), [edges])
  useEffect(() => {
    const { halfWidth, front, back } = bodies.layout.tray
    const { uniforms } = edges
    const set = (name: string, value: unknown) => void (uniforms[name] && (uniforms[name].value = value))
    set('colour', new Color(EDGE[theme].colour))
    set('opacity', EDGE[theme].opacity)
    set('plan', new Vector4(0, (front + back) / 2, halfWidth, (front - back) / 2))
    set('rim', (bodies.layout.case.top + bodies.layout.case.bottom) / 2)
  }, [edges, bodies, theme])
  const shell = bodies.solids.get('case')
  return (
    <>
      {shell !== undefined && (
        <mesh
          geometry={shell}
          material={selected ? materials.selected : materials.plain}
          visible={state === 'closed'}
          castShadow
          receiveShadow
        />
      )}
      <mesh geometry={bodies.clearWalls} visible={state === 'clear'} renderOrder={5}>
        <meshBasicMaterial
          color={WALL[theme].colour}
          opacity={WALL[theme].opacity}
          transparent
          side={BackSide}
          depthWrite={false}
          toneMapped={false}
        />
      </mesh>
      <mesh geometry={bodies.caseEdges} material={edges} visible={state === 'clear'} renderOrder={7} />
    </>
  )
}
