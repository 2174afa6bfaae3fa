/** What is and what is shown, on one scale of degrees. */
import { axisNumber, roundNumbers, roundSpan, toPixel } from '../chart/scale.ts'
import { degreeText } from '../instrument/reading-text.ts'
import '../chart/chart.css'

interface ThermoScaleProps {
  /** Of the surface, as shown, and of the surroundings [degC] */
  readonly T: number
  readonly shown: number
  readonly surroundings: number
  readonly width: number
}

const INSET = 16
const HEIGHT = 84
const LINE = 46
const WIDE_ENOUGH = 20

export function ThermoScale({ T, shown, surroundings, width }: ThermoScaleProps) {
  const least = Math.min(T, shown, surroundings)
  const [from, to] = roundSpan(least - 5, Math.max(T, shown, surroundings, least + WIDE_ENOUGH) + 5)
  const across = { from, to, low: INSET, high: width - INSET }
  return (
    <svg
      className="plot"
      width={width}
      height={HEIGHT}
      role="img"
      aria-label={`Case ${degreeText(T)}, shown ${degreeText(shown)}, surroundings ${degreeText(surroundings)}`}
    >
      <line className="plot-axis" x1={across.low} x2={across.high} y1={LINE} y2={LINE} />
      {roundNumbers(across).map((value) => (
        <g key={value} transform={`translate(${toPixel(across, value).toFixed(1)} ${LINE})`}>
          <line className="plot-tick" y1="0" y2="6" />
          <text className="plot-number" y="22" textAnchor="middle">
            {axisNumber(value)}
          </text>
        </g>
      ))}
      <text className="plot-words" x={width} y={HEIGHT - 2} textAnchor="end">
        °C
      </text>
      <line
        className="plot-cursor"
        x1={toPixel(across, surroundings)}
        x2={toPixel(across, surroundings)}
        y1={LINE - 9}
        y2={LINE + 9}
      />
      <line className="thermo-miss" x1={toPixel(across, shown)} x2={toPixel(across, T)} y1={LINE} y2={LINE} />
      <circle className="plot-spot" cx={toPixel(across, shown)} cy={LINE} r="6" />
      <circle className="plot-spot filled" cx={toPixel(across, T)} cy={LINE} r="6" />
      <Names places={[toPixel(across, shown), toPixel(across, T)]} width={width} />
    </svg>
  )
}

/** Half of what 'shown' and 'case' take, and the room between them [px] */
const HALF = 24

/** Above their points, apart where these lie together. */
function Names({
  places: [shown, real],
  width,
}: {
  readonly places: readonly [number, number]
  readonly width: number
}) {
  const middle = (shown + real) / 2
  const half = Math.max(HALF, Math.abs(shown - real) / 2)
  const way = shown <= real ? -1 : 1
  const at = (side: number) => Math.min(width - HALF, Math.max(HALF, middle + side * half))
  return (
    <>
      <text className="plot-words name" x={at(way)} y={LINE - 14} textAnchor="middle">
        shown
      </text>
      <text className="plot-words name" x={at(-way)} y={LINE - 14} textAnchor="middle">
        case
      </text>
    </>
  )
}
