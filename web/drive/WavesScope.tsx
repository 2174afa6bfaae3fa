/** The scope: lanes, meters, cursors, and a sentence on what is seen. */
import { useCallback, useRef, useState } from 'react'
import { ChartActions } from '../chart/ChartActions.tsx'
import type { Cursor } from '../chart/Plot.tsx'
import { useWidth } from '../chart/use-width.ts'
import { useBench } from '../frame/workshop.ts'
import { WavesFigure } from './WavesFigure.tsx'
import { NowLine, sweeps } from './WavesNow.tsx'
import { WavesSetting } from './WavesSetting.tsx'
import { WavesTable } from './WavesTable.tsx'
import { WavesWords } from './WavesWords.tsx'
import { type LaneId, firstLanes, waveColumns } from './waves-lanes.ts'
import type { Look, Seen } from './waves-seen.ts'
import type { ScopeLayout } from './waves-layout.ts'
import type { Moment } from './waves-moment.ts'
import { useSeen } from './waves-use-seen.ts'
import { metersText, momentText, timeText } from './waves-words.ts'

export function WavesScope({ moment }: { readonly moment: Moment }) {
  const [look, setLook] = useState<Look>({ periods: 2, of: 'mains' })
  const [chosen, setChosen] = useState<readonly LaneId[] | null>(null)
  const seen = useSeen(moment, look)
  const on = chosen ?? firstLanes(seen.lanes)
  return (
    <>
      <p className="waves-moment">{momentText(moment)}</p>
      <Scope seen={seen} on={on} runs={moment.kind !== 'steady'} />
      <WavesSetting seen={seen} look={look} onLook={setLook} on={on} onLanes={setChosen} />
    </>
  )
}

/** Where the cursors stand to begin with, in parts of the span */
const FIRST_CURSORS = [0.125, 0.375] as const
/** Steps of a cursor over the span */
const CURSOR_STEPS = 200

interface ScopeProps {
  readonly seen: Seen
  readonly on: readonly LaneId[]
  /** Whether the machine runs, or was held while it ran */
  readonly runs: boolean
}

function Scope({ seen, on, runs }: ScopeProps) {
  const [ref, width] = useWidth<HTMLDivElement>()
  const figure = useRef<SVGSVGElement>(null)
  const [parts, setParts] = useState<readonly [number, number]>(FIRST_CURSORS)
  const pace = useBench((bench) => bench.pace)
  const sweep = runs && sweeps(seen.span, pace)
  const { span } = seen
  const over = useCallback(
    (layout: ScopeLayout) => sweep && <NowLine layout={layout} span={span} />,
    [sweep, span],
  )
  const lanes = seen.lanes.filter(({ id }) => on.includes(id))
  const { time, unit, perSecond } = seen.shown
  const cursor = (at: 0 | 1): Cursor => ({
    name: `Cursor ${at === 0 ? 'A' : 'B'}`,
    at: parts[at] * seen.span * perSecond,
    step: (seen.span * perSecond) / CURSOR_STEPS,
    text: timeText(parts[at] * seen.span),
    move: (to) => {
      const part = to / (seen.span * perSecond)
      setParts(at === 0 ? [part, parts[1]] : [parts[0], part])
    },
  })
  return (
    <div className="waves-scope">
      <div ref={ref} className="waves-picture">
        <WavesFigure
          label={`Waves over ${timeText(seen.span)}`}
          figure={figure}
          width={width}
          x={{ label: unit, from: 0, to: seen.span * perSecond }}
          time={time}
          lanes={lanes}
          heads={lanes.map((lane) => metersText(lane, seen.meters(lane)))}
          cursors={[cursor(0), cursor(1)]}
          over={over}
        />
        <ul className="unseen" aria-label="What meters show">
          {lanes.map((lane) => (
            <li key={lane.id}>{`${lane.name}, ${lane.unit}: ${metersText(lane, seen.meters(lane))}`}</li>
          ))}
        </ul>
        {lanes.length === 0 && <p className="small">No lane is on.</p>}
      </div>
      <WavesWords seen={seen} />
      <WavesTable
        lanes={lanes}
        time={seen.wave.time}
        a={parts[0] * seen.span}
        b={parts[1] * seen.span}
        sweep={sweep ? seen.span : null}
      />
      <ChartActions name="Waves" figure={figure} columns={() => waveColumns(seen.wave)} />
    </div>
  )
}
