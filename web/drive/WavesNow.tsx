/** The moment that the machine is at, sweeping through the periods that are shown; painted with every frame. */
import { useEffect, useRef } from 'react'
import { valueAlong } from '../chart/scale.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { figureOf } from '../instrument/reading-text.ts'
import type { Lane } from './waves-lanes.ts'
import type { ScopeLayout } from './waves-layout.ts'

/** Sweeps shorter than this would flicker [s of the screen] */
const SHORTEST_SWEEP = 0.5

export const sweeps = (span: number, pace: number): boolean => span * pace >= SHORTEST_SWEEP

/** @param span - of the periods that are shown [s] */
export function NowLine({ layout, span }: { readonly layout: ScopeLayout; readonly span: number }) {
  const { frame } = useWorkshop()
  const line = useRef<SVGLineElement>(null)
  const { across, top, bottom } = layout
  useEffect(() => {
    const painter = () => {
      const part = (frame.state.time % span) / span
      const x = (across.low + part * (across.high - across.low)).toFixed(1)
      line.current?.setAttribute('x1', x)
      line.current?.setAttribute('x2', x)
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, across.low, across.high, span])
  return <line ref={line} className="waves-now" y1={top} y2={bottom} aria-hidden="true" />
}

interface NowCellProps {
  readonly lane: Lane
  /** [s] */
  readonly time: Float64Array
  readonly span: number
}

/** The value of a lane at that moment. */
export function NowCell({ lane, time, span }: NowCellProps) {
  const { frame } = useWorkshop()
  const cell = useRef<HTMLSpanElement>(null)
  useEffect(() => {
    const painter = () => {
      const value = valueAlong(time, lane.traces[0].values, frame.state.time % span)
      const text = figureOf(value, lane.unit)
      if (cell.current && cell.current.textContent !== text) cell.current.textContent = text
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, lane, time, span])
  return <span ref={cell} />
}
