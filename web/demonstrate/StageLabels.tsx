/** Names with leader lines from the marked parts; they follow the picture frame by frame. */
import { useEffect, useRef } from 'react'
import { type MarkedPart, MarkSign } from '../instrument/MarkSign.tsx'
import type { FreeArea, StageFrame } from '../scene/stage-props.ts'

interface LabelProps {
  readonly painters: Set<() => void>
  readonly free: FreeArea
  readonly frame: StageFrame
  readonly anchor: 'worm' | 'leftWheel' | 'rightWheel'
  readonly part: MarkedPart
  readonly text: string
  /** From the part to the near end of the label [px] */
  readonly dx: number
  readonly dy: number
}

interface Placing {
  readonly x: number
  readonly y: number
  readonly seen: boolean
  readonly dx: number
  readonly dy: number
  readonly free: FreeArea
}

/** Draws the leader and sets the label at its end, inside the part of the stage that nothing covers. */
function putLabel(group: HTMLElement, line: SVGLineElement, tag: HTMLElement, placing: Placing): void {
  const { x, y, seen, dx, dy, free } = placing
  const uncovered = x > free.left && x < group.clientWidth - free.right
  group.style.visibility = seen && uncovered ? 'visible' : 'hidden'
  const most = group.clientWidth - free.right - tag.offsetWidth
  const end = dx < 0 ? Math.max(free.left + tag.offsetWidth, x + dx) : Math.min(most, x + dx)
  const ends = { x1: x, y1: y, x2: end, y2: y + dy }
  for (const [name, value] of Object.entries(ends)) line.setAttribute(name, String(value))
  tag.style.transform = `translate(${end}px, ${y + dy}px) translate(${dx < 0 ? '-100%' : '0'}, -50%)`
}

function Label({ painters, free, frame, anchor, part, text, dx, dy }: LabelProps) {
  const group = useRef<HTMLDivElement>(null)
  const line = useRef<SVGLineElement>(null)
  const tag = useRef<HTMLDivElement>(null)
  useEffect(() => {
    let seen = false
    let [x, y] = [Number.NaN, Number.NaN]
    const painter = () => {
      const place = frame.anchors[anchor]
      if (!place || (seen === place.visible && x === place.x && y === place.y)) return
      seen = place.visible
      x = place.x
      y = place.y
      if (group.current && line.current && tag.current)
        putLabel(group.current, line.current, tag.current, { x, y, seen, dx, dy, free })
    }
    painters.add(painter)
    painter()
    return () => void painters.delete(painter)
  }, [painters, frame, anchor, dx, dy, free])
  return (
    <div className="stage-label" ref={group}>
      <svg aria-hidden="true">
        <line ref={line} />
      </svg>
      <div className="stage-label-tag" ref={tag} data-side={dx < 0 ? 'left' : 'right'}>
        <MarkSign part={part} size={20} />
        {text}
      </div>
    </div>
  )
}

interface StageLabelsProps {
  readonly frame: StageFrame
  readonly free: FreeArea
  /** Called when the anchors are where they belong. */
  readonly painters: Set<() => void>
}

export function StageLabels({ frame, free, painters }: StageLabelsProps) {
  const common = { frame, free, painters }
  return (
    <div className="stage-labels" aria-hidden="true">
      <Label {...common} anchor="leftWheel" part="left" text="Left wheel" dx={-110} dy={30} />
      <Label {...common} anchor="worm" part="worm" text="Worm" dx={-120} dy={74} />
      <Label {...common} anchor="rightWheel" part="right" text="Right wheel" dx={90} dy={50} />
    </div>
  )
}
