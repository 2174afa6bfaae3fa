/** A whole number with a button on either side. What cannot be used is explained under it and not applied. */
import { useEffect, useId, useState } from 'react'
import { Icon } from './Icon.tsx'

interface StepFieldProps {
  readonly label: string
  readonly value: number
  readonly min: number
  readonly max: number
  /** Words of the two buttons. */
  readonly less: string
  readonly more: string
  /** Takes the number, or says why it cannot. */
  readonly onChange: (value: number) => string | null
  readonly onGesture?: (phase: 'begin' | 'end') => void
  readonly suffix?: string
}

export function StepField({
  label,
  value,
  min,
  max,
  less,
  more,
  onChange,
  onGesture,
  suffix,
}: StepFieldProps) {
  const [text, setText] = useState(String(value))
  const [problem, setProblem] = useState<string | null>(null)
  const id = useId()

  useEffect(() => {
    setText(String(value))
    setProblem(null)
  }, [value])

  const apply = (typed: string) => {
    setText(typed)
    const number = typed.trim() === '' ? Number.NaN : Number(typed)
    if (Number.isInteger(number) && number >= min && number <= max) setProblem(onChange(number))
    else setProblem(`a whole number from ${min} to ${max}`)
  }
  return (
    <div className="step-field">
      <label htmlFor={id}>{label}</label>
      <div className="step-field-row">
        <button
          type="button"
          className="button icon"
          disabled={value <= min}
          onClick={() => apply(String(value - 1))}
        >
          <Icon name="minus" size={16} />
          <span className="unseen">{less}</span>
        </button>
        <input
          id={id}
          className="number"
          type="text"
          inputMode="numeric"
          autoComplete="off"
          value={text}
          aria-invalid={problem !== null}
          aria-describedby={`${id}-said`}
          onFocus={() => onGesture?.('begin')}
          onBlur={() => {
            onGesture?.('end')
            setText(String(value))
            setProblem(null)
          }}
          onKeyDown={(event) => {
            const by = { ArrowUp: 1, ArrowDown: -1 }[event.key]
            if (by === undefined) return
            event.preventDefault()
            if (value + by >= min && value + by <= max) apply(String(value + by))
          }}
          onChange={(event) => apply(event.target.value)}
        />
        <button
          type="button"
          className="button icon"
          disabled={value >= max}
          onClick={() => apply(String(value + 1))}
        >
          <Icon name="plus" size={16} />
          <span className="unseen">{more}</span>
        </button>
        {suffix && <span className="small">{suffix}</span>}
      </div>
      <p className="step-field-said" id={`${id}-said`}>
        {problem && (
          <>
            <span className="unseen">{label}: </span>
            {problem}
          </>
        )}
      </p>
    </div>
  )
}
