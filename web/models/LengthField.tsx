/** A length: typed with or without a unit, or stepped by the arrow keys. What cannot be used is told and not taken. */
import { type KeyboardEvent, useId, useState } from 'react'
import { fieldText, readFieldText, stepped } from '../instrument/field-text.ts'

interface LengthFieldProps {
  readonly label: string
  /** [mm] */
  readonly value: number
  readonly min: number
  readonly max: number
  readonly step: number
  readonly note: string
  readonly onChange: (value: number) => void
}

const ARROWS: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }

export function LengthField({ label, value, min, max, step, note, onChange }: LengthFieldProps) {
  const [draft, setDraft] = useState<string | null>(null)
  const [refused, setRefused] = useState('')
  const id = useId()
  const type = (text: string) => {
    setDraft(text)
    readFieldText(text, 'mm', (read) => {
      if ('problem' in read) setRefused(read.problem)
      else if (!(read.value >= min && read.value <= max))
        setRefused(`must be from ${fieldText(min)} to ${fieldText(max)} mm, got ${fieldText(read.value)} mm`)
      else {
        setRefused('')
        onChange(read.value)
      }
    })
  }
  const leave = () => {
    setDraft(null)
    setRefused('')
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const steps = ARROWS[event.key]
    if (event.key === 'Enter') leave()
    if (steps === undefined) return
    event.preventDefault()
    leave()
    onChange(stepped(value, steps, { step, min, max }))
  }
  return (
    <div className="length-field">
      <label htmlFor={id}>{label}</label>
      <span className="length-box">
        <input
          id={id}
          className="number"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          value={draft ?? fieldText(value)}
          aria-invalid={refused !== ''}
          aria-describedby={`${id}-unit ${id}-note`}
          onChange={(event) => type(event.target.value)}
          onBlur={leave}
          onKeyDown={onKeyDown}
        />
        <span id={`${id}-unit`}>mm</span>
      </span>
      <p className="small" id={`${id}-note`} role={refused === '' ? undefined : 'alert'}>
        {refused === '' ? note : `Not used: ${refused}. The last good value stays.`}
      </p>
    </div>
  )
}
