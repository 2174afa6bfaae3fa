/** How often right at each level, beside the band in which the level pays best. The table beside it says the same. */
import type { LevelCalibration } from './calibration.ts'

const WIDTH = 340
const LEFT = 52
const TOP = 12
const HEIGHT = 168
const BAND = 40
const TICKS = [0, 0.5, 1]
/** Room for the count beside the last point */
const RIGHT = 16
const COLUMN = (WIDTH - LEFT - RIGHT) / 3

const heightOf = (share: number): number => TOP + HEIGHT * (1 - share)
const middleOf = (place: number): number => LEFT + COLUMN * (place + 0.5)

interface ColumnProps {
  readonly each: LevelCalibration
  readonly place: number
}

function Column({ each, place }: ColumnProps) {
  const { level, share, count, right, paysFrom, paysTo } = each
  const x = middleOf(place)
  return (
    <g>
      <rect
        x={x - BAND / 2}
        y={heightOf(paysTo)}
        width={BAND}
        height={HEIGHT * (paysTo - paysFrom)}
        fill="url(#record-hatch)"
        stroke="var(--control)"
      />
      {share !== null && (
        <>
          <circle cx={x} cy={heightOf(share)} r="7" fill="var(--ink)" stroke="var(--panel)" strokeWidth="2" />
          <text x={x + BAND / 2 + 6} y={heightOf(share) + 5} className="number">
            {right}/{count}
          </text>
        </>
      )}
      <text x={x} y={TOP + HEIGHT + 22} textAnchor="middle" className="number">
        {level}
      </text>
    </g>
  )
}

export function CalibrationFigure({ levels }: { readonly levels: readonly LevelCalibration[] }) {
  return (
    <svg
      className="record-figure"
      viewBox={`0 0 ${WIDTH} ${TOP + HEIGHT + 48}`}
      aria-hidden="true"
      focusable="false"
    >
      <defs>
        <pattern
          id="record-hatch"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0v6" stroke="var(--control)" strokeWidth="1.6" />
        </pattern>
      </defs>
      {TICKS.map((tick) => (
        <g key={tick}>
          <path d={`M${LEFT} ${heightOf(tick)}H${WIDTH}`} stroke="var(--hairline)" />
          <text x={LEFT - 8} y={heightOf(tick) + 5} textAnchor="end" className="number">
            {100 * tick} %
          </text>
        </g>
      ))}
      {levels.map((each, place) => (
        <Column key={each.level} each={each} place={place} />
      ))}
      <text x={LEFT + 1.5 * COLUMN} y={TOP + HEIGHT + 42} textAnchor="middle">
        How sure
      </text>
    </svg>
  )
}
