/** What the heating panel asks of the other thread, and the answer that is shown until the next one is there. */
import { useMemo, useState } from 'react'
import type { DriveInput } from '../../sim/drive/input.ts'
import { MINUTE } from '../../sim/quantity/constants.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { HeatingRun } from '../../sim/run/heating.ts'
import { useBench, useMachine } from '../frame/workshop.ts'
import type { HeatingOrder, Settled, SettledOrder } from '../run-work/orders.ts'
import { type RunControl, useRun } from '../run-work/use-run.ts'

/** Minutes on and off by turns */
export interface DutyMinutes {
  readonly on: number
  readonly off: number
}

export interface HeatWays {
  readonly fanCools: boolean
  readonly duty: DutyMinutes | null
  /** Whether a fuse or overload switch that opens ends the heating */
  readonly protectionActs: boolean
}
export const THROUGHOUT: HeatWays = { fanCools: true, duty: null, protectionActs: false }

/** As set, and under power whether or not the plug is in at this moment. */
export const poweredInput = ({
  setting,
  sense,
  leftLoad,
  rightLoad,
  jammed,
}: Omit<DriveInput, 'connected'>): DriveInput => ({
  setting,
  connected: true,
  sense,
  leftLoad,
  rightLoad,
  jammed,
})

export function heatingOrder(
  machine: Machine,
  input: DriveInput,
  duration: number,
  { fanCools, duty, protectionActs }: HeatWays,
): HeatingOrder {
  return {
    kind: 'heating',
    machine,
    input,
    options: {
      duration,
      fanCools,
      protectionActs,
      ...(duty && { duty: { on: duty.on * MINUTE, off: duty.off * MINUTE } }),
    },
  }
}

/** An answer with what it was the answer to. */
export interface Heated {
  readonly order: HeatingOrder
  readonly run: HeatingRun
}

export interface Heating {
  /** The answer, or while it is on its way the last one of that machine and time; null where there is none */
  readonly heated: Heated | null
  readonly control: RunControl<HeatingRun | null>
}

export function useHeating(order: HeatingOrder | null): Heating {
  const control = useRun<HeatingOrder>(order)
  const [kept, setKept] = useState<Heated | null>(null)
  const { run } = control
  const answer = run.state === 'done' ? run.answer : null
  if (order && answer && answer !== kept?.run) setKept({ order, run: answer })
  const fits =
    order !== null &&
    kept !== null &&
    (run.state === 'done' || run.state === 'working') &&
    kept.order.machine.name === order.machine.name &&
    kept.order.options.duration === order.options.duration
  return { heated: fits ? kept : null, control }
}

export interface AllSettled {
  /** One a setting, at the loads as set; null until they are there */
  readonly settled: readonly Settled[] | null
  readonly control: RunControl<readonly Settled[] | null>
}

export function useSettled(): AllSettled {
  const machine = useMachine((now) => now)
  const { sense, leftLoad, rightLoad, jammed } = useBench((now) => now)
  const order = useMemo<SettledOrder>(
    () => ({
      kind: 'settled',
      machine,
      inputs: machine.control.steps.map((_, setting) =>
        poweredInput({ setting, sense, leftLoad, rightLoad, jammed }),
      ),
    }),
    [machine, sense, leftLoad, rightLoad, jammed],
  )
  const control = useRun<SettledOrder>(order)
  return { settled: control.run.state === 'done' ? control.run.answer : null, control }
}
