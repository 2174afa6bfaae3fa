/** The band that counts: three lanes, left wheel, worm, right wheel, each a head with its counter and a strip of tape. */
import { useMemo } from 'react'
import { useStore } from 'zustand'
import type { Question } from '../../sim/question/question.ts'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { type Exercise, withAnswer } from '../store/exercise.ts'
import { LaneHead } from './LaneHead.tsx'
import { PassTable } from './PassTable.tsx'
import { TurnTape } from './TurnTape.tsx'
import type { Trial } from './tape-notes.ts'
import './counting.css'

export interface TurnBandProps {
  readonly size: 'normal' | 'large' | 'predict' | 'phone'
  /** Until the count is over no counter, mark or name tells how far the wheels have turned. */
  readonly covered: boolean
}

const NO_TAPS: readonly number[] = []

/** Worm turns between two of what a trial counts */
function apart(counted: 'worm' | 'left' | 'teeth' | 'senses', starts: number, teeth: number): number {
  if (counted === 'left') return teeth / starts
  return counted === 'teeth' ? 1 / starts : 1
}

/** The turn that a question lets a learner count; null where it is asked in front of a room, or there is none. */
function useTrial(question: Question | null, starts: number, teeth: number): Trial | null {
  const trial = question?.trial ?? null
  return useMemo(
    () => trial && { end: trial.top / trial.bottom, every: apart(trial.counted, starts, teeth) },
    [trial, starts, teeth],
  )
}

/** Where the answer is a place of the worm, so that a flag can stand on it. */
const isPlace = ({ ask, trial }: Question): boolean =>
  ask.kind === 'number' && ask.unit === 'turn' && trial?.counted === 'worm'

function useFlag({ question, phase, text, reply }: Exercise, mayMove: boolean) {
  const { exercise } = useWorkshop()
  const stands = question !== null && isPlace(question)
  const move = (place: number) =>
    exercise.setState((last) => withAnswer(last, String(place), { kind: 'number', value: place }), true)
  const value = reply?.kind === 'number' ? reply.value : null
  return {
    flag: stands && value !== null && value >= 0 ? value : null,
    flagText: text,
    onFlag: stands && mayMove && phase === 'predict' ? move : null,
  }
}

export function TurnBand({ size, covered }: TurnBandProps) {
  const { exercise, lesson } = useWorkshop()
  const now = useStore(exercise)
  const alone = useStore(lesson, ({ mode }) => mode === 'alone')
  const asks = useView((view) => view.way === 'predict') || alone
  const starts = useMachine((machine) => machine.gearing.wormStarts)
  const teeth = useMachine((machine) => machine.gearing.wheelTeeth)
  const trial = useTrial(now.question, starts, teeth)
  const flag = useFlag(now, asks && covered)
  return (
    <section className="turn-band" data-size={size} aria-label="Turn tape">
      <div className="lane-heads">
        <LaneHead part="left" covered={covered} />
        <LaneHead part="worm" covered={covered} />
        <LaneHead part="right" covered={covered} />
      </div>
      <TurnTape
        starts={starts}
        teeth={teeth}
        cover={covered ? (now.phase === 'predict' ? 'scale' : 'all') : 'none'}
        taps={covered ? NO_TAPS : now.taps}
        trial={covered ? null : trial}
        {...flag}
      />
      {!covered && <PassTable />}
    </section>
  )
}
