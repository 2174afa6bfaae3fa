/** The fields of the lesson editor: each with its label, written through at every change. */
import { type ReactNode, useId, useState } from 'react'
import { useEntryReader } from '../question/entry-reader.ts'

interface FieldProps<T> {
  readonly label: string
  readonly value: T
  readonly onChange: (value: T) => void
}

interface TextFieldProps extends FieldProps<string> {
  readonly most: number
  /** Lines; one is a field of one line. */
  readonly rows?: number
  readonly hint?: string
}

/** What is left is told once it is less than this part of the whole. */
const SCARCE = 0.2

export function TextField({ label, value, onChange, most, rows = 1, hint }: TextFieldProps) {
  const id = useId()
  const left = most - value.length
  const shared = {
    id,
    className: 'box',
    value,
    maxLength: most,
    'aria-describedby': `${id}-hint`,
  }
  return (
    <div className="editor-field">
      <label htmlFor={id}>{label}</label>
      {rows === 1 ? (
        <input
          {...shared}
          type="text"
          autoComplete="off"
          onChange={(event) => onChange(event.target.value)}
        />
      ) : (
        <textarea {...shared} rows={rows} onChange={(event) => onChange(event.target.value)} />
      )}
      <p className="small" id={`${id}-hint`}>
        {left < SCARCE * most ? `${left} characters left.` : hint}
      </p>
    </div>
  )
}

interface SelectFieldProps<T extends string | number> extends FieldProps<T> {
  readonly options: readonly { readonly value: T; readonly text: string }[]
}

export function SelectField<T extends string | number>({
  label,
  value,
  options,
  onChange,
}: SelectFieldProps<T>) {
  const id = useId()
  const choose = (text: string) => {
    const option = options.find((each) => String(each.value) === text)
    if (option) onChange(option.value)
  }
  return (
    <div className="editor-field">
      <label htmlFor={id}>{label}</label>
      <select id={id} className="box" value={value} onChange={(event) => choose(event.target.value)}>
        {!options.some((each) => each.value === value) && <option value={value}>{value}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  )
}

export const CheckField = ({ label, value, onChange }: FieldProps<boolean>) => (
  <label className="editor-check">
    <input type="checkbox" checked={value} onChange={(event) => onChange(event.target.checked)} />
    {label}
  </label>
)

interface NumberFieldProps extends FieldProps<number> {
  /** Of the number, as answers have it; '1' is a plain one. */
  readonly unit?: string
}

/** A number or a sum, taken over once it reads as one; what does not read stays in the field and is explained. */
export function NumberField({ label, value, onChange, unit = '1' }: NumberFieldProps) {
  const { read } = useEntryReader()
  const [typed, setTyped] = useState({ text: String(value), value })
  const [left, setLeft] = useState(false)
  const id = useId()
  if (typed.value !== value) setTyped({ text: String(value), value })
  const entry = read(typed.text, unit)
  const fault = left && 'code' in entry ? entry.message : null
  const write = (text: string) => {
    const now = read(text, unit)
    setLeft(false)
    setTyped({ text, value: 'value' in now ? now.value : value })
    if ('value' in now && now.value !== value) onChange(now.value)
  }
  return (
    <div className="editor-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className="box number"
        type="text"
        autoComplete="off"
        value={typed.text}
        aria-invalid={fault !== null}
        aria-describedby={`${id}-said`}
        onBlur={() => setLeft(true)}
        onChange={(event) => write(event.target.value)}
      />
      <p className="small editor-fault" id={`${id}-said`} aria-live="polite">
        {fault}
      </p>
    </div>
  )
}

interface SectionProps {
  readonly title: string
  readonly children: ReactNode
}

export function Section({ title, children }: SectionProps) {
  const id = useId()
  return (
    <section className="editor-section" aria-labelledby={id}>
      <h4 id={id}>{title}</h4>
      {children}
    </section>
  )
}
