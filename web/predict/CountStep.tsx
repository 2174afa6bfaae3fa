/** Step 2: the machine turns, slowly enough, and the learner counts. Counts stay covered until the mark is back. */
import { useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { TICKS_PER_TURN, wormTurnsValue } from '../../sim/drive/turns.ts'
import { type Frame } from '../frame/frame-state.ts'
import { hold, turnByHand } from '../frame/frame.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { type Pair, compared, withCountShown, withTap, withoutLastTap } from '../store/prediction.ts'
import { markIsBack, stepToMark, turnToMark } from './mark-run.ts'

/** Time between the quarter turns of a run without motion [ms] */
const QUARTER_EVERY = 250

/** Starts and stops the run to the mark; under reduced motion it goes by quarter turns. */
function useMarkRun(frame: Frame, pair: Pair) {
  const [stepping, setStepping] = useState(false)
  const { readout } = useWorkshop()
  const turning = useStore(readout, (now) => now.motion === 'hand')
  useEffect(() => {
    if (!stepping) return undefined
    const timer = setInterval(() => stepToMark(frame, pair), QUARTER_EVERY)
    return () => clearInterval(timer)
  }, [stepping, frame, pair])
  const running = turning || stepping
  const toggle = () => {
    if (running) {
      setStepping(false)
      hold(frame)
    } else if (frame.cuts) setStepping(true)
    else turnToMark(frame, pair)
  }
  return { running, toggle, stop: () => setStepping(false) }
}

/** Goes on to the comparison as soon as the mark stands at its pointer. */
function useArrival(frame: Frame, pair: Pair): void {
  const { prediction, announcer } = useWorkshop()
  useEffect(() => {
    const painter = () => {
      if (!markIsBack(frame, pair)) return
      frame.painters.delete(painter)
      announcer.say('The left wheel’s mark is back at its pointer.')
      prediction.setState(compared, true)
    }
    frame.painters.add(painter)
    return () => void frame.painters.delete(painter)
  }, [frame, pair, prediction, announcer])
}

const takesSpace = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('button, a, input, select, textarea, summary, [role="slider"]') !== null

function useTap(frame: Frame) {
  const { prediction } = useWorkshop()
  const tap = useRef(() => undefined as void)
  useEffect(() => {
    tap.current = () => prediction.setState((last) => withTap(last, wormTurnsValue(frame.state.turns)), true)
    const pressed = (event: KeyboardEvent) => {
      if (event.key !== ' ' || event.repeat || takesSpace(event.target)) return
      event.preventDefault()
      event.stopImmediatePropagation()
      tap.current()
    }
    addEventListener('keydown', pressed, { capture: true })
    return () => removeEventListener('keydown', pressed, { capture: true })
  }, [frame, prediction])
  return () => tap.current()
}

function CountPad({ frame }: { readonly frame: Frame }) {
  const { prediction } = useWorkshop()
  const tapped = useStore(prediction, (now) => now.taps.length > 0)
  const tap = useTap(frame)
  return (
    <section className="count-pad" aria-label="Count pad">
      <button type="button" className="button count-tap" aria-keyshortcuts="Space" onClick={tap}>
        Mark passed
        <kbd aria-hidden="true">Space</kbd>
      </button>
      <button
        type="button"
        className="button plain"
        disabled={!tapped}
        onClick={() => prediction.setState(withoutLastTap, true)}
      >
        <Icon name="undo" />
        Take back the last one
      </button>
    </section>
  )
}

export function CountStep({ pair }: { readonly pair: Pair }) {
  const { frame, prediction } = useWorkshop()
  const shown = useStore(prediction, (now) => now.shown)
  const { running, toggle, stop } = useMarkRun(frame, pair)
  useArrival(frame, pair)
  const turn = (way: 1 | -1) => {
    stop()
    turnByHand(frame, way * TICKS_PER_TURN)
  }
  return (
    <div className="step">
      <div>
        <h2>Count the turns of the worm</h2>
        <p className="given">
          Say “Mark passed” each time the worm’s mark goes past its pointer. The machine stops when the left
          wheel’s mark is back.
        </p>
      </div>
      <button type="button" className="button main run" onClick={toggle}>
        <Icon name={running ? 'stop' : 'turn'} />
        {running ? 'Stop' : 'Turn until the mark is back'}
      </button>
      <div className="turns-row">
        <button type="button" className="button" onClick={() => turn(-1)}>
          <Icon name="back" size={16} />
          One worm turn back
        </button>
        <button type="button" className="button" onClick={() => turn(1)}>
          One worm turn
          <Icon name="next" size={16} />
        </button>
      </div>
      <CountPad frame={frame} />
      <div className="commit">
        <button
          type="button"
          className="button plain"
          disabled={shown}
          onClick={() => prediction.setState(withCountShown, true)}
        >
          Show the count
        </button>
      </div>
    </div>
  )
}
