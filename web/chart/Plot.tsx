/**
 * One pair of axes: lines, points, bands and cursors, in ink. Lines tell apart by how they are drawn and by their
 * names at their ends; a colour here would be a mark of the machine.
 */
import { type KeyboardEvent, type PointerEvent, type ReactNode, type Ref, useId, useRef } from 'react'
import { linePath } from './line-path.ts'
import { type Scale, roundNumbers, toPixel, toValue } from './scale.ts'
import './chart.css'

export interface Axis {
  /** In words with the unit, as in 'Motor current [A]' */
  readonly label: string
  readonly from: number
  readonly to: number
  /** How a number on the axis is written; as it is unless told. */
  readonly write?: (value: number) => string
  /** Unset draws the numbers. A stack of plots has them under the last one only. */
  readonly numbers?: boolean
}

export interface Line {
  readonly name: string
  readonly x: ArrayLike<number>
  readonly y: ArrayLike<number>
  readonly drawn?: 'main' | 'thin' | 'dashed' | 'faint'
}

export interface Spot {
  readonly name: string
  readonly x: number
  readonly y: number
  /** Filled is what is, open what could be. */
  readonly filled: boolean
  /** Lines down to both axes */
  readonly drops?: boolean
}

export interface Band {
  readonly name: string
  /** Unset draws the name in its corner. */
  readonly named?: false
  readonly x?: readonly [number, number]
  readonly y?: readonly [number, number]
}

export interface Cursor {
  readonly name: string
  readonly at: number
  /** Step of an arrow key; ten of them with Shift */
  readonly step: number
  readonly text: string
  readonly move?: (to: number) => void
}

export interface PlotArea {
  readonly across: Scale
  readonly up: Scale
}

interface PlotProps {
  /** What a person is told who does not see it. */
  readonly label: string
  readonly width: number
  readonly height: number
  readonly x: Axis
  readonly y: Axis
  readonly lines?: readonly Line[]
  readonly spots?: readonly Spot[]
  readonly bands?: readonly Band[]
  readonly cursors?: readonly Cursor[]
  readonly figure?: Ref<SVGSVGElement>
  /** Drawn over the lines, in the pixels of the area */
  readonly over?: (area: PlotArea) => ReactNode
}

const LEFT = 52
const RIGHT = 14
const TOP = 26
const BOTTOM = 44
const BOTTOM_WITHOUT = 8

const plain = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '−')

export function Plot(props: PlotProps) {
  const { label, width, height, x, y, lines = [], spots = [], bands = [], cursors = [], figure, over } = props
  const bottom = height - (x.numbers === false ? BOTTOM_WITHOUT : BOTTOM)
  const across: Scale = { from: x.from, to: x.to, low: LEFT, high: width - RIGHT }
  const up: Scale = { from: y.from, to: y.to, low: bottom, high: TOP }
  const clip = useId()
  return (
    <svg className="plot" ref={figure} width={width} height={height} role="group" aria-label={label}>
      <clipPath id={clip}>
        <rect x={LEFT} y={TOP - 4} width={Math.max(0, width - LEFT - RIGHT)} height={bottom - TOP + 8} />
      </clipPath>
      <g aria-hidden="true">
        <Axes x={x} y={y} across={across} up={up} height={height} />
        {bands.map((band) => (
          <BandShape key={band.name} band={band} across={across} up={up} />
        ))}
        <g clipPath={`url(#${clip})`}>
          {lines.map((line) => (
            <path
              key={line.name}
              className={`plot-line ${line.drawn ?? 'main'}`}
              d={linePath(line.x, line.y, across, up)}
            />
          ))}
        </g>
        {spots.map((spot) => (
          <SpotShape key={spot.name} spot={spot} across={across} up={up} />
        ))}
        {over?.({ across, up })}
      </g>
      {cursors.map((cursor) => (
        <CursorHandle key={cursor.name} cursor={cursor} across={across} top={TOP} bottom={bottom} x={x} />
      ))}
    </svg>
  )
}

interface AxesProps extends PlotArea {
  readonly x: Axis
  readonly y: Axis
  readonly height: number
}

function Axes({ x, y, across, up, height }: AxesProps) {
  const writeX = x.write ?? plain
  const writeY = y.write ?? plain
  return (
    <>
      {roundNumbers(up).map((value) => (
        <g key={value} transform={`translate(0 ${toPixel(up, value).toFixed(1)})`}>
          <line className={value === 0 ? 'plot-zero' : 'plot-grid'} x1={across.low} x2={across.high} />
          <text className="plot-number" x={across.low - 8} dy="0.34em" textAnchor="end">
            {writeY(value)}
          </text>
        </g>
      ))}
      {roundNumbers(across).map((value) => (
        <g key={value} transform={`translate(${toPixel(across, value).toFixed(1)} 0)`}>
          <line className="plot-tick" y1={up.low} y2={up.low + 5} />
          {x.numbers !== false && (
            <text className="plot-number" y={up.low + 20} textAnchor="middle">
              {writeX(value)}
            </text>
          )}
        </g>
      ))}
      <line className="plot-axis" x1={across.low} x2={across.high} y1={up.low} y2={up.low} />
      <text className="plot-words" x={0} y={14}>
        {y.label}
      </text>
      {x.numbers !== false && (
        <text className="plot-words" x={across.high} y={height - 4} textAnchor="end">
          {x.label}
        </text>
      )}
    </>
  )
}

function BandShape({ band, across, up }: { readonly band: Band } & PlotArea) {
  const [x0, x1] = band.x ?? [across.from, across.to]
  const [y0, y1] = band.y ?? [up.from, up.to]
  const left = Math.max(across.low, toPixel(across, x0))
  const right = Math.min(across.high, toPixel(across, x1))
  const bottom = Math.min(up.low, toPixel(up, y0))
  const top = Math.max(up.high, toPixel(up, y1))
  if (right <= left || bottom <= top) return null
  const id = `hatch-${band.name.replaceAll(/\W/g, '-')}`
  return (
    <>
      <pattern id={id} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className="plot-hatch" y2="7" />
      </pattern>
      <rect x={left} y={top} width={right - left} height={bottom - top} fill={`url(#${id})`} />
      {band.named !== false && (
        <text className="plot-words inside" x={right - 6} y={top + 16} textAnchor="end">
          {band.name}
        </text>
      )}
    </>
  )
}

function SpotShape({ spot, across, up }: { readonly spot: Spot } & PlotArea) {
  const x = toPixel(across, spot.x)
  const y = toPixel(up, spot.y)
  if (!Number.isFinite(x) || !Number.isFinite(y)) return null
  const late = x > (across.low + across.high) / 2
  return (
    <>
      {spot.drops && <path className="plot-drop" d={`M${across.low} ${y}H${x}V${up.low}`} />}
      <circle className={spot.filled ? 'plot-spot filled' : 'plot-spot'} cx={x} cy={y} r="5" />
      <text
        className="plot-words name"
        x={late ? x - 10 : x + 10}
        y={y - 10}
        textAnchor={late ? 'end' : 'start'}
      >
        {spot.name}
      </text>
    </>
  )
}

interface CursorProps {
  readonly cursor: Cursor
  readonly across: Scale
  readonly top: number
  readonly bottom: number
  readonly x: Axis
}

/** A slider along the axis: by arrow keys, Home and End, or dragged. Without a way to move it, a line that is told. */
export function CursorHandle({ cursor, across, top, bottom, x }: CursorProps) {
  const { move, name, at, step, text } = cursor
  const held = useRef(false)
  const px = Math.min(across.high, Math.max(across.low, toPixel(across, at)))
  const line = (
    <>
      <line className="plot-cursor" x1={px} x2={px} y1={top - 6} y2={bottom} />
      <path className="plot-cursor-head" d={`M${px - 6} ${top - 12}h12l-6 8z`} />
    </>
  )
  if (!move) return <g aria-hidden="true">{line}</g>
  const to = (value: number) => move(Math.min(x.to, Math.max(x.from, value)))
  const keys: Readonly<Record<string, () => void>> = {
    ArrowRight: () => to(at + step),
    ArrowLeft: () => to(at - step),
    PageUp: () => to(at + 10 * step),
    PageDown: () => to(at - 10 * step),
    Home: () => to(x.from),
    End: () => to(x.to),
  }
  const press = (event: KeyboardEvent) => {
    const act = keys[event.key]
    if (!act) return
    event.preventDefault()
    event.stopPropagation()
    act()
  }
  const follow = (event: PointerEvent<SVGGElement>) => {
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect()
    if (held.current && box) to(toValue(across, event.clientX - box.left))
  }
  return (
    <g
      className="plot-handle"
      role="slider"
      tabIndex={0}
      aria-label={name}
      aria-valuemin={x.from}
      aria-valuemax={x.to}
      aria-valuenow={at}
      aria-valuetext={text}
      onKeyDown={press}
      onPointerDown={(event) => {
        held.current = true
        event.currentTarget.setPointerCapture(event.pointerId)
        event.preventDefault()
        event.currentTarget.focus()
      }}
      onPointerMove={follow}
      onPointerUp={() => {
        held.current = false
      }}
      onPointerCancel={() => {
        held.current = false
      }}
    >
      {line}
      <rect
        data-handle
        className="plot-grip"
        x={px - 22}
        y={top - 16}
        width="44"
        height={bottom - top + 16}
      />
    </g>
  )
}
