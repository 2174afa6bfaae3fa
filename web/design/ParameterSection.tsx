/** A section of parameters that opens and closes by keyboard. leva shows the document and keeps no truth of its own. */
import { LevaPanel, useControls, useCreateStore } from 'leva'
import { useEffect, useState } from 'react'
import type { SectionName } from '../../sim/machine/field.ts'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { type Described, isAsBegun } from '../instrument/start-numbers.ts'
import { sectionId } from './ids.ts'
import { levaTheme } from './leva-theme.ts'
import { levaKey, sectionFieldsOf, sectionSchema, sectionValues } from './section-schema.ts'

interface ParameterSectionProps {
  readonly name: SectionName
  readonly title: string
  readonly startsOpen: boolean
}

export function ParameterSection({ name, title, startsOpen }: ParameterSectionProps) {
  const [open, setOpen] = useState(startsOpen)
  /** Another kind of machine, or another number of settings, is another list of fields. */
  const signature = useMachine((machine) => fieldSignature(sectionFieldsOf(machine, name)))
  if (signature === '') return null
  return (
    <section className="parameter-section">
      <h3>
        <button
          type="button"
          id={sectionId(name)}
          aria-expanded={open}
          aria-controls={`${sectionId(name)}-fields`}
          onClick={() => setOpen(!open)}
        >
          <Icon name={open ? 'down' : 'next'} size={14} />
          {title}
        </button>
      </h3>
      <div id={`${sectionId(name)}-fields`} hidden={!open}>
        {open && <SectionPanel key={signature} name={name} />}
        {open && (name === 'thermal' || name === 'brushes') && <AsBegun part={name} />}
      </div>
    </section>
  )
}

/** Numbers that nobody has set yet say so. */
function AsBegun({ part }: { readonly part: Described }) {
  const asBegun = useMachine((machine) => isAsBegun(machine, part))
  if (!asBegun) return null
  return (
    <p className="parameter-begun small">
      These are the numbers to begin with, of a small motor. Until you set them to your machine, what is said
      of its {part === 'thermal' ? 'heat' : 'brushes'} is only an example.
    </p>
  )
}

const fieldSignature = ({ fields, choices }: ReturnType<typeof sectionFieldsOf>): string =>
  [...fields.map(({ path, label }) => `${path} ${label}`), ...choices.map(({ path }) => path)].join(', ')

function SectionPanel({ name }: { readonly name: SectionName }) {
  const { document } = useWorkshop()
  const store = useCreateStore()
  const [, set] = useControls(
    () => sectionSchema(document, sectionFieldsOf(document.store.getState().machine, name)),
    { store },
  )
  useEffect(() => {
    const own = new Set(Object.keys(sectionValues(document.store.getState().machine, name)))
    return document.store.subscribe((now, before) => {
      if (now.machine === before.machine) return
      const values = Object.entries(sectionValues(now.machine, name)).filter(([key]) => own.has(levaKey(key)))
      set(Object.fromEntries(values))
    })
  }, [document, name, set])
  useEffect(() => () => document.endGesture(), [document])
  return <LevaPanel store={store} theme={levaTheme} fill flat titleBar={false} hideCopyButton neverHide />
}
