/** Runs a trial and tells how it stands, for what React renders. */
import { useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { TICKS_PER_TURN, wormTurnsValue } from '../../sim/drive/turns.ts'
import type { Frame } from '../frame/frame-state.ts'
import { hold, turnByHand } from '../frame/frame.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { withTap } from '../store/exercise.ts'
import { isAtEnd, runToEnd } from './trial-run.ts'

/** Whether the machine stands at the end, and has been said to once it does. */
function useEnded(frame: Frame, end: number): boolean {
  const { announcer } = useWorkshop()
  const [ended, setEnded] = useState(() => isAtEnd(frame, end))
  useEffect(() => {
    let last = isAtEnd(frame, end)
    const painter = () => {
      const now = isAtEnd(frame, end)
      if (now && !last) announcer.say('The turn has ended.')
      last = now
      setEnded(now)
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, end, announcer])
  return ended
}

export function useTrialRun(end: number) {
  const { frame, readout } = useWorkshop()
  const turning = useStore(readout, (now) => now.motion === 'hand')
  const [stepping, setStepping] = useState(false)
  const stopRun = useRef<(() => void) | null>(null)
  const ended = useEnded(frame, end)
  const stop = () => {
    stopRun.current?.()
    stopRun.current = null
    setStepping(false)
  }
  useEffect(() => () => stopRun.current?.(), [])
  const running = turning || (stepping && !ended)
  return {
    ended,
    running,
    toggle: () => {
      if (running) {
        stop()
        hold(frame)
        return
      }
      stop()
      setStepping(frame.cuts)
      stopRun.current = runToEnd(frame, end, () => setStepping(false))
    },
    /** By hand, from where it is */
    turn: (turns: number) => {
      stop()
      turnByHand(frame, turns * TICKS_PER_TURN)
    },
  }
}

const takesSpace = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('button, a, input, select, textarea, summary, [role="slider"]') !== null

/** "Mark passed" at where the worm stands now; the space bar does it anywhere but on what takes it itself. */
export function useTap(counts: boolean): () => void {
  const { exercise, frame } = useWorkshop()
  const tap = useRef(() => undefined as void)
  useEffect(() => {
    tap.current = () => exercise.setState((last) => withTap(last, wormTurnsValue(frame.state.turns)), true)
    if (!counts) return undefined
    const pressed = (event: KeyboardEvent) => {
      if (event.key !== ' ' || event.repeat || takesSpace(event.target)) return
      event.preventDefault()
      event.stopImmediatePropagation()
      tap.current()
    }
    addEventListener('keydown', pressed, { capture: true })
    return () => removeEventListener('keydown', pressed, { capture: true })
  }, [frame, exercise, counts])
  return () => tap.current()
}
