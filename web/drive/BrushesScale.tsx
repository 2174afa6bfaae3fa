/** Two bars over the grades of sparking; the one that decides is filled. */
import { SPARK_GRADES } from '../../sim/heat/commutation.ts'
import { toPixel } from '../chart/scale.ts'
import { gradeText } from './brushes-words.ts'
import '../chart/chart.css'

interface Row {
  readonly name: string
  /** Over its limit */
  readonly value: number
  readonly text: string
}

interface ScaleProps {
  readonly width: number
  readonly rows: readonly [Row, Row]
  readonly decides: 'turning over' | 'density'
}

const TOP = 4
const ROW = 46
const BAR = 14
const END = 2.5
const AXIS = TOP + 2 * ROW + 4
const HEIGHT = AXIS + 44

export function BrushesScale({ width, rows, decides }: ScaleProps) {
  const across = { from: 0, to: END, low: 1, high: width - 1 }
  const limits = SPARK_GRADES.map(({ below }) => Math.min(below, END))
  const label = rows.map(({ name, text, value }) => `${name}: ${text}, ${value.toFixed(2)} of its limit`)
  return (
    <svg className="plot" width={width} height={HEIGHT} role="img" aria-label={label.join('. ')}>
      {rows.map((row, n) => (
        <Bar
          key={row.name}
          row={row}
          top={TOP + n * ROW}
          width={width}
          end={toPixel(across, Math.min(row.value, END))}
          beyond={row.value > END}
          filled={(decides === 'turning over') === (n === 0)}
        />
      ))}
      {SPARK_GRADES.map(({ grade }, n) => {
        const from = n === 0 ? 0 : limits[n - 1]!
        const [left, right] = [toPixel(across, from), toPixel(across, limits[n]!)]
        return (
          <g key={grade}>
            <rect
              className={grade === '2' || grade === '3' ? 'brushes-zone hard' : 'brushes-zone'}
              x={left}
              y={AXIS}
              width={right - left}
              height={24}
            />
            <text className="plot-number grade" x={(left + right) / 2} y={AXIS + 17} textAnchor="middle">
              {gradeText(grade)}
            </text>
            {n > 0 && (
              <>
                <line className="brushes-limit" x1={left} x2={left} y1={TOP + 22} y2={AXIS} />
                <text className="plot-number" x={left} y={AXIS + 40} textAnchor="middle">
                  {from}
                </text>
              </>
            )}
          </g>
        )
      })}
    </svg>
  )
}

interface BarProps {
  readonly row: Row
  readonly top: number
  readonly width: number
  readonly end: number
  readonly beyond: boolean
  readonly filled: boolean
}

function Bar({ row, top, width, end, beyond, filled }: BarProps) {
  const middle = top + 24 + BAR / 2
  return (
    <>
      <text className="plot-words name" x={0} y={top + 14}>
        {row.name} {row.value.toFixed(2)}
      </text>
      <text className="plot-number" x={width} y={top + 14} textAnchor="end">
        {row.text}
      </text>
      <line className="plot-grid" x1={0} x2={width} y1={middle} y2={middle} />
      <rect
        className={filled ? 'brushes-bar filled' : 'brushes-bar'}
        x={1}
        y={top + 24}
        width={Math.max(0, end - 1)}
        height={BAR}
      />
      {beyond && (
        <path
          className="brushes-beyond"
          d={`M${width - 13} ${top + 24 - 2}l10 ${BAR / 2 + 2}l-10 ${BAR / 2 + 2}`}
        />
      )}
    </>
  )
}
