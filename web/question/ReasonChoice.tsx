/** Why it is so: one reason of three, or a sentence of one's own. What was picked is answered at once. */
import { useId, useState } from 'react'
import { useStore } from 'zustand'
import type { Question } from '../../sim/question/question.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { withNote, withReason } from '../store/exercise.ts'
import './question.css'

const LONGEST_NOTE = 500

function OwnWords() {
  const { exercise } = useWorkshop()
  const note = useStore(exercise, (now) => now.note)
  const [open, setOpen] = useState(note !== '')
  const id = useId()
  return (
    <details className="reason-note" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        In your own words
        <Icon name="down" size={16} />
      </summary>
      <textarea
        className="box answer-words"
        rows={2}
        maxLength={LONGEST_NOTE}
        value={note}
        aria-label="Why, in your own words"
        aria-describedby={`${id}-kept`}
        onChange={(event) => exercise.setState((last) => withNote(last, event.currentTarget.value), true)}
      />
      <p className="small" id={`${id}-kept`}>
        It stays on this page; nobody marks it.
      </p>
    </details>
  )
}

export function ReasonChoice({ question }: { readonly question: Question }) {
  const { exercise } = useWorkshop()
  const picked = useStore(exercise, (now) => now.reason)
  const id = useId()
  const { reasons } = question
  const chosen = picked === null ? undefined : reasons[picked]
  return (
    <div className="reasons">
      {reasons.length > 0 && (
        <fieldset className="answer-options">
          <legend>Why?</legend>
          {reasons.map(({ text }, i) => (
            <label key={text} className="answer-option">
              <input
                type="radio"
                name={id}
                checked={picked === i}
                onChange={() => exercise.setState((last) => withReason(last, i), true)}
              />
              <span>{text}</span>
            </label>
          ))}
        </fieldset>
      )}
      <div aria-live="polite">
        {chosen && (
          <p className="verdict">
            <Icon name={chosen.right ? 'check' : 'ring'} size={22} />
            <span>
              {chosen.right ? (
                <b>That is the reason.</b>
              ) : (
                <>
                  <b>Not yet.</b> {reasons.find(({ right }) => right)?.text}
                </>
              )}
            </span>
          </p>
        )}
      </div>
      <OwnWords />
    </div>
  )
}
