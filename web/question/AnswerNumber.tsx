/** A number with its unit, as a number or a sum; counts can also be stepped. What it is read as stands under it. */
import { type ReactNode, type RefObject, useEffect, useId, useState } from 'react'
import { useStore } from 'zustand'
import type { Entry } from '../../sim/quantity/entry.ts'
import type { AskNumber } from '../../sim/question/question.ts'
import { numberText, valueText } from '../../sim/question/value-text.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { withAnswer } from '../store/exercise.ts'
import type { AnswerProps } from './answer-props.ts'
import { UNIT_WORDS } from './answer-words.ts'
import { useEntryReader } from './entry-reader.ts'

type AnswerNumberProps = AnswerProps & {
  readonly ask: AskNumber
  readonly hint: string | undefined
}

/** Longer than an answer may be, so that what is too long is told and not cut off. */
const LONGEST = 200
const HINT = 'A fraction or a sum will do.'

/** Writes to the exercise whatever is typed; the reply follows once it reads. */
function useNumber({ unit }: AskNumber) {
  const { exercise } = useWorkshop()
  const { read, whole } = useEntryReader()
  const text = useStore(exercise, (now) => now.text)
  const entry: Entry | null = text.trim() === '' ? null : read(text, unit)
  const write = (next: string) => {
    const nextEntry = read(next, unit)
    const reply = 'value' in nextEntry ? ({ kind: 'number', value: nextEntry.value } as const) : null
    exercise.setState((last) => withAnswer(last, next, reply), true)
  }
  useEffect(() => {
    if (!whole) return
    exercise.setState((last) => {
      if (last.reply !== null || last.text === '') return last
      const late = read(last.text, unit)
      return 'value' in late ? withAnswer(last, last.text, { kind: 'number', value: late.value }) : last
    }, true)
  }, [whole, read, unit, exercise])
  return { text, entry, write }
}

/** The next whole number up or down; from nothing to 1. */
const stepped = (from: number | null, way: 1 | -1): number => {
  if (from === null) return way > 0 ? 1 : 0
  return way > 0 ? Math.floor(from) + 1 : Math.ceil(from) - 1
}

const Step = ({ way, onStep }: { readonly way: 1 | -1; readonly onStep: () => void }) => (
  <button
    type="button"
    className="button answer-step"
    aria-label={way > 0 ? 'One more' : 'One less'}
    onClick={onStep}
  >
    <Icon name={way > 0 ? 'plus' : 'minus'} size={24} />
  </button>
)

function readAs(entry: Entry | null, text: string, { unit }: AskNumber): string | null {
  if (!entry || 'code' in entry) return null
  const same = numberText(entry.value) === text.trim().replace('-', '−')
  return same ? null : `Read as ${valueText(entry.value, unit)}.`
}

export function AnswerNumber({ ask, headingId, input, said, hint = HINT }: AnswerNumberProps) {
  const { text, entry, write } = useNumber(ask)
  const [left, setLeft] = useState(false)
  const saidId = useId()
  const fault = entry && 'code' in entry ? entry.message : null
  const wrong = (said !== null || left) && fault !== null ? fault : entry === null ? said : null
  const counts = ask.unit === 'turn' || ask.unit === '1'
  const step = (way: 1 | -1): ReactNode =>
    counts && (
      <Step
        way={way}
        onStep={() => write(String(stepped(entry && 'value' in entry ? entry.value : null, way)))}
      />
    )
  return (
    <div className="answer-number">
      <div className="answer-row" data-steps={counts}>
        {step(-1)}
        <label className="answer-box">
          <input
            ref={input as RefObject<HTMLInputElement | null>}
            className="number"
            type="text"
            inputMode="text"
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            maxLength={LONGEST}
            size={Math.max(2, Math.min(12, text.length))}
            data-long={text.length > 5}
            value={text}
            placeholder="?"
            aria-labelledby={headingId}
            aria-describedby={saidId}
            aria-invalid={wrong !== null}
            onBlur={() => setLeft(true)}
            onChange={(event) => {
              setLeft(false)
              write(event.currentTarget.value)
            }}
          />
          {ask.unit !== '1' && <span aria-hidden="true">{UNIT_WORDS[ask.unit]}</span>}
        </label>
        {step(1)}
      </div>
      <p className="small answer-said" id={saidId} aria-live="polite" data-wrong={wrong !== null}>
        {ask.unit !== '1' && <span className="unseen">In {UNIT_WORDS[ask.unit]}. </span>}
        {wrong ?? readAs(entry, text, ask) ?? hint}
      </p>
    </div>
  )
}
