/** The prediction sheet: predict, count, compare. What was committed stays; other counts begin a new prediction. */
import { useEffect, useRef, useSyncExternalStore } from 'react'
import { useStore } from 'zustand'
import { show, zero } from '../frame/frame.ts'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { type PredictionPhase, noPrediction } from '../store/prediction.ts'
import { CompareStep } from './CompareStep.tsx'
import { CountStep } from './CountStep.tsx'
import { PredictStep } from './PredictStep.tsx'
import './predict.css'

const STEPS: readonly { readonly phase: PredictionPhase; readonly name: string }[] = [
  { phase: 'predict', name: 'Predict' },
  { phase: 'count', name: 'Count' },
  { phase: 'compare', name: 'Compare' },
]

function Steps({ phase }: { readonly phase: PredictionPhase }) {
  const now = STEPS.findIndex((step) => step.phase === phase)
  return (
    <ol className="steps">
      {STEPS.map(({ name }, i) => (
        <li key={name} aria-current={i === now ? 'step' : undefined}>
          {i < now ? <Icon name="check" size={16} /> : <span className="number">{i + 1}</span>}
          {name}
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

/** Before anything is committed the marks stand at their pointers; a machine with other counts asks anew. */
function useFreshQuestion(starts: number, teeth: number): void {
  const { prediction, frame } = useWorkshop()
  useEffect(() => {
    const { phase, pair } = prediction.getState()
    const other = pair !== null && (pair.starts !== starts || pair.teeth !== teeth)
    if (other) prediction.setState(noPrediction, true)
    if (!other && phase !== 'predict') return
    zero(frame)
    show(frame)
  }, [prediction, frame, starts, teeth])
}

/** A new step begins at its top, and is read from its heading on. */
function useStepInView(phase: PredictionPhase) {
  const sheet = useRef<HTMLDivElement>(null)
  const last = useRef(phase)
  useEffect(() => {
    if (last.current === phase) return
    last.current = phase
    const heading = sheet.current?.querySelector('h2')
    heading?.setAttribute('tabindex', '-1')
    heading?.focus({ preventScroll: true })
    sheet.current?.scrollIntoView({ block: 'nearest' })
    sheet.current?.parentElement?.scrollTo(0, 0)
  }, [phase])
  return sheet
}

export function PredictionSheet() {
  const { prediction } = useWorkshop()
  const phase = useStore(prediction, (now) => now.phase)
  const pair = useStore(prediction, (now) => now.pair)
  const starts = useMachine((machine) => machine.gearing.wormStarts)
  const teeth = useMachine((machine) => machine.gearing.wheelTeeth)
  const oneByOne = useNarrow()
  useFreshQuestion(starts, teeth)
  const sheet = useStepInView(phase)
  return (
    <div className="prediction-sheet" ref={sheet} data-phase={phase}>
      <Steps phase={phase} />
      {phase === 'predict' && <PredictStep oneByOne={oneByOne} />}
      {phase === 'count' && pair && <CountStep pair={pair} />}
      {phase === 'compare' && pair && <CompareStep pair={pair} />}
    </div>
  )
}
