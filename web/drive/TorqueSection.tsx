/** Torque over speed with its cursor and what goes with it. */
import { useMemo, useRef } from 'react'
import { ChartActions } from '../chart/ChartActions.tsx'
import { useWidth } from '../chart/use-width.ts'
import { useBench, useMachine, useWorkshop } from '../frame/workshop.ts'
import { Choice } from '../panel/Choice.tsx'
import { RunProgress } from '../run-work/RunProgress.tsx'
import { useKept } from './kept.ts'
import { BESIDE, TorqueBeside } from './TorqueBeside.tsx'
import { TorqueChart } from './TorqueChart.tsx'
import { hotWords, meetingWords } from './torque-words.ts'
import { type TorqueView, cursorStep, cursorWords, settledWords, torqueColumns } from './torque-view.ts'
import { useTorqueView } from './torque-use-view.ts'

const MAIN_HEIGHT = 264
const BESIDE_HEIGHT = 172
/** Where a plot is wide it is also higher [px of width] */
const WIDE = 560

export function TorqueSection() {
  const { view, control } = useTorqueView()
  const { drive } = useWorkshop().frame
  if (drive.circuits.length === 0 || drive.notComputed) return <p>{drive.notComputed ?? CRANKED}</p>
  return (
    <>
      {control && <RunProgress what="Torque over speed" control={control} />}
      {view && <Charts view={view} />}
    </>
  )
}

const CRANKED =
  'A hand turns this machine and gives whatever torque it takes, so there is no motor line. How that torque divides stands below.'

function Charts({ view }: { readonly view: TorqueView }) {
  const name = useMachine((machine) => machine.name)
  const locked = useBench(({ jammed }) => jammed !== 'none')
  const insulation = useMachine(({ thermal }) => thermal?.insulation ?? null)
  const [box, width] = useWidth<HTMLDivElement>()
  const figure = useRef<SVGSVGElement>(null)
  const [beside, setBeside] = useKept('beside')
  const [moved, setMoved] = useKept('readAt')
  const at = Math.min(view.end, moved ?? view.steady?.speed ?? 0)
  const words = useMemo(
    () => (moved === null ? settledWords(view) : cursorWords(view, at)),
    [view, moved, at],
  )
  const cursor = { name: 'Speed to read at', at, step: cursorStep(view.end), text: words, move: setMoved }
  const grow = width > WIDE ? 80 : 0
  return (
    <section className="torque-section" aria-label="Torque over speed">
      <h2>{meetingWords(view, locked)}</h2>
      <div className="drive-figure" ref={box}>
        <TorqueChart view={view} width={width} height={MAIN_HEIGHT + grow} cursor={cursor} figure={figure} />
      </div>
      <p className="torque-read">{words}.</p>
      <p className="small">
        Numbers name the settings; the bold one is set. Dashed is what wheels, meshes and friction ask for.
        The machine settles where the two cross. {insulation && hotWords(view, insulation)}
      </p>
      <Choice label="Shown below" choices={BESIDE} value={beside} onChange={setBeside} />
      <TorqueBeside
        view={view}
        which={beside}
        width={width}
        height={BESIDE_HEIGHT + grow / 2}
        cursor={cursor}
      />
      <ChartActions name={`${name} torque`} figure={figure} columns={() => torqueColumns(view)} />
    </section>
  )
}
