import { type KeyboardEvent, type PointerEvent, useRef } from 'react'
import type { Axis } from './Axes.tsx'
import { type Scale, toPixel, toValue } from './scale.ts'
import './chart.css'

export interface Cursor {
  readonly name: string
  readonly at: number
  /** Step of an arrow key; ten of them with Shift */
  readonly step: number
  readonly text: string
  readonly move?: (to: number) => void
}

interface CursorProps {
  readonly cursor: Cursor
  readonly across: Scale
  readonly top: number
  readonly bottom: number
  readonly x: Axis
}

/** Steps of a key with Shift, and of a page */
const FAST = 10
const KEYS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: FAST,
  PageDown: -FAST,
  Home: -Infinity,
  End: Infinity,
}

/** A slider along the axis: by arrow keys, Home and End, or dragged. Without a way to move it, a line that is told. */
export function CursorHandle({ cursor, across, top, bottom, x }: CursorProps) {
  const { move, name, at, step, text } = cursor
  const held = useRef(false)
  const px = Math.min(across.high, Math.max(across.low, toPixel(across, at)))
  const line = (
    <>
      <line className="plot-cursor" x1={px} x2={px} y1={top - 2} y2={bottom} />
      <path className="plot-cursor-head" d={`M${px - 6} ${top - 8}h12l-6 8z`} />
    </>
  )
  if (!move) return <g aria-hidden="true">{line}</g>
  const to = (value: number) => move(Math.min(x.to, Math.max(x.from, value)))
  const press = (event: KeyboardEvent) => {
    const steps = KEYS[event.key]
    if (steps === undefined) return
    event.preventDefault()
    event.stopPropagation()
    to(at + (event.shiftKey ? FAST : 1) * steps * step)
  }
  const follow = (event: PointerEvent<SVGGElement>) => {
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect()
    if (held.current && box) to(toValue(across, event.clientX - box.left))
  }
  return (
    <g
      className="plot-handle"
      role="slider"
      tabIndex={0}
      aria-label={name}
      aria-valuemin={x.from}
      aria-valuemax={x.to}
      aria-valuenow={at}
      aria-valuetext={text}
      onKeyDown={press}
      onPointerDown={(event) => {
        held.current = true
        event.currentTarget.setPointerCapture(event.pointerId)
        event.preventDefault()
        event.currentTarget.focus()
      }}
      onPointerMove={follow}
      onPointerUp={() => {
        held.current = false
      }}
      onPointerCancel={() => {
        held.current = false
      }}
    >
      {line}
      <rect
        data-handle
        className="plot-grip"
        x={px - 22}
        y={top - 16}
        width="44"
        height={bottom - top + 16}
      />
    </g>
  )
}
