/** Names with leader lines from the marked parts; they follow the picture frame by frame. */
import { useEffect, useRef } from 'react'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { type MarkedPart, MarkSign } from '../instrument/MarkSign.tsx'
import type { StageFrame } from '../scene/stage-props.ts'

interface LabelProps {
  readonly frame: StageFrame
  readonly anchor: 'worm' | 'leftWheel' | 'rightWheel'
  readonly part: MarkedPart
  readonly text: string
  /** From the part to the near end of the label [px] */
  readonly dx: number
  readonly dy: number
}

function Label({ frame, anchor, part, text, dx, dy }: LabelProps) {
  const workshop = useWorkshop()
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
      line.current.setAttribute('x2', String(place.x + dx))
      line.current.setAttribute('y2', String(place.y + dy))
      tag.current.style.transform = `translate(${place.x + dx}px, ${place.y + dy}px) translate(${dx < 0 ? '-100%' : '0'}, -50%)`
    }
    workshop.frame.painters.add(painter)
    painter()
    return () => void workshop.frame.painters.delete(painter)
  }, [workshop, frame, anchor, dx, dy])
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

export function StageLabels({ frame }: { readonly frame: StageFrame }) {
  const z1 = useMachine((machine) => machine.gearing.wormStarts)
  const z2 = useMachine((machine) => machine.gearing.wheelTeeth)
  return (
    <div className="stage-labels" aria-hidden="true">
      <Label frame={frame} anchor="leftWheel" part="left" text={`Left wheel, ${z2} teeth`} dx={-120} dy={36} />
      <Label frame={frame} anchor="worm" part="worm" text={`Worm, ${some(z1, 'start', 'starts')}`} dx={-150} dy={84} />
      <Label frame={frame} anchor="rightWheel" part="right" text={`Right wheel, ${z2} teeth`} dx={96} dy={56} />
    </div>
  )
}
