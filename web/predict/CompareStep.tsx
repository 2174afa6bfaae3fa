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
import { panelOf, playWatch } from '../question/watch-stage.ts'
import type { Exercise } from '../store/exercise.ts'
import { askAnother, askNext } from './session.ts'

/** Plays the explanation, again and again; what is left of it ends with the comparison. */
function Watch({ question }: { readonly question: Question }) {
  const workshop = useWorkshop()
  const { watch } = question
  const stop = useRef<(() => void) | null>(null)
  const [played, setPlayed] = useState(false)
  const open = useView((view) => view.panel !== 'none')
  useEffect(() => () => stop.current?.(), [])
  if (!watch) return null
  const play = () => {
    stop.current?.()
    stop.current = playWatch(workshop, question)
    setPlayed(true)
  }
  return (
    <div className="watch">
      <button type="button" className="button" onClick={play}>
        <Icon name="turn" />
        {played ? 'Watch it again' : 'Watch it'}
      </button>
      <p>{watch.words}</p>
      {open && panelOf(question) !== null && (
        <button type="button" className="button plain" onClick={() => openPanel(workshop, 'none')}>
          Close the panel
        </button>
      )}
    </div>
  )
}

const isMissed = ({ question, reply }: Exercise): boolean =>
  question !== null && reply !== null && mark(question, reply).right === false

function NextRow({ exercise, question }: { readonly exercise: Exercise; readonly question: Question }) {
  const workshop = useWorkshop()
  const { source, set } = useStore(workshop.predict)
  const missed = isMissed(exercise) && question.family !== null
  const last = source === 'set' && set !== null && set.at === set.items.length - 1
  return (
    <div className="commit next-row" data-alone={last || !(missed || exercise.skipped)}>
      {(missed || exercise.skipped) && (
        <button
          type="button"
          className={missed && source === 'practice' ? 'button main' : 'button'}
          onClick={() => askAnother(workshop, question)}
        >
          Another of this kind
        </button>
      )}
      {last ? (
        <p className="small">That was the last of {set.items.length}.</p>
      ) : (
        <button
          type="button"
          className={missed && source === 'practice' ? 'button' : 'button main'}
          onClick={() => askNext(workshop)}
        >
          Next question
          <Icon name="next" size={16} />
        </button>
      )}
    </div>
  )
}

export function CompareStep({ question }: { readonly question: Question }) {
  const { exercise } = useWorkshop()
  const now = useStore(exercise)
  return (
    <div className="step">
      <Compared question={question} exercise={now} />
      <ReasonChoice question={question} />
      <Watch question={question} />
      <NextRow exercise={now} question={question} />
    </div>
  )
}
