/** How the teeth touch: close up, in numbers, and when the wheel is not set right. */
import { useMemo, useState } from 'react'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { Formulas } from '../instrument/use-formula.tsx'
import { CloseUpFigure } from './CloseUpFigure.tsx'
import { ContactFacts } from './ContactFacts.tsx'
import { formWords, wormPlay } from './contact-words.ts'
import { keepSign } from './panels.ts'
import { Setting } from './Setting.tsx'
import { Switch } from './Switch.tsx'
import { turnBackAndForth } from './there-and-back.ts'
import { fieldsOf } from './touching.ts'
import { quantityText } from '../instrument/reading-text.ts'
import './gears.css'

export function ContactPanel() {
  const workshop = useWorkshop()
  const machine = useMachine((now) => now)
  const kept = useView(({ keptSigns }) => keptSigns.includes('contact'))
  const [side, setSide] = useState<Side>('right')
  const fields = useMemo(() => fieldsOf(machine), [machine])
  const look = () =>
    workshop.view.setState(({ view }) => ({
      view: { name: 'mesh', nonce: view.nonce + 1 },
      camera: null,
      caseState: 'clear',
    }))
  return (
    <div className="gear-panel">
      <Formulas>
        <CloseUpFigure machine={machine} fields={fields} side={side} onSide={setSide} />
        <Backlash />
        <section>
          <button type="button" className="button" onClick={look}>
            Look into the mesh
          </button>
          <Switch
            label="Keep the lines on the stage"
            on={kept}
            onChange={(keep) => keepSign(workshop, 'contact', keep)}
          />
        </section>
        <ContactFacts machine={machine} field={fields[1]} />
        <p>{formWords(machine.gearing)}</p>
        <Setting side={side} />
      </Formulas>
    </div>
  )
}

function Backlash() {
  const workshop = useWorkshop()
  const gearing = useMachine((machine) => machine.gearing)
  if (gearing.backlash <= 0)
    return <p>No backlash is given: both flanks fit, and each wheel follows the worm at once.</p>
  const play = wormPlay(gearing)
  return (
    <section>
      <p>Turn back by hand: the wheels wait for {quantityText(play, '°')} of the worm.</p>
      <button type="button" className="button" onClick={() => turnBackAndForth(workshop, play)}>
        Turn back and forth
      </button>
    </section>
  )
}
