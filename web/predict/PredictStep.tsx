/** Step 1: an answer, how sure, and the commitment. The machine stands still meanwhile. */
import { useId, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import { useStore } from 'zustand'
import type { Question } from '../../sim/question/question.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { AnswerField } from '../question/AnswerField.tsx'
import { SurenessField } from '../question/SurenessField.tsx'
import { missingAnswer, replyText } from '../question/answer-words.ts'
import { commit, skip } from './session.ts'

/** Questions of more characters are set smaller, so that the answer stays in sight. */
const LONG = 110
const LONGEST = 210

const lengthOf = ({ text: { length } }: Question): 'short' | 'long' | 'longest' =>
  length > LONGEST ? 'longest' : length > LONG ? 'long' : 'short'

/** Where the flag stands on the tape for what is typed */
const FLAG_HINT = 'Or drag the flag along the tape.'

/** Whether the answer is a place on the tape */
export const hasFlag = ({ ask, trial }: Question): boolean =>
  ask.kind === 'number' && ask.unit === 'turn' && trial?.counted === 'worm'

function Skip() {
  const workshop = useWorkshop()
  return (
    <button type="button" className="button plain" onClick={() => skip(workshop)}>
      Skip<span className="unseen"> the prediction</span>
    </button>
  )
}

/** What is about to be committed */
function Said({ question }: { readonly question: Question }) {
  const reply = useStore(useWorkshop().exercise, (now) => now.reply)
  return reply && <p className="given">You say: {replyText(question, reply)}</p>
}

interface PredictStepProps {
  readonly question: Question
  /** One thing at a time, for a narrow screen */
  readonly oneByOne: boolean
}

export function PredictStep({ question, oneByOne }: PredictStepProps) {
  const workshop = useWorkshop()
  const { exercise } = workshop
  const input = useRef<HTMLElement>(null)
  const form = useRef<HTMLFormElement>(null)
  const headingId = useId()
  const [said, setSaid] = useState<string | null>(null)
  const [second, setSecond] = useState(false)
  const marksOn = useStore(workshop.records.store, (now) => now.marksOn)
  const isAnswered = () => {
    const answered = exercise.getState().reply !== null
    setSaid(answered ? null : missingAnswer(question))
    if (!answered) input.current?.focus()
    return answered
  }
  const goOn = () => {
    if (!isAnswered()) return
    flushSync(() => setSecond(oneByOne))
    form.current?.querySelector<HTMLElement>('.choice input, .sureness input')?.focus()
  }
  const answering = !oneByOne || !second
  return (
    <form
      className="step"
      data-second={oneByOne && second}
      ref={form}
      onSubmit={(event) => {
        // Enter goes on to how sure; only the button commits.
        event.preventDefault()
        goOn()
      }}
    >
      <div>
        <h2 id={headingId} data-length={lengthOf(question)}>
          {question.text}
        </h2>
        {!answering && <Said question={question} />}
        {answering && (
          <AnswerField
            question={question}
            headingId={headingId}
            input={input}
            said={said}
            {...(hasFlag(question) ? { hint: FLAG_HINT } : {})}
          />
        )}
      </div>
      {(!oneByOne || second) && <SurenessField marksOn={marksOn} />}
      {oneByOne && !second ? (
        <div className="commit one-row">
          <Skip />
          <button key="next" type="button" className="button main" onClick={goOn}>
            How sure?
          </button>
        </div>
      ) : (
        <div className="commit">
          <div className="one-row">
            {oneByOne && (
              <button type="button" className="button" onClick={() => setSecond(false)}>
                <Icon name="back" size={16} />
                <span className="unseen">Back to the answer</span>
              </button>
            )}
            <button
              key="commit"
              type="button"
              className="button main"
              onClick={() => isAnswered() && commit(workshop)}
            >
              Commit prediction
            </button>
            {!oneByOne && <Skip />}
          </div>
          <p className="small commit-said">It cannot be changed afterwards.</p>
        </div>
      )}
    </form>
  )
}
