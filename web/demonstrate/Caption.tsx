/** The sentence over the stage, and the two numbers that make it true. */
import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import { COUNT_FIELDS } from '../../sim/machine/fields-counts.ts'
import type { Problem } from '../../sim/machine/problem.ts'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { StepField } from '../instrument/StepField.tsx'
import { ratioHeadline, ratioSentence, wheelsAtPointers } from '../instrument/words.ts'
import { judge } from './judge.ts'

interface CountFieldProps {
  readonly count: 'wormStarts' | 'wheelTeeth'
  readonly less: string
  readonly more: string
}

/** What stands against another field says which, so that its limits are not read as those of this one. */
async function refusalWords({ path, message }: Problem, own: string): Promise<string> {
  const { GEARING_FIELDS } = await import('../../sim/machine/fields-gearing.ts')
  const other = GEARING_FIELDS.find((each) => each.path === path && path !== own)
  return other ? `${other.label} ${message}` : message
}

function CountField({ count, less, more }: CountFieldProps) {
  const { document } = useWorkshop()
  const value = useMachine((machine) => machine.gearing[count])
  const field = COUNT_FIELDS.find(({ path }) => path === `gearing.${count}`)
  if (!field) throw new Error(`${count} is not in the field table`)
  const change = (to: number) =>
    judge.inTurn((refused) => {
      const { machine } = document.store.getState()
      if (machine.gearing[count] === to) return null
      const next = { ...machine, gearing: { ...machine.gearing, [count]: to } }
      const problem = refused(next)
      if (problem === null) document.edit(() => next)
      return problem && refusalWords(problem, field.path)
    })
  return (
    <StepField
      label={field.label}
      value={value}
      min={field.min}
      max={field.max}
      less={less}
      more={more}
      onChange={change}
      onGesture={(phase) =>
        void judge.inTurn(() => (phase === 'begin' ? document.beginGesture() : document.endGesture()))
      }
    />
  )
}

/** True while the machine stands on whole turns of both wheels. */
function useBackAtPointers(z1: number, z2: number): boolean {
  const { frame } = useWorkshop()
  const [back, setBack] = useState(false)
  useEffect(() => {
    const painter = () => setBack(frame.motion === 'still' && wheelsAtPointers(frame.state.turns, z1, z2))
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, z1, z2])
  return back
}

export function Caption() {
  const workshop = useWorkshop()
  const z1 = useMachine((machine) => machine.gearing.wormStarts)
  const z2 = useMachine((machine) => machine.gearing.wheelTeeth)
  const large = useView((view) => view.large)
  const predicted = useStore(workshop.records.store, ({ answered }) => answered.length > 0)
  const back = useBackAtPointers(z1, z2)
  const [into, out] = ratioHeadline(z1, z2)
  return (
    <section className="caption" data-covers="left" aria-label="What this shows">
      <h1>
        {into} <br />
        {out}
      </h1>
      <p className="lead">{back ? 'Both marks are back at their pointers.' : ratioSentence(z1, z2)}</p>
      {!large && (
        <>
          <div className="counts-fields">
            <CountField count="wormStarts" less="One start fewer" more="One start more" />
            <CountField count="wheelTeeth" less="One tooth fewer" more="One tooth more" />
          </div>
          <p className="caption-predict">
            {!predicted && (
              <a className="button" href="#/predict">
                Predict it first
              </a>
            )}
            <button
              type="button"
              className="button"
              onClick={() => workshop.view.setState({ sheet: 'lessons' })}
            >
              Lessons
            </button>
          </p>
        </>
      )}
    </section>
  )
}
