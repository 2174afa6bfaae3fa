/** The right column of Design: what follows from the parameters, and what the checks say of them. */
import { useMemo } from 'react'
import { checkMachine } from '../../sim/machine/check.ts'
import { useMachine } from '../frame/workshop.ts'
import { Problems } from '../instrument/Problems.tsx'
import { ratioText } from '../instrument/reading-text.ts'
import { ReadingsTable } from '../instrument/ReadingsTable.tsx'
import { FormulaButton, Formulas } from '../instrument/use-formula.tsx'
import { useSteady, useSteadySituation } from '../instrument/use-reading.ts'
import { designFacts, lockingWords } from './facts.ts'
import { goToField } from './go-to-field.ts'
import { labelOfPath } from '../instrument/labels.ts'
import './design.css'
import '../instrument/readings.css'

export function DesignFacts() {
  const machine = useMachine((now) => now)
  const { wormStarts, wheelTeeth } = machine.gearing
  const facts = useMemo(() => designFacts(machine), [machine])
  return (
    <div className="design-facts">
      <Formulas>
        <h2>
          {wormStarts} × {wheelTeeth} <span className="small">starts × teeth</span>
        </h2>
        <dl>
          <div className="design-fact">
            <dt>Ratio</dt>
            <dd className="number">
              <output aria-live="off" aria-label="Ratio">
                {ratioText(machine)}
              </output>
              <FormulaButton id="ratio" of="Ratio" />
            </dd>
          </div>
          {facts.map(({ name, text, formula }) => (
            <div className="design-fact" key={name}>
              <dt>{name}</dt>
              <dd className="number">
                {text}
                {formula && <FormulaButton id={formula} of={name} />}
              </dd>
            </div>
          ))}
        </dl>
        <p>{lockingWords(machine)}</p>
        <Running />
      </Formulas>
      <ProblemList />
      <p className="design-later small">
        The grid of tooth counts and the comparison of two designs, A and B, are not built yet.
      </p>
    </div>
  )
}

/** What the parameters come to when the machine runs. */
function Running() {
  const steady = useSteadySituation(useSteady())
  if (!steady) return null
  return (
    <>
      <h3>When it runs</h3>
      <ReadingsTable steady={steady} />
      <p className="small">Large: now. Below it: running steadily as set.</p>
    </>
  )
}

function ProblemList() {
  const machine = useMachine((now) => now)
  const problems = useMemo(() => checkMachine(machine), [machine])
  const labelOf = useMemo(() => labelOfPath(machine), [machine])
  return (
    <>
      <h3>Checks</h3>
      {problems.length === 0 ? (
        <p className="small">Nothing stands against this machine.</p>
      ) : (
        <Problems problems={problems} labelOf={labelOf} onGoTo={(path) => goToField(machine, path)} />
      )}
    </>
  )
}
