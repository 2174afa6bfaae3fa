/** Runs a trial and tells how it stands, for what React renders. */
import { useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { TICKS_PER_TURN, wormTurnsValue } from '../../sim/drive/turns.ts'
import type { Frame } from '../frame/frame-state.ts'
import { hold, turnByHand } from '../frame/frame.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { withTap } from '../store/exercise.ts'
import { isAtEnd, runToEnd } from './trial-run.ts'

/** Whether the machine stands at the end. */
function useEnded(frame: Frame, end: number): boolean {
  const [ended, setEnded] = useState(() => isAtEnd(frame, end))
  useEffect(() => {
    const painter = () => setEnded(isAtEnd(frame, end))
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, end])
  return ended
}

/** `unhurried`: a long run takes its time, so that each pass can be said. */
export function useTrialRun(end: number, unhurried = false) {
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
      stopRun.current = runToEnd(frame, end, { unhurried, ended: () => setStepping(false) })
    },
    /** By hand, from where it is */
    turn: (turns: number) => {
      stop()
      turnByHand(frame, turns * TICKS_PER_TURN)
    },
  }
}

/** Further than this it is a drag, which turns the view [px] */
const STEADY = 6

const isPicture = ({ target }: Event): boolean =>
  target instanceof Element && target.closest('.stage-area canvas, .plan-view') !== null

/** A tap on the picture, which a drag is not; it picks no part meanwhile. */
export function useStageTap(act: () => void): void {
  const now = useRef(act)
  useEffect(() => {
    now.current = act
  }, [act])
  useEffect(() => {
    let from: PointerEvent | null = null
    const pressed = (event: PointerEvent) => {
      from = isPicture(event) && event.isPrimary && event.button === 0 ? event : null
    }
    const released = ({ clientX, clientY }: PointerEvent) => {
      if (from && Math.hypot(clientX - from.clientX, clientY - from.clientY) < STEADY) now.current()
      from = null
    }
    const lost = () => {
      from = null
    }
    const clicked = (event: MouseEvent) => {
      if (isPicture(event)) event.stopPropagation()
    }
    addEventListener('pointerdown', pressed, { capture: true })
    addEventListener('pointerup', released, { capture: true })
    addEventListener('pointercancel', lost)
    addEventListener('click', clicked, { capture: true })
    return () => {
      removeEventListener('pointerdown', pressed, { capture: true })
      removeEventListener('pointerup', released, { capture: true })
      removeEventListener('pointercancel', lost)
      removeEventListener('click', clicked, { capture: true })
    }
  }, [])
}

const takesSpace = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('button, a, input, select, textarea, summary, [role="slider"]') !== null

/** "Mark passed" at where the worm stands now */
export function useTap(): () => void {
  const { exercise, frame } = useWorkshop()
  return () => exercise.setState((last) => withTap(last, wormTurnsValue(frame.state.turns)), true)
}

/** What the space bar does, anywhere but on what takes it itself; the drive is left alone meanwhile. */
export function useSpaceBar(act: () => void): void {
  const now = useRef(act)
  useEffect(() => {
    now.current = act
  }, [act])
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (event.key !== ' ' || event.repeat || takesSpace(event.target)) return
      event.preventDefault()
      event.stopImmediatePropagation()
      now.current()
    }
    addEventListener('keydown', pressed, { capture: true })
    return () => removeEventListener('keydown', pressed, { capture: true })
  }, [])
}
