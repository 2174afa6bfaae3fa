/** One part: its name, what it is for, and its numbers, running or as they are when running steadily. */
import { type PartName, partsOf } from '../../sim/pose/parts.ts'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { Icon } from './Icon.tsx'
import { partNumbers } from './part-numbers.ts'
import type { Situation } from './situation.ts'
import { FormulaButton, Formulas } from './use-formula.tsx'
import { useNowText, useReadout, useSteady, useSteadySituation } from './use-reading.ts'
import './parts.css'

export function PartCard({ part }: { readonly part: PartName }) {
  const { view } = useWorkshop()
  const machine = useMachine((now) => now)
  const steady = useSteadySituation(useSteady())
  const about = partsOf(machine).find((each) => each.part === part)
  if (!about) return null
  return (
    <section className="part-card" aria-label={about.name}>
      <header>
        <h2>{about.name}</h2>
        <button type="button" className="button icon plain" onClick={() => view.setState({ selected: null })}>
          <Icon name="close" size={16} />
          <span className="unseen">Close {about.name}</span>
        </button>
      </header>
      <p>{about.purpose}</p>
      {steady && (
        <Formulas>
          <PartNumbers part={part} steady={steady} />
        </Formulas>
      )}
    </section>
  )
}

function PartNumbers({ part, steady }: { readonly part: PartName; readonly steady: Situation }) {
  const running = useReadout(({ motion }) => motion === 'running')
  const numbers = partNumbers(part, steady)
  if (numbers.length === 0) return null
  return (
    <>
      <dl>
        {numbers.map(({ name, formula }, place) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className="number">
              <NumberText part={part} place={place} steady={steady} />
              {formula && <FormulaButton id={formula} of={name} />}
            </dd>
          </div>
        ))}
      </dl>
      <p className="small">{running ? 'As it runs now' : 'When running steadily as set'}</p>
    </>
  )
}

interface NumberTextProps {
  readonly part: PartName
  readonly place: number
  readonly steady: Situation
}

function NumberText({ part, place, steady }: NumberTextProps) {
  return useNowText(
    (now, { motion }) => partNumbers(part, motion === 'running' ? now : steady)[place]?.text ?? '',
  )
}
