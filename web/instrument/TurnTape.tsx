/** The turn tape: one canvas laid out by worm angle, and the prediction's flag on it. */
import { type PointerEvent, Suspense, useEffect, useRef, useState } from 'react'
import { useWorkshop } from '../frame/workshop.ts'
import { TapeFlag } from '../later.ts'
import type { TapeContent } from './tape-picture.ts'
import { type TapeSurface, attachSurface, createSurface, showContent } from './tape-surface.ts'

interface TurnTapeProps extends TapeContent {
  readonly flagText: string
  readonly onFlag: ((turns: number) => void) | null
}

export function TurnTape({ starts, teeth, cover, flag, taps, trial, flagText, onFlag }: TurnTapeProps) {
  const { frame } = useWorkshop()
  const canvas = useRef<HTMLCanvasElement>(null)
  // it is fetched later than the tape, which then finds room for it
  const [flagElement, setFlagElement] = useState<HTMLDivElement | null>(null)
  const surface = useRef<TapeSurface | null>(null)
  useEffect(() => {
    if (!canvas.current) return undefined
    surface.current = createSurface(canvas.current, frame)
    return attachSurface(surface.current, frame)
  }, [frame])
  useEffect(() => {
    const content = { starts, teeth, cover, flag, taps, trial }
    // A font can be set only once the page's styles are settled: in the frame they are, in the edit they are not yet.
    const inFrame = requestAnimationFrame(() => {
      if (surface.current) showContent(surface.current, frame, content, flagElement)
    })
    return () => cancelAnimationFrame(inFrame)
  }, [frame, starts, teeth, cover, flag, taps, trial, flagElement])

  const place = (event: PointerEvent<HTMLElement>) => {
    const tape = surface.current?.tape
    if (!onFlag || !tape) return
    const x = event.clientX - event.currentTarget.getBoundingClientRect().left
    onFlag(Math.round(Math.min(tape.shown, Math.max(0, (x - tape.edge) / tape.px))))
  }
  const grasp = (event: PointerEvent<HTMLElement>) => {
    if (!onFlag) return
    event.currentTarget.setPointerCapture(event.pointerId)
    place(event)
    flagElement?.focus({ preventScroll: true })
    event.preventDefault()
  }
  const drag = (event: PointerEvent<HTMLElement>) => {
    if (event.currentTarget.hasPointerCapture(event.pointerId)) place(event)
  }
  return (
    <div className="turn-tape" data-flag={onFlag !== null} onPointerDown={grasp} onPointerMove={drag}>
      <canvas ref={canvas} aria-hidden="true" />
      <Suspense>
        {(onFlag || flag !== null) && (
          <TapeFlag element={setFlagElement} turns={flag} text={flagText} onMove={onFlag} />
        )}
      </Suspense>
    </div>
  )
}
