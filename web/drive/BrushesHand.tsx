/** The commutator turned by hand: dragged, by keys, or bar by bar with buttons. */
import { type KeyboardEvent, type PointerEvent, type RefObject, useRef } from 'react'
import { beginDrag, dragTo, endDrag, turnByHand } from '../frame/frame.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { lookFrom } from '../panel/stage-look.ts'
import { type Commutator, DEGREE, ticksToBar } from './commutator.ts'
import { stripScale } from './commutator-strip.ts'

const TURN = 2 * Math.PI
/** Time for one turn by the buttons, so that a coil is seen on its way under a brush [s] */
const SECONDS_A_TURN = 14

interface HandSliderProps {
  readonly commutator: Commutator
  readonly strip: RefObject<HTMLCanvasElement | null>
  readonly slider: RefObject<HTMLDivElement | null>
}

/** The strip is a slider: by degrees, by bars, or dragged along. */
export function HandSlider({ commutator, strip, slider }: HandSliderProps) {
  const { frame } = useWorkshop()
  const from = useRef<number | null>(null)
  const bar = (by: 1 | -1) => turnByHand(frame, ticksToBar(commutator, frame.state.turns, by), SECONDS_A_TURN)
  const degree = (by: 1 | -1) => turnByHand(frame, by * DEGREE)
  const keys: Readonly<Record<string, () => void>> = {
    ArrowRight: () => degree(1),
    ArrowUp: () => degree(1),
    ArrowLeft: () => degree(-1),
    ArrowDown: () => degree(-1),
    PageUp: () => bar(1),
    PageDown: () => bar(-1),
  }
  const press = (event: KeyboardEvent) => {
    const act = keys[event.key]
    if (!act) return
    event.preventDefault()
    event.stopPropagation()
    act()
  }
  const follow = (event: PointerEvent<HTMLDivElement>) => {
    if (from.current === null) return
    const scale = stripScale(event.currentTarget.clientWidth, commutator)
    dragTo(frame, (event.clientX - from.current) / scale / TURN)
  }
  const letGo = () => {
    if (from.current === null) return
    from.current = null
    endDrag(frame)
  }
  return (
    <div
      ref={slider}
      className="brushes-hand"
      role="slider"
      tabIndex={0}
      aria-label="Turn the commutator by hand"
      aria-valuemin={-180}
      aria-valuemax={180}
      aria-valuenow={0}
      onKeyDown={press}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        from.current = event.clientX
        beginDrag(frame)
      }}
      onPointerMove={follow}
      onPointerUp={letGo}
      onPointerCancel={letGo}
    >
      <canvas ref={strip} />
    </div>
  )
}

export function Steps({ commutator }: { readonly commutator: Commutator }) {
  const { frame, view } = useWorkshop()
  const picture = useView(({ plan }) => plan === 'no' || plan === 'chosen')
  const near = useView((state) => state.view.name === 'commutator' && state.camera === null)
  const step = (by: 1 | -1) =>
    turnByHand(frame, ticksToBar(commutator, frame.state.turns, by), SECONDS_A_TURN)
  return (
    <div className="brushes-steps">
      <button type="button" className="button" onClick={() => step(-1)}>
        One bar back
      </button>
      <button type="button" className="button" onClick={() => step(1)}>
        One bar on
      </button>
      {picture && (
        <button
          type="button"
          className="button"
          onClick={() => view.setState((state) => lookFrom(state, near ? 'gears' : 'commutator'))}
        >
          {near ? 'Back to the gears' : 'Look at it near'}
        </button>
      )}
    </div>
  )
}
