/** A question worked through alone: an answer that is committed, a count of one's own, and then the comparison. */
import { useEffect, useId, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Question } from '../../sim/question/question.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { AnswerField } from '../question/AnswerField.tsx'
import { Compared } from '../question/Compared.tsx'
import { CountStep } from '../question/CountStep.tsx'
import { ReasonChoice } from '../question/ReasonChoice.tsx'
import { SurenessField } from '../question/SurenessField.tsx'
import { missingAnswer } from '../question/answer-words.ts'
import { playWatch } from '../question/watch-stage.ts'
import type { Phase } from '../store/exercise.ts'
import { commit, comingNext, next, reveal, skip } from './play.ts'
import { comingWords } from './lesson-words.ts'

interface AskedProps {
  readonly question: Question
  readonly headingId: string
}

function Predict({ question, headingId }: AskedProps) {
  const workshop = useWorkshop()
  const input = useRef<HTMLElement>(null)
  const [said, setSaid] = useState<string | null>(null)
  const onCommit = () => {
    if (workshop.exercise.getState().reply) commit(workshop)
    else {
      setSaid(missingAnswer(question))
      input.current?.focus()
    }
  }
  // No form: Enter in the box would commit what cannot be changed afterwards.
  return (
    <div className="own-predict">
      <AnswerField question={question} headingId={headingId} input={input} said={said} />
      {question.ask.kind !== 'words' && <SurenessField />}
      <div className="own-commit">
        <button type="button" className="button main" onClick={onCommit}>
          Commit
        </button>
        <p className="small">It cannot be changed afterwards.</p>
      </div>
      <button type="button" className="button plain own-skip" onClick={() => skip(workshop)}>
        Go on without an answer
      </button>
    </div>
  )
}

function Compare({ question }: { readonly question: Question }) {
  const workshop = useWorkshop()
  const exercise = useStore(workshop.exercise)
  const then = comingNext(workshop)
  return (
    <div className="own-compare">
      <Compared question={question} exercise={exercise} />
      {question.watch && (
        <div className="own-watch">
          <p>{question.watch.words}</p>
          <button type="button" className="button" onClick={() => void playWatch(workshop, question)}>
            <Icon name="views" />
            Watch it
          </button>
        </div>
      )}
      <ReasonChoice question={question} />
      {then.kind !== 'end' && (
        <button type="button" className="button main" onClick={() => next(workshop)}>
          {comingWords(then)}
        </button>
      )}
    </div>
  )
}

/** A new phase is read from the question on; what had the focus has gone. */
function useHeadingFocus(question: Question, phase: Phase) {
  const heading = useRef<HTMLHeadingElement>(null)
  const last = useRef({ question, phase })
  useEffect(() => {
    const { question: before, phase: was } = last.current
    last.current = { question, phase }
    if (before !== question || was === phase) return
    heading.current?.focus({ preventScroll: true })
    heading.current?.scrollIntoView({ block: 'start' })
  }, [question, phase])
  return heading
}

export function OwnQuestion({ question }: { readonly question: Question }) {
  const workshop = useWorkshop()
  const phase = useStore(workshop.exercise, (now) => now.phase)
  const headingId = useId()
  const heading = useHeadingFocus(question, phase)
  return (
    <div className="lesson-question">
      <h2 id={headingId} ref={heading} tabIndex={-1}>
        {question.text}
      </h2>
      {phase === 'predict' && <Predict question={question} headingId={headingId} />}
      {phase === 'count' && question.trial && (
        <CountStep question={question} trial={question.trial} onCompare={() => reveal(workshop)} />
      )}
      {phase === 'compare' && <Compare question={question} />}
    </div>
  )
}
