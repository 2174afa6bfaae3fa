/** Step 1: a number, a direction, how sure, and the commitment. The machine stands still meanwhile. */
import { useId, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import { useStore } from 'zustand'
import { show, zero } from '../frame/frame.ts'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { type Sureness, committed, withDirection, withSureness } from '../store/prediction.ts'
import { Choice, type ChoiceOption } from './Choice.tsx'
import { GuessField } from './GuessField.tsx'
import { readGuess } from './guess.ts'
import { pairOf } from './next-pair.ts'

const DIRECTIONS: readonly ChoiceOption<'same' | 'opposite'>[] = [
  { value: 'same', label: 'As the left one' },
  { value: 'opposite', label: 'The other way' },
]

export const SURENESS: readonly ChoiceOption<Sureness>[] = [
  { value: 1, label: '1', note: 'a guess' },
  { value: 2, label: '2', note: 'fairly' },
  { value: 3, label: '3', note: 'certain' },
]

function Given() {
  const starts = useMachine((machine) => machine.gearing.wormStarts)
  const teeth = useMachine((machine) => machine.gearing.wheelTeeth)
  return (
    <p className="given">
      The worm has {starts} {starts === 1 ? 'start' : 'starts'}. Each wheel has {teeth} teeth.
    </p>
  )
}

function DirectionAndSureness() {
  const { prediction } = useWorkshop()
  const direction = useStore(prediction, (now) => now.direction)
  const sureness = useStore(prediction, (now) => now.sureness)
  return (
    <>
      <Choice
        name="direction"
        question="Which way does the right wheel turn?"
        options={DIRECTIONS}
        chosen={direction}
        onChoose={(way) => prediction.setState((last) => withDirection(last, way), true)}
      />
      <Choice
        name="sureness"
        question="How sure?"
        options={SURENESS}
        chosen={sureness}
        onChoose={(level) => prediction.setState((last) => withSureness(last, level), true)}
      />
    </>
  )
}

/** `oneByOne`: one question at a time, for a narrow screen. */
export function PredictStep({ oneByOne }: { readonly oneByOne: boolean }) {
  const { prediction, document, frame } = useWorkshop()
  const input = useRef<HTMLInputElement>(null)
  const questionId = useId()
  const [said, setSaid] = useState<string | null>(null)
  const [second, setSecond] = useState(false)
  const numberStands = () => {
    const guess = readGuess(prediction.getState().text)
    setSaid('said' in guess ? guess.said : null)
    if ('said' in guess) input.current?.focus()
    return 'turns' in guess
  }
  const form = useRef<HTMLFormElement>(null)
  const goOn = () => {
    flushSync(() => setSecond(oneByOne))
    form.current?.querySelector<HTMLElement>('input[type="radio"]')?.focus()
  }
  const commit = () => {
    if (!numberStands()) return
    zero(frame)
    show(frame)
    prediction.setState((last) => committed(last, pairOf(document.store.getState().machine)), true)
  }
  return (
    <form
      className="step"
      ref={form}
      onSubmit={(event) => {
        // Enter goes on to the next question; only the button commits.
        event.preventDefault()
        if (numberStands()) goOn()
      }}
    >
      {oneByOne && <p className="small">Question {second ? 2 : 1} of 2</p>}
      {(!oneByOne || !second) && (
        <div>
          <h2 id={questionId}>At which worm turn is the left wheel’s mark back at its pointer?</h2>
          <Given />
          <GuessField questionId={questionId} input={input} said={said} />
        </div>
      )}
      {(!oneByOne || second) && <DirectionAndSureness />}
      <div className="commit">
        {oneByOne && second && (
          <button type="button" className="button" onClick={() => setSecond(false)}>
            Back to question 1
          </button>
        )}
        {oneByOne && !second ? (
          <button key="next" type="button" className="button main" onClick={() => numberStands() && goOn()}>
            Next question
          </button>
        ) : (
          <button key="commit" type="button" className="button main" onClick={commit}>
            Commit prediction
          </button>
        )}
        <p className="small">
          {oneByOne && !second ? 'Held still until you commit.' : 'It cannot be changed afterwards.'}
        </p>
      </div>
    </form>
  )
}
