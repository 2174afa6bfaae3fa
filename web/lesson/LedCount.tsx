/** The turn that a room counts: run and stopped by one button, or by the space bar. Counts stay covered. */
import { useEffect, useRef } from 'react'
import type { Question } from '../../sim/question/question.ts'
import { zero } from '../frame/frame.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { typing } from '../instrument/typing.ts'
import { trialEnd } from '../question/trial-run.ts'
import { useTrialRun } from '../question/use-trial.ts'

const pressing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('button, a, summary') !== null

/** In place of Turn, which would let the drive run on. */
function useSpace(toggle: () => void): void {
  const { view } = useWorkshop()
  const act = useRef(toggle)
  useEffect(() => {
    act.current = toggle
  }, [toggle])
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      const taken = typing(event.target) || pressing(event.target)
      if (event.key !== ' ' || event.repeat || taken || !view.getState().singleKeys) return
      event.preventDefault()
      event.stopPropagation()
      act.current()
    }
    addEventListener('keydown', pressed, { capture: true })
    return () => removeEventListener('keydown', pressed, { capture: true })
  }, [view])
}

export function LedCount({ question }: { readonly question: Question }) {
  const { frame } = useWorkshop()
  const { running, ended, toggle } = useTrialRun(trialEnd(question) ?? 0)
  const turn = () => {
    if (ended) zero(frame)
    toggle()
  }
  useSpace(turn)
  return (
    <>
      <p className="led-trial">{question.trial?.words}</p>
      <button type="button" className="button led-turn" aria-keyshortcuts="Space" onClick={turn}>
        <Icon name={running ? 'stop' : 'turn'} />
        {running ? 'Stop' : ended ? 'Turn it again' : 'Turn to the end'}
        <kbd aria-hidden="true">Space</kbd>
      </button>
    </>
  )
}
