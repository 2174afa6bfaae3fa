/** The 3D picture of one machine, filling its container. */
import { useEffect, useLayoutEffect, useRef } from 'react'
import { type MountedStage, mountStage } from './mount-stage.tsx'
import type { StageProps } from './stage-props.ts'

export function Stage(props: StageProps) {
  const container = useRef<HTMLDivElement>(null)
  const mounted = useRef<MountedStage | null>(null)
  const first = useRef(props)
  useEffect(() => {
    if (container.current === null) return
    const stage = mountStage(container.current, first.current)
    mounted.current = stage
    return () => {
      mounted.current = null
      stage?.dispose()
    }
  }, [])
  useLayoutEffect(() => mounted.current?.update(props))
  return <div ref={container} style={{ position: 'absolute', inset: 0 }} />
}
