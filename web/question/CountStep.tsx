/** Step 2: the machine turns as far as is asked, slowly enough, and the learner counts. All counts stay covered. */
import { type RefObject, useCallback, useId, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Trial } from '../../sim/question/family.ts'
import type { Question } from '../../sim/question/question.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { withOwnCount, withoutLastTap } from '../store/exercise.ts'
import { UNIT_WORDS } from './answer-words.ts'
import { countedPasses } from './own-count.ts'
import { useSpokenPasses, useSpokenStop, useTickedPasses } from './spoken-count.ts'
import { isAtEnd, trialEnd } from './trial-run.ts'
import { useSpaceBar, useStageTap, useTap, useTrialRun } from './use-trial.ts'
import './count.css'

type Counted = Trial['counted']

const HEADINGS: Readonly<Record<Counted, string>> = {
  worm: 'Count the turns of the worm',
  left: 'Count the turns of the left wheel',
  teeth: 'Count the teeth',
  senses: 'See how they turn',
}

/** What one press of the hand turns [worm turns], and how it is named */
const SINGLE: Readonly<Record<Counted, { readonly turns: number; readonly name: string }>> = {
  worm: { turns: 1, name: 'One worm turn' },
  left: { turns: 1, name: 'One worm turn' },
  teeth: { turns: 0.25, name: 'A quarter turn' },
  senses: { turns: 0.25, name: 'A quarter turn' },
}

/** How long the pad looks pressed when it was not pressed itself [ms] */
const SEEN = 120

function showTap(pad: HTMLElement | null): void {
  pad?.setAttribute('data-tapped', 'true')
  setTimeout(() => pad?.removeAttribute('data-tapped'), SEEN)
}

interface CountPadProps {
  readonly counted: Counted
  readonly pad: RefObject<HTMLButtonElement | null>
}

function CountPad({ counted, pad }: CountPadProps) {
  const { exercise } = useWorkshop()
  const tapped = useStore(exercise, (now) => now.taps.length > 0)
  const tap = useTap()
  const tapElsewhere = () => {
    tap()
    showTap(pad.current)
  }
  useSpaceBar(tapElsewhere)
  useStageTap(tapElsewhere)
  return (
    <section className="count-pad" aria-label="Count pad">
      <button ref={pad} type="button" className="button count-tap" aria-keyshortcuts="Space" onClick={tap}>
        {counted === 'teeth' ? 'Tooth passed' : 'Mark passed'}
        <kbd aria-hidden="true">Space</kbd>
        <span className="small" aria-hidden="true">
          here or on the picture
        </span>
      </button>
      <button
        type="button"
        className="button icon"
        title="Take back the last one"
        aria-disabled={!tapped}
        onClick={() => exercise.setState(withoutLastTap, true)}
      >
        <Icon name="undo" />
        <span className="unseen">Take back the last one</span>
      </button>
    </section>
  )
}

/** A count kept in the head, or what was seen. */
function OwnCount({ question }: { readonly question: Question }) {
  const { exercise } = useWorkshop()
  const own = useStore(exercise, (now) => now.ownCount)
  const id = useId()
  const { ask } = question
  const unit = ask.kind === 'number' ? UNIT_WORDS[ask.unit] : ''
  return (
    <p className="own-count">
      <label htmlFor={id}>{ask.kind === 'number' ? 'Own count' : 'What you saw'}</label>
      <input
        id={id}
        className="box"
        type="text"
        autoComplete="off"
        maxLength={60}
        value={own}
        onChange={(event) => {
          const { value } = event.currentTarget
          exercise.setState((last) => withOwnCount(last, value), true)
        }}
      />
      {unit && <span>{unit}</span>}
    </p>
  )
}

type Run = ReturnType<typeof useTrialRun>

interface SingleTurnsProps {
  readonly counted: Counted
  readonly sense: number
  readonly run: Run
}

function SingleTurns({ counted, sense, run }: SingleTurnsProps) {
  const { turns, name } = SINGLE[counted]
  return (
    <div className="turns-row">
      <button type="button" className="button" onClick={() => run.turn(-sense * turns)}>
        <Icon name="back" size={16} />
        <span>
          {name}
          <span className="unseen"> back</span>
        </span>
      </button>
      <button type="button" className="button" onClick={() => run.turn(sense * turns)}>
        {name}
        <Icon name="next" size={16} />
      </button>
    </div>
  )
}

/** Nothing is counted: the space bar turns and stops, by hand. */
function Looking({ onSpace }: { readonly onSpace: () => void }) {
  useSpaceBar(onSpace)
  return null
}

const SAID: Readonly<Partial<Record<Counted, string>>> = {
  worm: 'Worm mark passes.',
  left: 'Left wheel mark passes.',
}

interface CheckProps {
  readonly name: string
  readonly note: string
  readonly isOn: boolean
  readonly onChange: (isOn: boolean) => void
}

const Check = ({ name, note, isOn, onChange }: CheckProps) => (
  <label className="by-ear-check">
    <input type="checkbox" checked={isOn} onChange={() => onChange(!isOn)} />
    <span>
      {name} <span className="small">{note}</span>
    </span>
  </label>
)

interface ByEarProps {
  readonly question: Question
  readonly words: string
  readonly says: boolean
  readonly onSays: (says: boolean) => void
}

/** For counting without sight; the listener counts, so no number is told. */
function ByEar({ question, words, says, onSays }: ByEarProps) {
  const [ticks, setTicks] = useState(false)
  useSpokenPasses(words, countedPasses(question)?.every ?? 1, says)
  useTickedPasses(ticks)
  return (
    <details className="by-ear">
      <summary>
        Count by ear
        <Icon name="down" size={16} />
      </summary>
      <Check name="Tick at each pass" note="worm high, wheels low" isOn={ticks} onChange={setTicks} />
      <Check name="Say each pass" note="for a screen reader" isOn={says} onChange={onSays} />
    </details>
  )
}

interface CountStepProps {
  readonly question: Question
  readonly trial: Trial
  /** The learner has seen enough, or the turn has ended. */
  readonly onCompare: () => void
}

export function CountStep({ question, trial, onCompare }: CountStepProps) {
  const { counted, words } = trial
  const { frame } = useWorkshop()
  const end = trialEnd(question) ?? 0
  const [says, setSays] = useState(false)
  const run = useTrialRun(end, says)
  useSpokenStop(
    trial,
    useCallback(() => isAtEnd(frame, end), [frame, end]),
  )
  const said = SAID[counted]
  const pad = useRef<HTMLButtonElement>(null)
  const start = () => {
    run.toggle()
    // from now on the space bar counts, and does not stop the run
    if (!run.running) pad.current?.focus({ preventScroll: true })
  }
  return (
    <div className="step">
      <div>
        <h2>{HEADINGS[counted]}</h2>
        <p className="given">{words}</p>
      </div>
      <button type="button" className="button run" aria-disabled={run.ended} onClick={start}>
        <Icon name={run.running ? 'stop' : 'turn'} />
        {run.running ? 'Stop' : run.ended ? 'The turn has ended' : 'Turn to the end'}
      </button>
      <SingleTurns counted={counted} sense={Math.sign(end)} run={run} />
      {counted === 'senses' ? <Looking onSpace={run.toggle} /> : <CountPad counted={counted} pad={pad} />}
      <OwnCount question={question} />
      {said && <ByEar question={question} words={said} says={says} onSays={setSays} />}
      <div className="commit">
        <button type="button" className={run.ended ? 'button main' : 'button'} onClick={onCompare}>
          {run.ended ? 'Compare' : 'Compare now'}
        </button>
      </div>
    </div>
  )
}
