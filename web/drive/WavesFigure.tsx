/** Lanes of curves over one time axis, in ink: what a scope shows, and how a start runs. */
import { type ReactNode, type Ref, useId } from 'react'
import { type Axis, NumbersUp } from '../chart/Axes.tsx'
import { type Cursor, CursorHandle } from '../chart/CursorHandle.tsx'
import { linePath } from '../chart/line-path.ts'
import { type Scale, roundNumbers, toPixel } from '../chart/scale.ts'
import { givenFigure } from '../instrument/reading-text.ts'
import { type Lane, laneSpan } from './waves-lanes.ts'
import { HEAD_ROW, LEFT, type LaneSize, type ScopeLayout, laneNumbers, scopeLayout } from './waves-layout.ts'
import './waves.css'
import '../chart/chart.css'

export interface LaneSpot {
  readonly lane: Lane['id']
  readonly name: string
  readonly x: number
  readonly y: number
}

interface WavesFigureProps {
  readonly label: string
  readonly width: number
  readonly x: Axis
  /** In the unit of the axis */
  readonly time: Float64Array
  readonly lanes: readonly Lane[]
  /** What stands at the right of each lane's name */
  readonly heads: readonly string[]
  readonly cursors?: readonly Cursor[]
  readonly spots?: readonly LaneSpot[]
  readonly figure?: Ref<SVGSVGElement>
  /** Higher lanes, where there are few of them */
  readonly tall?: boolean
  /** Drawn over the lanes, in the pixels of the figure */
  readonly over?: (layout: ScopeLayout) => ReactNode
}

export function WavesFigure(props: WavesFigureProps) {
  const { label, width, x, time, lanes, heads, cursors = [], spots = [], figure, tall = false, over } = props
  const clip = useId()
  const sizes = lanes.map((lane, at) => sizeOf(lane, heads[at] ?? ''))
  const layout = scopeLayout(width, [x.from, x.to], sizes, { cursors: cursors.length > 0, tall })
  const { across, height, top, bottom } = layout
  return (
    <svg
      className="plot waves-figure"
      ref={figure}
      width={width}
      height={height}
      role="group"
      aria-label={label}
    >
      <clipPath id={clip}>
        <rect x={across.low} y={0} width={Math.max(0, across.high - across.low)} height={height} />
      </clipPath>
      <g aria-hidden="true">
        {lanes.map((lane, at) => (
          <LaneShape
            key={lane.id}
            lane={lane}
            time={time}
            across={across}
            up={layout.lanes[at]!.up}
            clip={clip}
          />
        ))}
        <TimeAxis x={x} across={across} bottom={bottom} top={top} />
      </g>
      {over?.(layout)}
      {cursors.map((cursor) => (
        <CursorHandle key={cursor.name} cursor={cursor} across={across} top={top - 8} bottom={bottom} x={x} />
      ))}
      <g aria-hidden="true" className="waves-words">
        {cursors.map((cursor) => (
          <text key={cursor.name} className="plot-words name" x={toPixel(across, cursor.at) + 9} y={12}>
            {cursor.name.at(-1)}
          </text>
        ))}
        <Words lanes={lanes} heads={heads} spots={spots} layout={layout} />
      </g>
    </svg>
  )
}

interface WordsProps {
  readonly lanes: readonly Lane[]
  readonly heads: readonly string[]
  readonly spots: readonly LaneSpot[]
  readonly layout: ScopeLayout
}

function Words({ lanes, heads, spots, layout }: WordsProps) {
  return lanes.map((lane, at) => (
    <LaneWords
      key={lane.id}
      lane={lane}
      head={heads[at] ?? ''}
      layout={layout}
      at={at}
      spots={spots.filter((spot) => spot.lane === lane.id)}
    />
  ))
}

interface LaneShapeProps {
  readonly lane: Lane
  readonly time: Float64Array
  readonly across: Scale
  readonly up: Scale
  readonly clip: string
}

function LaneShape({ lane, time, across, up, clip }: LaneShapeProps) {
  return (
    <>
      <NumbersUp across={across} up={up} numbers={laneNumbers(up)} write={givenFigure} />
      <g clipPath={`url(#${clip})`}>
        {lane.traces.map((trace, at) => (
          <path
            key={trace.name}
            className={`plot-line waves-line ${at === 0 ? 'main' : 'dashed'}`}
            d={linePath(time, trace.values, across, up)}
          />
        ))}
      </g>
    </>
  )
}

interface TimeAxisProps {
  readonly x: Axis
  readonly across: Scale
  readonly top: number
  readonly bottom: number
}

function TimeAxis({ x, across, top, bottom }: TimeAxisProps) {
  return (
    <>
      {roundNumbers(across).map((value) => (
        <g key={value} transform={`translate(${toPixel(across, value).toFixed(1)} 0)`}>
          <line className="waves-time" y1={top + HEAD_ROW} y2={bottom} />
          <line className="plot-tick" y1={bottom} y2={bottom + 5} />
          <text className="plot-number" y={bottom + 19} textAnchor="middle">
            {givenFigure(value)}
          </text>
        </g>
      ))}
      <line className="plot-axis" x1={across.low} x2={across.high} y1={bottom} y2={bottom} />
      <text className="plot-words" x={0} y={bottom + 19}>
        {x.label}
      </text>
    </>
  )
}

const nameOf = ({ name, unit }: Lane): string => `${name}, ${unit}`

/** What its further curves are. */
const besideName = ({ traces }: Lane): string =>
  traces
    .slice(1)
    .map(({ name }) => ` (dashed: ${name})`)
    .join('')

const sizeOf = (lane: Lane, meters: string): LaneSize => ({
  span: laneSpan(lane),
  words: nameOf(lane) + besideName(lane),
  meters,
})

interface LaneWordsProps {
  readonly lane: Lane
  readonly head: string
  readonly layout: ScopeLayout
  readonly at: number
  readonly spots: readonly LaneSpot[]
}

/** Over the cursors, so that they strike no number. */
function LaneWords({ lane, head, layout, at, spots }: LaneWordsProps) {
  const { across } = layout
  const { head: top, up, under } = layout.lanes[at]!
  const line = top + 11
  return (
    <>
      <text className="plot-words name" x={0} y={line}>
        {nameOf(lane)}
        <tspan className="waves-beside">{besideName(lane)}</tspan>
      </text>
      <text
        className="plot-words waves-meters"
        x={under ? LEFT : across.high}
        y={under ? line + HEAD_ROW : line}
        textAnchor={under ? 'start' : 'end'}
      >
        {head}
      </text>
      {spots.map((spot) => (
        <Spot key={spot.name} spot={spot} across={across} up={up} />
      ))}
    </>
  )
}

function Spot({ spot, across, up }: { readonly spot: LaneSpot; readonly across: Scale; readonly up: Scale }) {
  const x = toPixel(across, spot.x)
  const y = toPixel(up, spot.y)
  const late = x > (across.low + across.high) / 2
  return (
    <>
      <circle className="plot-spot" cx={x} cy={y} r="4.5" />
      <text
        className="plot-words name"
        x={late ? x - 10 : x + 10}
        y={y < (up.low + up.high) / 2 ? y + 19 : y - 9}
        textAnchor={late ? 'end' : 'start'}
      >
        {spot.name}
      </text>
    </>
  )
}
