/** The curve, what is asked of it, and the moment that is looked at. */
import { useEffect, useMemo, useRef, useState } from 'react'
import { ChartActions } from '../chart/ChartActions.tsx'
import { useWidth } from '../chart/use-width.ts'
import { useBench, useWorkshop } from '../frame/workshop.ts'
import { Choice } from '../panel/Choice.tsx'
import { useSteady } from '../instrument/use-reading.ts'
import { RunProgress } from '../run-work/RunProgress.tsx'
import { HeatChart } from './HeatChart.tsx'
import { HeatPassed } from './HeatPassed.tsx'
import type { ThermalMachine } from './heat-machine.ts'
import { HeatWarm } from './HeatWarm.tsx'
import { HeatWaysFields } from './HeatWays.tsx'
import { SPANS, type Span, spanSeconds, timeText } from './heat-span.ts'
import {
  type HeatView,
  cursorStep,
  heatColumns,
  heatView,
  hottestPart,
  momentAt,
  momentWords,
} from './heat-view.ts'
import { dutyHeadline, endWords, happenings, headline, passedBy } from './heat-words.ts'
import {
  type AllSettled,
  type HeatWays,
  THROUGHOUT,
  heatingOrder,
  poweredInput,
  useHeating,
} from './heat-work.ts'

const HEIGHT = 250
const GROWN = 90
/** Where a plot is wide it is also higher [px of width] */
const WIDE = 560

interface HeatSectionProps {
  readonly machine: ThermalMachine
  readonly all: AllSettled
}

export function HeatSection({ machine, all }: HeatSectionProps) {
  const { thermal } = machine
  const bench = useBench((now) => now)
  const speed = useSteady()?.speed ?? 0
  const [span, setSpan] = useState<Span>('hour')
  const [ways, setWays] = useState<HeatWays>(THROUGHOUT)
  const [stillAir, setStillAir] = useState(false)
  const duration = spanSeconds(span, thermal, speed)
  const input = poweredInput(bench)
  const main = useHeating(heatingOrder(machine, input, duration, ways))
  const still = useHeating(
    stillAir ? heatingOrder(machine, input, duration, { ...ways, fanCools: false }) : null,
  )
  const view = useMemo(
    () => main.heated && heatView(thermal, main.heated, still.heated),
    [thermal, main.heated, still.heated],
  )
  const settled = ways.duty ? null : (all.settled?.[bench.setting] ?? null)
  const { duty } = ways
  const fresh = main.control.run.state === 'done' ? main.heated : null
  const passed = fresh && passedBy(fresh.run, thermal)
  const said = [
    endWords(thermal, passed, settled),
    ...(fresh ? happenings(machine, fresh.run, ways.protectionActs, settled) : []),
  ].filter(Boolean)
  return (
    <section aria-label="Temperature over time">
      <h2>{duty ? dutyHeadline(thermal, passed, duty.on, duty.off) : headline(thermal, passed, settled)}</h2>
      <Choice label="Time shown" choices={SPANS} value={span} onChange={setSpan} />
      {view && <Drawn machine={machine} view={view} said={said} fresh={fresh !== null} />}
      <RunProgress what={`Warming over ${timeText(duration)}`} control={main.control} />
      {stillAir && <RunProgress what="Warming without the fan’s air" control={still.control} />}
      <HeatWaysFields
        machine={machine}
        ways={ways}
        onWays={setWays}
        stillAir={stillAir}
        onStillAir={setStillAir}
      />
    </section>
  )
}

interface DrawnProps {
  readonly machine: ThermalMachine
  readonly view: HeatView
  /** What there is to say of the whole run */
  readonly said: readonly string[]
  /** Not left from before a change that is still worked out */
  readonly fresh: boolean
}

function Drawn({ machine, view, said, fresh }: DrawnProps) {
  const [box, width] = useWidth<HTMLDivElement>()
  const figure = useRef<SVGSVGElement>(null)
  const [moved, setMoved] = useState<number | null>(null)
  const { unit, thermal, heated } = view
  const last = heated.run.columns.time.at(-1) ?? 0
  const at = Math.min(moved ?? last, last)
  const moment = useMemo(() => momentAt(heated.run.columns, at), [heated, at])
  const words = momentWords(moment, thermal)
  const { view: look } = useWorkshop()
  const hottest = useMemo(() => hottestPart(heated.run.columns), [heated])
  useEffect(() => {
    const { seconds, winding, case: body } = moment
    look.setState({ heatLook: { machine: heated.order.machine, seconds, winding, case: body, hottest } })
  }, [look, heated, moment, hottest])
  useEffect(() => () => look.setState({ heatLook: null }), [look])
  return (
    <>
      <div className="drive-figure" data-fresh={fresh} ref={box}>
        <HeatChart
          view={view}
          width={width}
          height={HEIGHT + (width > WIDE ? GROWN : 0)}
          cursor={{
            name: 'Moment to look at',
            at: at / unit.seconds,
            step: cursorStep(view),
            text: words,
            move: (to) => setMoved(to * unit.seconds),
          }}
          figure={figure}
        />
      </div>
      <p className="heat-read">
        {fresh ? '' : 'Before the change. '}
        {words}.
      </p>
      {said.length > 0 && <p>{said.join(' ')}</p>}
      <HeatWarm machine={machine} moment={moment} />
      {fresh && <HeatPassed view={view} />}
      {fresh && (
        <ChartActions
          name={`${machine.name} temperature over time`}
          figure={figure}
          columns={() => heatColumns(view)}
        />
      )}
    </>
  )
}
