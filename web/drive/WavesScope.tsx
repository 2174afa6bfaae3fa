/** The scope: lanes, meters, cursors, and a sentence on what is seen. */
import { type RefObject, useCallback, useRef } from 'react'
import { ChartActions } from '../chart/ChartActions.tsx'
import type { Cursor } from '../chart/CursorHandle.tsx'
import { useWidth } from '../chart/use-width.ts'
import { useBench } from '../frame/workshop.ts'
import { type Parts, useKept } from './kept.ts'
import { WavesFigure } from './WavesFigure.tsx'
import { NowLine, sweeps } from './WavesNow.tsx'
import { WavesSetting } from './WavesSetting.tsx'
import { WavesTable } from './WavesTable.tsx'
import { WavesWords } from './WavesWords.tsx'
import { type Lane, type LaneId, firstLanes, waveColumns } from './waves-lanes.ts'
import type { Seen } from './waves-seen.ts'
import type { ScopeLayout } from './waves-layout.ts'
import type { Moment } from './waves-moment.ts'
import { useSeen } from './waves-use-seen.ts'
import { metersText, momentText, timeText } from './waves-words.ts'

export function WavesScope({ moment }: { readonly moment: Moment }) {
  const [look, setLook] = useKept('look')
  const [chosen, setChosen] = useKept('lanes')
  const seen = useSeen(moment, look)
  const chain = seen.lanes.map(({ id }) => id).join(' ')
  const on = chosen[chain] ?? firstLanes(seen.lanes)
  return (
    <>
      <p className="waves-moment">{momentText(moment)}</p>
      <Scope seen={seen} on={on} runs={moment.kind !== 'steady'} />
      <WavesSetting
        seen={seen}
        look={look}
        onLook={setLook}
        on={on}
        onLanes={(lanes) => setChosen({ ...chosen, [chain]: lanes })}
      />
    </>
  )
}

interface ScopeProps {
  readonly seen: Seen
  readonly on: readonly LaneId[]
  /** Whether the machine runs, or was held while it ran */
  readonly runs: boolean
}

function Scope({ seen, on, runs }: ScopeProps) {
  const figure = useRef<SVGSVGElement>(null)
  const [parts, setParts] = useKept('cursors')
  const { span } = seen
  const pace = useBench((bench) => bench.pace)
  const sweep = runs && sweeps(span, pace) ? span : null
  const lanes = seen.lanes.filter(({ id }) => on.includes(id))
  return (
    <div className="waves-scope">
      <ScopePicture
        seen={seen}
        lanes={lanes}
        figure={figure}
        cursors={cursorsAt(seen, parts, setParts)}
        sweep={sweep}
      />
      <WavesWords seen={seen} />
      <WavesTable lanes={lanes} time={seen.wave.time} a={parts[0] * span} b={parts[1] * span} sweep={sweep} />
      <ChartActions name="Waves" figure={figure} columns={() => waveColumns(seen.wave)} />
    </div>
  )
}

/** Steps of a cursor over the span */
const CURSOR_STEPS = 200

function cursorsAt({ span, shown }: Seen, parts: Parts, set: (parts: Parts) => void): readonly Cursor[] {
  const whole = span * shown.perSecond
  const cursor = (name: string, part: number, move: (part: number) => void): Cursor => ({
    name,
    at: part * whole,
    step: whole / CURSOR_STEPS,
    text: timeText(part * span),
    move: (to) => move(to / whole),
  })
  const [a, b] = parts
  return [cursor('Cursor A', a, (part) => set([part, b])), cursor('Cursor B', b, (part) => set([a, part]))]
}

interface ScopePictureProps {
  readonly seen: Seen
  readonly lanes: readonly Lane[]
  readonly figure: RefObject<SVGSVGElement | null>
  readonly cursors: readonly Cursor[]
  /** Span through which the moment sweeps [s]; null where it does not */
  readonly sweep: number | null
}

function ScopePicture({ seen, lanes, figure, cursors, sweep }: ScopePictureProps) {
  const [ref, width] = useWidth<HTMLDivElement>()
  const { span, shown } = seen
  const heads = lanes.map((lane) => metersText(lane, seen.meters(lane)))
  const over = useCallback(
    (layout: ScopeLayout) => sweep !== null && <NowLine layout={layout} span={sweep} />,
    [sweep],
  )
  return (
    <div ref={ref} className="waves-picture">
      <WavesFigure
        label={`Waves over ${timeText(span)}`}
        figure={figure}
        width={width}
        x={{ label: shown.unit, from: 0, to: span * shown.perSecond }}
        time={shown.time}
        lanes={lanes}
        heads={heads}
        cursors={cursors}
        over={over}
      />
      <ul className="unseen" aria-label="What meters show">
        {lanes.map(({ id, name, unit }, at) => (
          <li key={id}>{`${name}, ${unit}: ${heads[at]}`}</li>
        ))}
      </ul>
      {lanes.length === 0 && <p className="small">No lane is on.</p>}
    </div>
  )
}
