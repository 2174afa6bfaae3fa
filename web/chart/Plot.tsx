/**
 * One pair of axes: lines, points, bands and cursors, in ink. Lines tell apart by how they are drawn and by their
 * names at their ends; a colour here would be a mark of the machine.
 */
import { type ReactNode, type Ref, useId } from 'react'
import { Axes, type Axis, type PlotArea } from './Axes.tsx'
import { type Cursor, CursorHandle } from './CursorHandle.tsx'
import { linePath } from './line-path.ts'
import { type Scale, toPixel } from './scale.ts'
import './chart.css'

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
