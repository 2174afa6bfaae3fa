/** One counter: large digits for the eye, signed text for readers of screens and for machines. Painted, not rendered. */
import { useEffect, useRef } from 'react'
import { wheelSense } from '../../sim/gear/wheel-motion.ts'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import type { MarkedPart } from './MarkSign.tsx'
import { type Count, countText, fractionText, newCount, wheelCount, wholeText, wormCount } from './count.ts'

interface CounterElements {
  readonly figures: HTMLElement
  readonly whole: HTMLElement
  readonly fraction: HTMLElement
  readonly told: HTMLElement
  readonly sense: HTMLElement | null
}

/** Writes what has changed since `last`; digits say the size, and the worm's also the sign. */
function showCount(
  elements: CounterElements,
  count: Count,
  last: Count,
  signed: boolean,
  forward: 1 | -1,
): void {
  const same = count.whole === last.whole && count.sign === last.sign
  if (!same) {
    elements.whole.textContent = wholeText(count.whole, signed && count.sign < 0)
    elements.figures.dataset['long'] = count.whole > 999_999 ? 'very' : String(count.whole > 9999)
  }
  if (!same || count.part !== last.part) elements.told.textContent = countText(count)
  if (Math.floor(count.part / 100) !== Math.floor(last.part / 100))
    elements.fraction.textContent = fractionText(count.part)
  if (count.exact !== last.exact) elements.figures.dataset['exact'] = String(count.exact)
  if (elements.sense && count.sign !== last.sign) {
    elements.sense.dataset['sense'] = (count.sign || forward) > 0 ? 'anticlockwise' : 'clockwise'
  }
  Object.assign(last, count)
}

const NAMES = { left: 'Left wheel turns', worm: 'Worm turns', right: 'Right wheel turns' } as const

interface CounterProps {
  readonly part: MarkedPart
  readonly covered: boolean
  /** Sense of this part when the worm turns forward, and the element that tells it in words. */
  readonly senseRef: React.RefObject<HTMLElement | null>
}

function useCountPainter({ part, covered, senseRef }: CounterProps) {
  const { frame } = useWorkshop()
  const z1 = useMachine((machine) => machine.gearing.wormStarts)
  const z2 = useMachine((machine) => machine.gearing.wheelTeeth)
  const hand = useMachine((machine) => machine.gearing.hand)
  const figures = useRef<HTMLDivElement>(null)
  const whole = useRef<HTMLSpanElement>(null)
  const fraction = useRef<HTMLSpanElement>(null)
  const told = useRef<HTMLOutputElement>(null)
  useEffect(() => {
    if (covered || !figures.current || !whole.current || !fraction.current || !told.current) return undefined
    const elements = {
      figures: figures.current,
      whole: whole.current,
      fraction: fraction.current,
      told: told.current,
      sense: senseRef.current,
    }
    const forward = part === 'worm' ? 1 : wheelSense(part, hand)
    const count = newCount()
    const last: Count = { sign: 0, whole: Number.NaN, part: Number.NaN, exact: false }
    if (elements.sense) elements.sense.dataset['sense'] = forward > 0 ? 'anticlockwise' : 'clockwise'
    const painter = () => {
      const { turns } = frame.state
      if (part === 'worm') wormCount(count, turns)
      else wheelCount(count, turns, z1, z2, forward)
      showCount(elements, count, last, part === 'worm', forward)
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, part, covered, z1, z2, hand, senseRef])
  return { figures, whole, fraction, told }
}

export function Counter(props: CounterProps) {
  const { figures, whole, fraction, told } = useCountPainter(props)
  const name = NAMES[props.part]
  if (props.covered) {
    return (
      <div className="counter number">
        <span aria-hidden="true">?</span>
        <output key="covered" className="unseen" aria-live="off" aria-label={name}>
          hidden
        </output>
      </div>
    )
  }
  return (
    <div className="counter number" ref={figures} data-exact="true" data-long="false">
      <span aria-hidden="true">
        <span ref={whole} />
        <span className="fraction" ref={fraction} />
      </span>
      <output key="open" className="unseen" aria-live="off" aria-label={name} ref={told} />
    </div>
  )
}
