/** The commutator seen close: brushes, bars and coils, in step with the machine and turned by hand. */
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useMemo, useRef } from 'react'
import { ChartActions } from '../chart/ChartActions.tsx'
import { beginDrag, dragTo, endDrag, turnByHand } from '../frame/frame.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { lookFrom } from '../panel/stage-look.ts'
import { alternates, type BrushedMachine } from './brushes-state.ts'
import type { BrushNow } from './brushes-now.ts'
import { placeText, signedCurrent } from './brushes-words.ts'
import { BrushesTrace, type TraceMark } from './BrushesTrace.tsx'
import { type Commutator, DEGREE, coilPart, coilTrace, commutatorOf, ticksToBar } from './commutator.ts'
import type { CommutatorMoment } from './commutator-picture.ts'
import { stripScale } from './commutator-strip.ts'
import { attachCommutator } from './commutator-surface.ts'

interface CommutatorProps {
  readonly machine: BrushedMachine
  readonly now: BrushNow
}

const TURN = 2 * Math.PI
const DEGREES = 360 / TURN
/** Time for one turn by the buttons, so that a coil is seen on its way under a brush [s] */
const SECONDS_A_TURN = 14

export function BrushesCommutator({ machine, now }: CommutatorProps) {
  const commutator = useMemo(() => commutatorOf(machine.brushes), [machine])
  const round = useRef<HTMLCanvasElement>(null)
  const strip = useRef<HTMLCanvasElement>(null)
  const words = useRef<HTMLOutputElement>(null)
  const slider = useRef<HTMLDivElement>(null)
  const trace = useRef<SVGSVGElement>(null)
  const mark = useRef<TraceMark>({ place: null })
  useCommutator({ round, strip, words, slider, mark }, commutator, machine, now)
  const alternating = alternates(machine)
  return (
    <section aria-label="The commutator, close up">
      <div className="brushes-pictures">
        <figure>
          <canvas
            ref={round}
            role="img"
            aria-label={`Commutator with ${commutator.bars} bars and two carbon brushes, seen from the worm`}
          />
          <figcaption className="small">Seen from the worm</figcaption>
        </figure>
        <figure>
          <HandSlider commutator={commutator} strip={strip} slider={slider} />
          <figcaption className="small">Under the right brush; drag it</figcaption>
        </figure>
      </div>
      <output className="brushes-place" aria-live="off" aria-label="The bold coil" ref={words} />
      <BrushesTrace
        commutator={commutator}
        current={now.figures.armatureCurrent}
        flow={now.flow}
        mark={mark}
        figure={trace}
      />
      <Steps commutator={commutator} />
      <p className="small">A point is current towards you, a cross is current away from you.</p>
      <p>
        Each coil comes to a brush with its current one way round and leaves with it the other way round. That
        happens as its sides pass from one pole to the other, so under each pole the current keeps its
        direction, and every side pushes the shaft the same way round.
      </p>
      {alternating && (
        <p className="small">
          Drawn in one half wave; F is a pole of the field winding. In the next half wave the currents of
          armature and field turn round together, so the push stays the same way.
        </p>
      )}
      <ChartActions
        name={`${machine.name} coil current`}
        figure={trace}
        columns={() => {
          const { x, y } = coilTrace(commutator, now.flow * now.figures.armatureCurrent)
          return [
            { heading: 'angle of the coil from the right brush [deg]', values: x },
            { heading: 'current of one coil [A]', values: y },
          ]
        }}
      />
    </section>
  )
}

interface Surfaces {
  readonly round: RefObject<HTMLCanvasElement | null>
  readonly strip: RefObject<HTMLCanvasElement | null>
  readonly words: RefObject<HTMLOutputElement | null>
  readonly slider: RefObject<HTMLDivElement | null>
  readonly mark: RefObject<TraceMark>
}

/** Words change no more often than this while it turns [ms]. */
const WORDS_EVERY = 100

/** Keeps the drawings, the words and the mark on the trace right while the machine turns. */
function useCommutator(
  { round, strip, words, slider, mark }: Surfaces,
  commutator: Commutator,
  machine: BrushedMachine,
  { flow, figures }: BrushNow,
): void {
  const { frame } = useWorkshop()
  const half = figures.armatureCurrent / 2
  const current = useRef(half)
  useEffect(() => {
    current.current = half
  }, [half])
  useEffect(() => {
    if (!round.current || !strip.current) return undefined
    let told = 0
    const onMoved = ({ angle, sense, bars, followed }: CommutatorMoment, still: boolean) => {
      const seen = bars && followed
      mark.current.place?.(angle * DEGREES, seen)
      const at = performance.now()
      if (!still && at - told < WORDS_EVERY) return
      told = at
      const part = flow === 0 ? 0 : coilPart(commutator, angle, flow)
      const text = `${placeText(angle * DEGREES, sense)}: ${signedCurrent(part * current.current)}`
      if (words.current)
        words.current.textContent = seen
          ? `The bold coil is ${text}`
          : 'Bars pass too fast to be drawn; the pattern of currents stands still'
      slider.current?.setAttribute('aria-valuenow', String(Math.round(angle * DEGREES)))
      slider.current?.setAttribute('aria-valuetext', text)
    }
    return attachCommutator(round.current, strip.current, frame, {
      commutator,
      poles: machine.motor.kind === 'universal' ? ['F', 'F'] : ['N', 'S'],
      signs: !alternates(machine),
      flow,
      onMoved,
    })
  }, [round, strip, words, slider, mark, commutator, machine, flow, frame])
}

interface HandSliderProps {
  readonly commutator: Commutator
  readonly strip: RefObject<HTMLCanvasElement | null>
  readonly slider: RefObject<HTMLDivElement | null>
}

/** The strip is a slider: by degrees, by bars, or dragged along. */
function HandSlider({ commutator, strip, slider }: HandSliderProps) {
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

function Steps({ commutator }: { readonly commutator: Commutator }) {
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
