/** Names with leader lines from the marked parts; they follow the picture frame by frame. */
import { useEffect, useRef } from 'react'
import { useMachine } from '../frame/workshop.ts'
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

function Label({ painters, free, frame, anchor, part, text, dx, dy }: LabelProps) {
  const group = useRef<HTMLDivElement>(null)
  const line = useRef<SVGLineElement>(null)
  const tag = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const painter = () => {
      const place = frame.anchors[anchor]
      const box = group.current
      if (!box || !line.current || !tag.current) return
      box.style.visibility = place?.visible ? 'visible' : 'hidden'
      if (!place?.visible) return
      line.current.setAttribute('x1', String(place.x))
      line.current.setAttribute('y1', String(place.y))
      const most = box.clientWidth - free.right - tag.current.offsetWidth
      const least = free.left + tag.current.offsetWidth
      const x = dx < 0 ? Math.max(least, place.x + dx) : Math.min(most, place.x + dx)
      line.current.setAttribute('x2', String(x))
      line.current.setAttribute('y2', String(place.y + dy))
      tag.current.style.transform = `translate(${x}px, ${place.y + dy}px) translate(${dx < 0 ? '-100%' : '0'}, -50%)`
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

const some = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`

interface StageLabelsProps {
  readonly frame: StageFrame
  readonly free: FreeArea
  /** Called when the anchors are where they belong. */
  readonly painters: Set<() => void>
}

export function StageLabels({ frame, free, painters }: StageLabelsProps) {
  const z1 = useMachine((machine) => machine.gearing.wormStarts)
  const z2 = useMachine((machine) => machine.gearing.wheelTeeth)
  return (
    <div className="stage-labels" aria-hidden="true">
      <Label
        painters={painters}
        free={free}
        frame={frame}
        anchor="leftWheel"
        part="left"
        text={`Left wheel, ${z2} teeth`}
        dx={-120}
        dy={36}
      />
      <Label
        painters={painters}
        free={free}
        frame={frame}
        anchor="worm"
        part="worm"
        text={`Worm, ${some(z1, 'start', 'starts')}`}
        dx={-150}
        dy={84}
      />
      <Label
        painters={painters}
        free={free}
        frame={frame}
        anchor="rightWheel"
        part="right"
        text={`Right wheel, ${z2} teeth`}
        dx={96}
        dy={56}
      />
    </div>
  )
}
