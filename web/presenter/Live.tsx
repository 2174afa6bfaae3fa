/** What the machine does now, with nothing covered. */
import { useRef } from 'react'
import { useMachine, useView } from '../frame/workshop.ts'
import { Counter } from '../instrument/Counter.tsx'
import { type MarkedPart, MarkSign } from '../instrument/MarkSign.tsx'
import { Readings } from '../instrument/Readings.tsx'
import { ratioText } from '../instrument/reading-text.ts'
import '../instrument/counting.css'

const NAMES: Readonly<Record<MarkedPart, string>> = { left: 'Left wheel', worm: 'Worm', right: 'Right wheel' }

function Count({ part }: { readonly part: MarkedPart }) {
  const sense = useRef<HTMLElement>(null)
  return (
    <div className="presenter-count">
      <MarkSign part={part} size={24} />
      <p>{NAMES[part]}</p>
      <Counter part={part} covered={false} senseRef={sense} />
    </div>
  )
}

export function Live() {
  const ratio = useMachine(ratioText)
  useView((view) => view.withoutLosses)
  return (
    <section className="presenter-card presenter-live" aria-label="The machine now">
      <div className="presenter-counts">
        <Count part="left" />
        <Count part="worm" />
        <Count part="right" />
      </div>
      <p className="presenter-ratio">
        Turns so far. Ratio <span className="number">{ratio}</span>
      </p>
      <details>
        <summary className="button">Readings</summary>
        <Readings />
      </details>
    </section>
  )
}
