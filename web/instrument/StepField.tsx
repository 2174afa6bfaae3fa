/** A number, whole unless told, with a button on either side. What cannot be used is explained under it and not applied. */
import { useId, useState } from 'react'
import { Icon } from './Icon.tsx'

/** Null when the number was taken, else why not. */
type Answer = string | null

interface StepFieldProps {
  readonly label: string
  readonly value: number
  readonly min: number
  readonly max: number
  /** Of a button or an arrow key; where it is given the number need not be whole. */
  readonly step?: number | undefined
  /** Words of the two buttons. */
  readonly less: string
  readonly more: string
  /** Takes the number, or says why it cannot: at once, or later where it is not known yet. */
  readonly onChange: (value: number) => Answer | Promise<Answer>
  readonly onGesture?: (phase: 'begin' | 'end') => void
  readonly suffix?: string
}

/** What was typed, while it may differ from the value. */
interface Draft {
  readonly text: string
  readonly problem: Answer
  /** The number that waits for its answer; null when none does. */
  readonly waiting: number | null
}

type Limits = Pick<StepFieldProps, 'value' | 'min' | 'max' | 'step' | 'onChange'>

function useDraft({ value, min, max, step, onChange }: Limits) {
  const [draft, setDraft] = useState<Draft | null>(null)
  const [unanswered, setUnanswered] = useState(0)
  const [seen, setSeen] = useState(value)
  if (value !== seen) {
    setSeen(value)
    // an answer to come says itself what becomes of the text
    if (unanswered === 0) setDraft(null)
  }

  const wait = (text: string, number: number, answer: Promise<Answer>) => {
    const waiting: Draft = { text, problem: null, waiting: number }
    setDraft(waiting)
    setUnanswered((count) => count + 1)
    const settle = (problem: Answer) => {
      setUnanswered((count) => count - 1)
      const settled = problem === null ? null : { text, problem, waiting: null }
      setDraft((now) => (now === waiting ? settled : now))
    }
    void answer.then(settle)
  }
  const apply = (text: string) => {
    const number = text.trim() === '' ? Number.NaN : Number(text)
    const fits = step === undefined ? Number.isInteger(number) : Number.isFinite(number)
    if (!fits || number < min || number > max) {
      const kind = step === undefined ? 'a whole number' : 'a number'
      setDraft({ text, problem: `${kind} from ${min} to ${max}`, waiting: null })
      return
    }
    const answer = onChange(number)
    if (answer instanceof Promise) wait(text, number, answer)
    else setDraft({ text, problem: answer, waiting: null })
  }
  return {
    text: draft?.text ?? String(value),
    problem: draft?.problem ?? null,
    /** Where a step goes on from. */
    from: draft?.waiting ?? value,
    apply,
    leave: () => setDraft((now) => (now?.waiting == null ? null : now)),
  }
}

export function StepField({
  label,
  value,
  min,
  max,
  step,
  less,
  more,
  onChange,
  onGesture,
  suffix,
}: StepFieldProps) {
  const { text, problem, from, apply, leave } = useDraft({ value, min, max, step, onChange })
  // Ten thousandths, so that tenths add up without dust.
  const moved = (way: number) => Math.round((from + way * (step ?? 1)) * 1e4) / 1e4
  const id = useId()
  return (
    <div className="step-field">
      <label htmlFor={id}>{label}</label>
      <div className="step-field-row">
        <button
          type="button"
          className="button icon"
          disabled={from <= min}
          onClick={() => apply(String(Math.max(min, moved(-1))))}
        >
          <Icon name="minus" size={16} />
          <span className="unseen">{less}</span>
        </button>
        <input
          id={id}
          className="number"
          type="text"
          inputMode={step === undefined ? 'numeric' : 'decimal'}
          autoComplete="off"
          value={text}
          aria-invalid={problem !== null}
          aria-describedby={`${id}-said`}
          onFocus={() => onGesture?.('begin')}
          onBlur={() => {
            onGesture?.('end')
            leave()
          }}
          onKeyDown={(event) => {
            const by = { ArrowUp: 1, ArrowDown: -1 }[event.key]
            if (by === undefined) return
            event.preventDefault()
            if (moved(by) >= min && moved(by) <= max) apply(String(moved(by)))
          }}
          onChange={(event) => apply(event.target.value)}
        />
        <button
          type="button"
          className="button icon"
          disabled={from >= max}
          onClick={() => apply(String(Math.min(max, moved(1))))}
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
