/** Step 3: prediction, own count and machine side by side, the reason, what to watch, and what comes next. */
import { useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { mark } from '../../sim/question/marking.ts'
import type { Question } from '../../sim/question/question.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { openPanel } from '../panel/panels.ts'
import { Compared } from '../question/Compared.tsx'
import { ReasonChoice } from '../question/ReasonChoice.tsx'
import { answerText, replyText } from '../question/answer-words.ts'
import { panelOf, playWatch } from '../question/watch-stage.ts'
import type { Exercise } from '../store/exercise.ts'
import { askAnother, askNext } from './session.ts'

interface StepProps {
  readonly question: Question
  readonly exercise: Exercise
}

/** "20 turns. You said 12 turns."; of other kinds, what the question was about. */
function headline({ question, exercise }: StepProps): string {
  const { ask, title } = question
  if (ask.kind !== 'number') return title
  const said = exercise.reply ? ` You said ${replyText(question, exercise.reply)}.` : ''
  return `${answerText(question)}.${said}`
}

const NARROW = '(max-width: 767px)'

/** On a phone what is watched stands above the sheet, a panel below it; `waits` pictures at most until it has come. */
function bringInSight(isPanel: boolean, waits = 90): void {
  if (!matchMedia(NARROW).matches) return
  requestAnimationFrame(() => {
    const panel = document.querySelector('.right-column .panel-body > :not(.loading)')
    if (!isPanel) scrollTo(0, 0)
    else if (panel) document.querySelector('.right-column')?.scrollIntoView({ block: 'start' })
    else if (waits > 0) bringInSight(isPanel, waits - 1)
  })
}

/** Plays the explanation, again and again; what is left of it ends with the comparison. */
function useWatch(question: Question) {
  const workshop = useWorkshop()
  const stop = useRef<(() => void) | null>(null)
  const [played, setPlayed] = useState(false)
  useEffect(
    () => () => {
      // the drive may by then be running for what took the question's place, which holds it where it should
      if (question.watch?.turns !== null) stop.current?.()
    },
    [question],
  )
  const play = () => {
    stop.current?.()
    stop.current = playWatch(workshop, question)
    setPlayed(true)
    bringInSight(panelOf(question) !== null)
  }
  return { played, play }
}

function ClosePanel({ question }: { readonly question: Question }) {
  const workshop = useWorkshop()
  const open = useView((view) => view.panel !== 'none')
  if (!open || panelOf(question) === null) return null
  return (
    <button type="button" className="button plain" onClick={() => openPanel(workshop, 'none')}>
      Close the panel
    </button>
  )
}

const isMissed = ({ question, exercise: { reply } }: StepProps): boolean =>
  reply !== null && mark(question, reply).right === false

/** After a miss in practice the same kind comes first; a set goes on in its own order. */
function NextButtons(props: StepProps) {
  const workshop = useWorkshop()
  const { source, set } = useStore(workshop.predict)
  const { question, exercise } = props
  const last = source === 'set' && set !== null && set.at === set.items.length - 1
  const again = question.family !== null && (exercise.skipped || isMissed(props))
  const againFirst = again && source === 'practice'
  const kind = (main: boolean) => (main ? 'button main' : 'button')
  return (
    <>
      {!last && (
        <button type="button" className={kind(!againFirst)} onClick={() => askNext(workshop)}>
          Next<span className="further"> question</span>
        </button>
      )}
      {again && (
        <button
          type="button"
          className={kind(againFirst || last)}
          onClick={() => askAnother(workshop, question)}
        >
          Another like it
        </button>
      )}
      {last && <p className="small">That was the last question.</p>}
    </>
  )
}

export function CompareStep({ question }: { readonly question: Question }) {
  const exercise = useStore(useWorkshop().exercise)
  const { played, play } = useWatch(question)
  const { watch } = question
  return (
    <div className="step">
      <div>
        <h2>{headline({ question, exercise })}</h2>
        <p className="given small">{question.text}</p>
      </div>
      <Compared question={question} exercise={exercise} />
      <ReasonChoice question={question} />
      {watch && (
        <p className="watch">
          <b>Watch:</b> {watch.words}
        </p>
      )}
      <ClosePanel question={question} />
      <div className="commit next-row">
        {watch && (
          <button type="button" className="button" onClick={play}>
            <Icon name="turn" size={16} />
            {played ? 'Watch again' : 'Watch it'}
          </button>
        )}
        <NextButtons question={question} exercise={exercise} />
      </div>
    </div>
  )
}
