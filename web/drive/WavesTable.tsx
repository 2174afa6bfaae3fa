/** What the two cursors read in each lane, and how far they are apart. */
import { valueAlong } from '../chart/scale.ts'
import { figure, figureOf } from '../instrument/reading-text.ts'
import { NowCell } from './WavesNow.tsx'
import type { Lane } from './waves-lanes.ts'
import { timeText } from './waves-words.ts'

interface WavesTableProps {
  readonly lanes: readonly Lane[]
  /** [s] */
  readonly time: Float64Array
  readonly a: number
  readonly b: number
  /** Span through which the moment sweeps [s]; null where it does not */
  readonly sweep: number | null
}

export function WavesTable({ lanes, time, a, b, sweep }: WavesTableProps) {
  const rate = a === b ? '' : `${figure(1 / Math.abs(b - a))} Hz`
  return (
    <table className="waves-table">
      <caption className="unseen">Values at the cursors</caption>
      <thead>
        <tr>
          <th scope="col">Lane</th>
          <CursorHead name="A" under={timeText(a)} />
          <CursorHead name="B" under={timeText(b)} />
          <CursorHead name="B − A" under={timeText(b - a)} rate={rate} />
          {sweep !== null && (
            <th scope="col" className="waves-moment-cell">
              Now
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {lanes.map((lane) => {
          const values = lane.traces[0].values
          const atA = valueAlong(time, values, a)
          const atB = valueAlong(time, values, b)
          return (
            <tr key={lane.id}>
              <th scope="row">
                {lane.name} <span className="small">{lane.unit}</span>
              </th>
              <td className="number">{figureOf(atA, lane.unit)}</td>
              <td className="number">{figureOf(atB, lane.unit)}</td>
              <td className="number">{figureOf(atB - atA, lane.unit)}</td>
              {sweep !== null && (
                <td className="number waves-moment-cell">
                  <NowCell lane={lane} time={time} span={sweep} />
                </td>
              )}
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

interface CursorHeadProps {
  readonly name: string
  readonly under: string
  /** One over the time between the cursors */
  readonly rate?: string
}

function CursorHead({ name, under, rate }: CursorHeadProps) {
  return (
    <th scope="col">
      {name}
      <span className="number">{under}</span>
      {rate && <span className="number">1/t {rate}</span>}
    </th>
  )
}
