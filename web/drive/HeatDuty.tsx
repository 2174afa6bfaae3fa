/** Running with pauses: what that ends in, and how long it may be on at a stretch. */
import { useMemo } from 'react'
import { useBench } from '../frame/workshop.ts'
import { StepField } from '../instrument/StepField.tsx'
import type { DutyOrder, LongestOrder } from '../run-work/orders.ts'
import { RunProgress } from '../run-work/RunProgress.tsx'
import { useRun } from '../run-work/use-run.ts'
import type { ThermalMachine } from './heat-machine.ts'
import { dutyWords, longestWords } from './heat-words.ts'
import { MINUTE } from '../../sim/quantity/constants.ts'
import { type DutyMinutes, poweredInput } from './heat-work.ts'

interface HeatDutyProps {
  readonly machine: ThermalMachine
  readonly duty: DutyMinutes
  readonly onDuty: (duty: DutyMinutes) => void
}

const MOST = 240

export function HeatDuty({ machine, duty, onDuty }: HeatDutyProps) {
  const take = (change: Partial<DutyMinutes>) => {
    onDuty({ ...duty, ...change })
    return null
  }
  return (
    <>
      <div className="heat-duty">
        <StepField
          label="On"
          value={duty.on}
          min={1}
          max={MOST}
          less="A minute less on"
          more="A minute more on"
          suffix="min"
          onChange={(on) => take({ on })}
        />
        <StepField
          label="Off"
          value={duty.off}
          min={1}
          max={MOST}
          less="A minute less off"
          more="A minute more off"
          suffix="min"
          onChange={(off) => take({ off })}
        />
      </div>
      <DutySaid machine={machine} duty={duty} />
    </>
  )
}

function DutySaid({ machine, duty }: Omit<HeatDutyProps, 'onDuty'>) {
  const bench = useBench((now) => now)
  const input = useMemo(() => poweredInput(bench), [bench])
  const off = duty.off * MINUTE
  const ends = useRun<DutyOrder>({ kind: 'duty', machine, input, duty: { on: duty.on * MINUTE, off } })
  const longest = useRun<LongestOrder>({ kind: 'longest', machine, input, off })
  const swing = ends.run.state === 'done' ? ends.run.answer : null
  const most = longest.run.state === 'done' ? longest.run.answer : null
  return (
    <>
      <RunProgress what="Where the pauses lead" control={ends} />
      {swing && <p>{dutyWords(swing)}</p>}
      <RunProgress what="The longest time on" control={longest} />
      {most && <p>{longestWords(machine.thermal, most.on, off)}</p>}
    </>
  )
}
