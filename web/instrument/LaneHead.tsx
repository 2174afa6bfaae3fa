/** Head of one lane of the turn tape: the mark, the name, what it is or which way it turns, and its counter. */
import { useRef } from 'react'
import { useMachine } from '../frame/workshop.ts'
import { Counter } from './Counter.tsx'
import { Icon } from './Icon.tsx'
import { type MarkedPart, MarkSign } from './MarkSign.tsx'

const NAMES = { left: ['Left', ' wheel'], worm: ['Worm', ''], right: ['Right', ' wheel'] } as const

function WormFacts() {
  const starts = useMachine((machine) => machine.gearing.wormStarts)
  const hand = useMachine((machine) => machine.gearing.hand)
  return (
    <p className="lane-fact small">
      {starts} {starts === 1 ? 'start' : 'starts'}, {hand} hand
    </p>
  )
}

interface LaneHeadProps {
  readonly part: MarkedPart
  readonly covered: boolean
}

export function LaneHead({ part, covered }: LaneHeadProps) {
  const sense = useRef<HTMLParagraphElement>(null)
  const [name, more] = NAMES[part]
  return (
    <div className="lane-head" data-part={part}>
      <MarkSign part={part} size={34} />
      <div className="lane-words">
        <p className="lane-name">
          {name}
          <span className="lane-name-more">{more}</span>
        </p>
        {part === 'worm' && <WormFacts />}
        {part !== 'worm' && covered && <p className="lane-fact small">hidden</p>}
        {part !== 'worm' && !covered && (
          <p className="lane-fact small" ref={sense} data-sense="clockwise">
            <span className="when-clockwise">
              <Icon name="clockwise" size={15} /> clockwise
            </span>
            <span className="when-anticlockwise">
              <Icon name="anticlockwise" size={15} /> anticlockwise
            </span>{' '}
            <span>seen from above</span>
          </p>
        )}
      </div>
      <Counter part={part} covered={covered} senseRef={sense} />
    </div>
  )
}
