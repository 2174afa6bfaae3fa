/** The 3D picture of one machine, filling its container. */
import { type CSSProperties, useEffect, useLayoutEffect, useRef } from 'react'
import { type MountedStage, mountStage } from './mount-stage.tsx'
import type { StageProps } from './stage-props.ts'
import { fillsCanvas } from './views.ts'

/** Over this many pixels a picture fades that runs under words. */
const FADE = 56
/** Below the middle of what stands on top it may begin [px] */
const UNDER = 20

/** A close-up fills the canvas, so it fades where words stand on it; seen from the top only its far end does. */
function fading({ view, lit, freeArea }: StageProps): CSSProperties | undefined {
  const fills = fillsCanvas(view.name) || view.name === 'motor' || lit !== null
  if (!fills && view.name !== 'top') return undefined
  const { top } = freeArea
  const left = fills ? freeArea.left : 0
  const ramp = (way: string, end: number) =>
    `linear-gradient(${way}, transparent ${end}px, black ${end === 0 ? 0 : end + FADE}px)`
  return {
    maskImage: `${ramp('to right', left)}, ${ramp('to bottom', Math.max(0, top - UNDER))}`,
    maskComposite: 'intersect',
  }
}

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
  return <div ref={container} style={{ position: 'absolute', inset: 0, ...fading(props) }} />
}
