/** The current of one coil over a whole turn, with the place where the followed coil is. */
import { type RefObject, useEffect, useMemo, useRef } from 'react'
import type { PlotArea } from '../chart/Axes.tsx'
import { Plot } from '../chart/Plot.tsx'
import { roundSpan, toPixel, valueAlong } from '../chart/scale.ts'
import { useWidth } from '../chart/use-width.ts'
import { quantityText } from '../instrument/reading-text.ts'
import { type Commutator, coilTrace } from './commutator.ts'
import '../chart/chart.css'

/** The mark on the trace, moved in the frame and not by rendering. */
export interface TraceMark {
  /** Moves it to an angle [deg], or hides it. */
  place(degrees: number, shown: boolean): void
  /** Names what draws it, at once and from then on; returns the way to let go again. */
  drawnBy(draw: (degrees: number, shown: boolean) => void): () => void
}

export function newTraceMark(): TraceMark {
  let [degrees, shown] = [0, false]
  let drawn: ((degrees: number, shown: boolean) => void) | null = null
  return {
    place(to, seen) {
      degrees = to
      shown = seen
      drawn?.(degrees, shown)
    },
    drawnBy(draw) {
      drawn = draw
      draw(degrees, shown)
      return () => {
        if (drawn === draw) drawn = null
      }
    },
  }
}

interface TraceProps {
  readonly commutator: Commutator
  /** Of the armature [A] */
  readonly current: number
  readonly flow: 1 | -1 | 0
  readonly mark: TraceMark
  readonly figure: RefObject<SVGSVGElement | null>
}

const HEIGHT = 150
/** Above and below the line, for the names of the brushes; in halves of the current */
const HEADROOM = 1.5
const HALF_TURN = 180

export function BrushesTrace({ commutator, current, flow, mark, figure }: TraceProps) {
  const [box, width] = useWidth<HTMLDivElement>()
  const trace = useMemo(() => coilTrace(commutator, flow * current), [commutator, flow, current])
  const [from, to] = roundSpan((-HEADROOM * current) / 2, (HEADROOM * current) / 2)
  const covered = (commutator.arc * HALF_TURN) / (2 * Math.PI)
  const half = quantityText(current / 2, 'A')
  return (
    <div className="brushes-figure" ref={box}>
      <Plot
        label={`Current of one coil over a turn: ${half} one way round, turning over within ${Math.round(2 * covered)}° under each brush`}
        width={width}
        height={HEIGHT}
        x={{ label: 'Angle from the right brush [°]', from: -HALF_TURN, to: HALF_TURN }}
        y={{ label: 'Current of one coil [A]', from, to }}
        bands={[
          { name: 'under the right brush', named: false, x: [-covered, covered] },
          { name: 'past the left brush', named: false, x: [HALF_TURN - covered, HALF_TURN] },
          { name: 'before the left brush', named: false, x: [-HALF_TURN, covered - HALF_TURN] },
        ]}
        lines={[{ name: 'coil', x: trace.x, y: trace.y }]}
        figure={figure}
        over={overlay(trace, mark)}
      />
    </div>
  )
}

type Trace = ReturnType<typeof coilTrace>

const overlay = (trace: Trace, mark: TraceMark) => (area: PlotArea) => (
  <>
    <BrushNames area={area} />
    <Mark area={area} trace={trace} mark={mark} />
  </>
)

const NAMES = [
  { side: 'left', at: -HALF_TURN, anchor: 'start' },
  { side: 'right', at: 0, anchor: 'middle' },
  { side: 'left', at: HALF_TURN, anchor: 'end' },
] as const
/** Width of the axis from which on there is room for both words [px] */
const ROOMY = 240

function BrushNames({ area: { across, up } }: { readonly area: PlotArea }) {
  const roomy = across.high - across.low >= ROOMY
  return NAMES.map(({ side, at, anchor }) => (
    <text key={at} className="plot-words inside" x={toPixel(across, at)} y={up.high + 12} textAnchor={anchor}>
      {roomy ? `${side} brush` : side}
    </text>
  ))
}

interface MarkProps {
  readonly area: PlotArea
  readonly trace: Trace
  readonly mark: TraceMark
}

function Mark({ area: { across, up }, trace, mark }: MarkProps) {
  const group = useRef<SVGGElement>(null)
  useEffect(
    () =>
      mark.drawnBy((degrees, shown) => {
        const x = toPixel(across, degrees)
        const y = toPixel(up, valueAlong(trace.x, trace.y, degrees))
        group.current?.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`)
        group.current?.setAttribute('visibility', shown ? 'visible' : 'hidden')
      }),
    [across, up, trace, mark],
  )
  return (
    <g ref={group}>
      <circle className="plot-spot filled" r="6" />
    </g>
  )
}
