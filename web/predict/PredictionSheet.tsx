/** The prediction sheet: a question, and its three steps predict, count, compare. What was committed stays. */
import { useEffect, useLayoutEffect, useRef, useSyncExternalStore } from 'react'
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { CountStep } from '../question/CountStep.tsx'
import type { Phase } from '../store/exercise.ts'
import { CompareStep } from './CompareStep.tsx'
import { NothingAsked } from './NothingAsked.tsx'
import { PredictStep, hasFlag } from './PredictStep.tsx'
import { SourceChooser } from './SourceChooser.tsx'
import { keepDrafts, takeUpDraft } from './page-again.ts'
import { compare, enter, fallSilent, followPage } from './session.ts'
import './predict.css'
import './phone.css'

const STEPS: readonly { readonly phase: Phase; readonly name: string }[] = [
  { phase: 'predict', name: 'Predict' },
  { phase: 'count', name: 'Count' },
  { phase: 'compare', name: 'Compare' },
]

interface StepsProps {
  readonly phase: Phase
  /** Whether there is something to count */
  readonly counts: boolean
}

function Steps({ phase, counts }: StepsProps) {
  const steps = STEPS.filter((step) => counts || step.phase !== 'count')
  const now = steps.findIndex((step) => step.phase === phase)
  return (
    <ol className="steps">
      {steps.map(({ name }, i) => (
        <li key={name} aria-current={i === now ? 'step' : undefined}>
          {i < now ? <Icon name="check" size={16} /> : <span className="number">{i + 1}</span>}
          <span className="step-name">{name}</span>
          {i < now && <span className="unseen">, done</span>}
        </li>
      ))}
    </ol>
  )
}

const narrow = '(max-width: 767px)'
const subscribe = (changed: () => void) => {
  const media = matchMedia(narrow)
  media.addEventListener('change', changed)
  return () => media.removeEventListener('change', changed)
}
const useNarrow = (): boolean =>
  useSyncExternalStore(
    subscribe,
    () => matchMedia(narrow).matches,
    () => false,
  )

/** A new step or question begins at its top, and is read from its heading on. */
function useStepInView(step: string) {
  const sheet = useRef<HTMLDivElement>(null)
  const last = useRef('')
  useEffect(() => {
    const before = last.current
    last.current = step
    if (!before || before === step) return
    const heading = sheet.current?.querySelector('h2')
    heading?.setAttribute('tabindex', '-1')
    heading?.focus({ preventScroll: true })
    sheet.current?.parentElement?.scrollTo(0, 0)
    // on a phone the page scrolls, and stage and tape belong to what is read
    globalThis.scrollTo(0, 0)
  }, [step])
  return sheet
}

/** Asks when the sheet is opened, and again when another machine comes; the rest of the page is followed meanwhile. */
function useSession(): void {
  const workshop = useWorkshop()
  useLayoutEffect(() => {
    const end = followPage(workshop)
    fallSilent(workshop)
    enter(workshop)
    takeUpDraft(workshop)
    const endKeeping = keepDrafts(workshop)
    return () => {
      endKeeping()
      end()
    }
  }, [workshop])
}

export function PredictionSheet() {
  const workshop = useWorkshop()
  useSession()
  const { question, phase } = useStore(workshop.exercise)
  const began = useStore(workshop.predict, (now) => now.began)
  const oneByOne = useNarrow()
  const sheet = useStepInView(question ? `${began} ${phase}` : '')
  return (
    <div
      className="prediction-sheet"
      ref={sheet}
      data-phase={phase}
      data-flag={question !== null && hasFlag(question)}
    >
      <div className="sheet-top">
        <SourceChooser />
        {question && <Steps phase={phase} counts={question.trial !== null} />}
      </div>
      {question ? (
        <>
          {phase === 'predict' && <PredictStep key={began} question={question} oneByOne={oneByOne} />}
          {phase === 'count' && question.trial && (
            <CountStep question={question} trial={question.trial} onCompare={() => compare(workshop)} />
          )}
          {phase === 'compare' && <CompareStep key={began} question={question} />}
        </>
      ) : (
        <NothingAsked />
      )}
    </div>
  )
}
