/** The two axes of a plot, with round numbers and their words. */
import { type Scale, axisNumber, roundNumbers, toPixel } from './scale.ts'
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

export interface PlotArea {
  readonly across: Scale
  readonly up: Scale
}

interface AxesProps extends PlotArea {
  readonly x: Axis
  readonly y: Axis
  readonly height: number
}

export function Axes({ x, y, across, up, height }: AxesProps) {
  const write = x.write ?? axisNumber
  return (
    <>
      <NumbersUp across={across} up={up} numbers={roundNumbers(up)} write={y.write ?? axisNumber} />
      {roundNumbers(across).map((value) => (
        <g key={value} transform={`translate(${toPixel(across, value).toFixed(1)} 0)`}>
          <line className="plot-tick" y1={up.low} y2={up.low + 5} />
          {x.numbers !== false && (
            <text className="plot-number" y={up.low + 20} textAnchor="middle">
              {write(value)}
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

interface NumbersUpProps extends PlotArea {
  readonly numbers: readonly number[]
  readonly write: (value: number) => string
}

/** Lines across, each with its number at the left. */
export function NumbersUp({ across, up, numbers, write }: NumbersUpProps) {
  return numbers.map((value) => (
    <g key={value} transform={`translate(0 ${toPixel(up, value).toFixed(1)})`}>
      <line className={value === 0 ? 'plot-zero' : 'plot-grid'} x1={across.low} x2={across.high} />
      <text className="plot-number" x={across.low - 8} dy="0.34em" textAnchor="end">
        {write(value)}
      </text>
    </g>
  ))
}
