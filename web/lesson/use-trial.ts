/** The turn by which an answer is tried on the stage: run and stopped by one button, or by the space bar. */
import { useEffect, useRef, useState } from 'react'
import type { Question } from '../../sim/question/question.ts'
import { hold, zero } from '../frame/frame.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { isAtEnd, runToEnd, trialEnd } from '../question/trial-run.ts'

export interface TrialRun {
  readonly running: boolean
  readonly ended: boolean
  readonly toggle: () => void
}

/** Null where there is nothing to try. */
export function useTrial(question: Question | null): TrialRun | null {
  const { frame } = useWorkshop()
  const end = question && trialEnd(question)
  const [state, setState] = useState({ running: false, ended: false })
  const stop = useRef<(() => void) | null>(null)
  useEffect(() => {
    if (end === null) return undefined
    const painter = () => {
      const ended = isAtEnd(frame, end)
      const running = stop.current !== null && !ended
      if (ended) stop.current = null
      setState((last) => (last.running === running && last.ended === ended ? last : { running, ended }))
    }
    frame.painters.add(painter)
    painter()
    return () => {
      frame.painters.delete(painter)
      stop.current?.()
      stop.current = null
    }
  }, [frame, end])
  if (end === null) return null
  const toggle = () => {
    if (stop.current) {
      stop.current()
      stop.current = null
      hold(frame)
      setState((last) => ({ ...last, running: false }))
      return
    }
    if (isAtEnd(frame, end)) zero(frame)
    stop.current = runToEnd(frame, end)
    setState({ running: true, ended: false })
  }
  return { ...state, toggle }
}
