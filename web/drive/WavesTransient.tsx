/** A start, a jam and a pull of the plug, moment by moment. */
import { useMemo, useRef } from 'react'
import { compileDrive } from '../../sim/drive/drive.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Wave } from '../../sim/run/waveform-record.ts'
import { ChartActions } from '../chart/ChartActions.tsx'
import { useWidth } from '../chart/use-width.ts'
import { useBench, useMachine } from '../frame/workshop.ts'
import { type Bench, inputOf, warmthOf } from '../store/bench.ts'
import { figure } from '../instrument/reading-text.ts'
import type { TransientOrder } from '../run-work/orders.ts'
import { RunProgress } from '../run-work/RunProgress.tsx'
import { useRun } from '../run-work/use-run.ts'
import { type Happening, LEAD } from '../../sim/run/happenings.ts'
import { useKept } from './kept.ts'
import { tell } from './transient-words.ts'
import { WavesFigure } from './WavesFigure.tsx'
import { type Lane, type LaneId, lanesOf, waveColumns } from './waves-lanes.ts'
import { readMeters } from './waves-meters.ts'
import { sourceOf } from './waves-seen.ts'

const CHOICES: readonly { readonly what: Happening; readonly label: string }[] = [
  { what: 'start', label: 'Start' },
  { what: 'jam-left', label: 'Jam left wheel' },
  { what: 'jam-right', label: 'Jam right wheel' },
  { what: 'unplug', label: 'Unplug' },
]

export function WavesTransient() {
  const machine = useMachine((now) => now)
  const bench = useBench((now) => now)
  const [what, setWhat] = useKept('happening')
  const order = what && orderOf(machine, bench, what)
  const control = useRun<TransientOrder>(order)
  return (
    <section className="waves-transient" aria-label="A start, a jam, a pull of the plug">
      <h3>A start, a jam, a pull of the plug</h3>
      <div className="waves-choices" role="group" aria-label="What happens">
        {CHOICES.map((choice) => (
          <button
            key={choice.what}
            type="button"
            className="button"
            aria-pressed={what === choice.what}
            onClick={() => setWhat(what === choice.what ? null : choice.what)}
          >
            {choice.label}
          </button>
        ))}
      </div>
      {what === null && (
        <p className="small">Choose one to see it moment by moment, at the setting and loads of the bench.</p>
      )}
      <RunProgress what="The run" control={control} />
      {order && control.run.state === 'done' && <Answer wave={control.run.answer} order={order} />}
    </section>
  )
}

function orderOf(machine: Machine, bench: Bench, what: Happening): TransientOrder {
  return { kind: 'transient', machine, warmth: warmthOf(bench), input: inputOf(bench), what }
}

function Answer({ wave, order }: { readonly wave: Wave | null; readonly order: TransientOrder }) {
  return wave ? (
    <Happened wave={wave} order={order} />
  ) : (
    <p>At these loads there is no steady running to begin from.</p>
  )
}

interface HappenedProps {
  readonly wave: Wave
  readonly order: TransientOrder
}

function Happened({ wave, order }: HappenedProps) {
  const [ref, width] = useWidth<HTMLDivElement>()
  const figureRef = useRef<SVGSVGElement>(null)
  const { machine, what } = order
  const told = useMemo(() => tell(what, wave, machine), [what, wave, machine])
  const lanes = useMemo(() => {
    const source = sourceOf(machine, compileDrive(machine, order.warmth), order.input)
    return lanesOf(wave, source).filter(({ id }) => SHOWN.includes(id))
  }, [wave, order, machine])
  const from = what === 'start' ? 0 : LEAD
  const shift = (time: number) => 1e3 * (time - from)
  const name = CHOICES.find((choice) => choice.what === what)!.label
  return (
    <>
      <div ref={ref} className="waves-picture">
        <WavesFigure
          label={`${name}, moment by moment`}
          figure={figureRef}
          tall
          width={width}
          x={{ label: 'ms', from: shift(0), to: shift(wave.time.at(-1)!) }}
          time={wave.time.map(shift)}
          lanes={lanes}
          heads={lanes.map((lane) => rangeText(lane, wave))}
          spots={told.marks.map((mark) => ({ ...mark, x: shift(mark.time), y: mark.value }))}
        />
      </div>
      {told.sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <ChartActions name={name} figure={figureRef} columns={() => waveColumns(wave)} />
    </>
  )
}

const SHOWN: readonly LaneId[] = ['capacitor-voltage', 'motor-current', 'speed']

function rangeText({ traces }: Lane, { time }: Wave): string {
  const { peak } = readMeters(time, traces[0].values)
  return `up to ${figure(peak)}`
}
