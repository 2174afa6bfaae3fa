/** The machine's parameters in sections, from the one table of fields. Loaded when Design is first opened. */
import { useMemo } from 'react'
import { checkMachine } from '../../sim/machine/check.ts'
import { SECTIONS } from '../../sim/machine/field.ts'
import { useMachine } from '../frame/workshop.ts'
import { FieldProblems } from './field-problems.ts'
import { ParameterSection } from './ParameterSection.tsx'

export default function ParameterSheet() {
  const machine = useMachine((now) => now)
  const problems = useMemo(() => checkMachine(machine), [machine])
  return (
    <FieldProblems value={problems}>
      {SECTIONS.map(({ name, title }, place) => (
        <ParameterSection key={name} name={name} title={title} startsOpen={place === 0} />
      ))}
    </FieldProblems>
  )
}
