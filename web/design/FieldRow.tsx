/** One parameter: label, control, help on demand, and under them what is to be said of it. */
import { type ReactNode, useState } from 'react'
import { useFieldProblems } from './field-problems.ts'

interface FieldRowProps {
  readonly id: string
  readonly path: string
  readonly label: string
  readonly help: string
  /** Why the text in the field is not used; null when it is. */
  readonly refused: string | null
  readonly children: ReactNode
}

export function FieldRow({ id, path, label, help, refused, children }: FieldRowProps) {
  const [helpOpen, setHelpOpen] = useState(false)
  const remarks = useFieldProblems(path)
  return (
    <div className="parameter">
      <div className="parameter-row">
        <label htmlFor={id}>{label}</label>
        {children}
        <button
          type="button"
          className="parameter-help"
          aria-expanded={helpOpen}
          aria-controls={`${id}-help`}
          onClick={() => setHelpOpen(!helpOpen)}
        >
          <span aria-hidden="true">?</span>
          <span className="unseen">What is this: {label}</span>
        </button>
      </div>
      <p className="parameter-said" id={`${id}-said`}>
        {refused !== null && (
          <>
            <strong>Not used: </strong>
            {refused}. The last good machine stays.
          </>
        )}
        {refused === null && remarks.map(({ message }) => message).join('; ')}
      </p>
      <p className="parameter-about" id={`${id}-help`} hidden={!helpOpen}>
        {help}
      </p>
    </div>
  )
}
