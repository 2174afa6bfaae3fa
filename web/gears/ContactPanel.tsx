/** How the teeth touch: close up, in numbers, and when the wheel is not set right. */
import { useMemo } from 'react'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { Formulas } from '../instrument/use-formula.tsx'
import { CloseUpFigure } from './CloseUpFigure.tsx'
import { ContactFacts } from './ContactFacts.tsx'
import { formWords } from './contact-words.ts'
import { Setting } from './Setting.tsx'
import { fieldsOf } from './touching.ts'
import './gears.css'

export function ContactPanel() {
  const machine = useMachine((now) => now)
  const { view } = useWorkshop()
  const side = useView(({ meshSide }) => meshSide)
  const setSide = (meshSide: Side) => view.setState({ meshSide })
  const fields = useMemo(() => fieldsOf(machine), [machine])
  return (
    <div className="panel-column gear-panel">
      <Formulas>
        <CloseUpFigure machine={machine} fields={fields} side={side} onSide={setSide} />
        <ContactFacts machine={machine} field={fields[1]} side={side} />
        <p>{formWords(machine.gearing)}</p>
        <Setting side={side} />
      </Formulas>
    </div>
  )
}
