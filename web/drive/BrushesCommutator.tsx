/** The commutator seen close: brushes, bars and coils, in step with the machine and turned by hand. */
import { type RefObject, useEffect, useMemo, useRef, useState } from 'react'
import { ChartActions } from '../chart/ChartActions.tsx'
import { useWorkshop } from '../frame/workshop.ts'
import { HandSlider, Steps } from './BrushesHand.tsx'
import type { BrushNow } from './brushes-now.ts'
import { type BrushedMachine, alternates } from './brushes-state.ts'
import { BrushesTrace, type TraceMark, newTraceMark } from './BrushesTrace.tsx'
import { placeText, signedCurrent } from './brushes-words.ts'
import { type Commutator, coilPart, coilTrace, commutatorOf } from './commutator.ts'
import type { CommutatorMoment } from './commutator-picture.ts'
import { attachCommutator } from './commutator-surface.ts'

interface CommutatorProps {
  readonly machine: BrushedMachine
  readonly now: BrushNow
}

const DEGREES = 180 / Math.PI

export function BrushesCommutator({ machine, now }: CommutatorProps) {
  const commutator = useMemo(() => commutatorOf(machine.brushes), [machine])
  const round = useRef<HTMLCanvasElement>(null)
  const strip = useRef<HTMLCanvasElement>(null)
  const words = useRef<HTMLOutputElement>(null)
  const slider = useRef<HTMLDivElement>(null)
  const trace = useRef<SVGSVGElement>(null)
  const [mark] = useState(newTraceMark)
  useCommutator({ round, strip, words, slider, mark }, commutator, machine, now)
  const alternating = alternates(machine)
  return (
    <section className="brushes-close" aria-label="The commutator, close up">
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
  readonly mark: TraceMark
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
    const onMoved = ({ angle, bars, followed }: CommutatorMoment, still: boolean) => {
      const seen = bars && followed
      mark.place(angle * DEGREES, seen)
      const at = performance.now()
      if (!still && at - told < WORDS_EVERY) return
      told = at
      const part = flow === 0 ? 0 : coilPart(commutator, angle, flow)
      const text = `${placeText(angle * DEGREES, frame.input.sense)}: ${signedCurrent(part * current.current)}`
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
