/** One parameter: label, control, help on demand, and under them what is to be said of it. */
import { type ReactNode, useState } from 'react'
import { useFieldProblems } from './field-problems.ts'

interface FieldRowProps {
  readonly id: string
  readonly path: string
  readonly label: string
  /** Setting or load that the label ends with; it is seen in the heading above, not in each label. */
  readonly item?: string | null
  readonly heading?: string | null
  /** Seen under the label when it is too long for the field. */
  readonly unit?: ReactNode
  readonly help: string
  /** Why the text in the field is not used; null when it is. */
  readonly refused: string | null
  /** A way out of that, in one press */
  readonly cure?: { readonly label: string; readonly act: () => void } | null | undefined
  readonly children: ReactNode
}

export function FieldRow(props: FieldRowProps) {
  const { id, path, label, item = null, heading = null, unit, help, refused, cure, children } = props
  const [helpOpen, setHelpOpen] = useState(false)
  const warnings = useFieldProblems(path).filter(({ severity }) => severity !== 'note')
  return (
    <div className="parameter">
      {heading !== null && <h4>{heading}</h4>}
      <div className="parameter-row">
        <span className="parameter-name">
          <label htmlFor={id}>
            {item === null ? label : label.slice(0, -item.length - 2)}
            {item !== null && <span className="unseen">, {item}</span>}
          </label>
          {unit}
        </span>
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
            {refused}. The last good value stays.
          </>
        )}
        {refused === null && warnings.length > 0 && (
          <>
            <strong>Warning: </strong>
            {warnings.map(({ message }) => message).join('; ')}.
          </>
        )}
      </p>
      {cure && (
        <button type="button" className="button parameter-cure" onClick={cure.act}>
          {cure.label}
        </button>
      )}
      <p className="parameter-about" id={`${id}-help`} hidden={!helpOpen}>
        {help}
      </p>
    </div>
  )
}
