/** Every different way to put the left wheel in, the one with most room first; choosing one edits the machine. */
import { useId, useState } from 'react'
import type { AssemblyPhase } from '../../sim/gear/timing.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { putIn } from './put-in.ts'
import { angleText, distanceText, phaseSentence } from './timing-words.ts'
import type { Timing } from './use-timing.ts'

/** So many are shown before the rest is asked for, unless that is hardly more. */
const FIRST = 6
const HARDLY_MORE = 4

export function PhaseList({ timing }: { readonly timing: Timing }) {
  const { pair, phases, chosen } = timing
  const [all, setAll] = useState(false)
  const title = useId()
  const last = Math.max(FIRST, phases.indexOf(chosen) + 1)
  const shown = all || phases.length - last <= HARDLY_MORE ? phases : phases.slice(0, last)
  return (
    <section aria-labelledby={title}>
      <h3 id={title}>Tooth of the left wheel</h3>
      <p className="small">{phaseSentence(pair, phases.length)}</p>
      <fieldset className="timing-phases" aria-labelledby={title}>
        <div className="timing-phase timing-phase-head small" aria-hidden="true">
          <span>Tooth</span>
          <span>Ahead</span>
          <span>Least</span>
        </div>
        {shown.map((phase) => (
          <Phase key={phase.toothOffset} phase={phase} chosen={phase === chosen} group={title} />
        ))}
      </fieldset>
      {shown.length < phases.length && (
        <button type="button" className="button" onClick={() => setAll(true)}>
          Show all {phases.length}
        </button>
      )}
    </section>
  )
}

interface PhaseProps {
  readonly phase: AssemblyPhase
  readonly chosen: boolean
  readonly group: string
}

function Phase({ phase, chosen, group }: PhaseProps) {
  const workshop = useWorkshop()
  const { toothOffset, offset, distance, clear } = phase
  const word = clear ? 'clear' : 'clash'
  return (
    <label className="timing-phase" data-clear={clear}>
      <input
        type="radio"
        name={group}
        checked={chosen}
        aria-label={`Tooth ${toothOffset}, ${angleText(offset)} ahead, least ${distanceText(distance)}, ${word}`}
        onChange={() => {
          putIn(workshop, toothOffset)
          workshop.announcer.say(`Tooth ${toothOffset}. Least distance ${distanceText(distance)}, ${word}.`)
        }}
      />
      <span className="timing-radio" aria-hidden="true" />
      <span className="number">{toothOffset}</span>
      <span className="number">{angleText(offset)}</span>
      <span className="number">{distanceText(distance)}</span>
      <span className="timing-verdict">
        {clear ? <Icon name="check" size={16} /> : <span className="timing-swatch" />}
        {word}
      </span>
    </label>
  )
}
