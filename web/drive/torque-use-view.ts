/** What the torque panel draws for the machine as it is set, computed here where it is quick, else on another thread. */
import { useMemo } from 'react'
import type { Drive } from '../../sim/drive/drive.ts'
import { completed } from '../../sim/run/completed.ts'
import type { TorqueSpeedCurve } from '../../sim/run/torque-speed.ts'
import { useBench, useMachine, useWorkshop } from '../frame/workshop.ts'
import { useSteady } from '../instrument/use-reading.ts'
import type { Sweep, SweepOrder } from '../run-work/orders.ts'
import { sweepTorque } from '../../sim/run/torque-sweep.ts'
import { type RunControl, useRun } from '../run-work/use-run.ts'
import { torqueLines } from './torque-lines.ts'
import { type TorqueView, torqueView } from './torque-view.ts'

type Curves = readonly TorqueSpeedCurve[]

const POINTS = 81
/** Where each point is a search of its own, fewer will do. */
const FEW_POINTS = 41

/** Whether every point has a closed form, so that all of them take less than a picture. */
const isQuick = ({ tables }: Drive): boolean => tables.every((table) => table === null)

/** The last sweeps by what was asked for, so that a panel that is opened again need not wait. */
const KEPT = new Map<string, Curves>()
const MOST_KEPT = 6

function keep({ order, curves }: Sweep): void {
  KEPT.set(JSON.stringify(order), curves)
  const [oldest] = KEPT.keys()
  if (KEPT.size > MOST_KEPT && oldest !== undefined) KEPT.delete(oldest)
}

export interface TorqueViewing {
  /** Null while the first sweep is on its way, and where there is none */
  readonly view: TorqueView | null
  /** Of the sweep on the other thread; null where none is needed */
  readonly control: RunControl<Sweep> | null
}

export function useTorqueView(): TorqueViewing {
  const { frame } = useWorkshop()
  const { drive } = frame
  const { winding, magnet } = useBench((bench) => bench)
  const machine = useMachine((now) => now)
  const quick = isQuick(drive)
  const order: SweepOrder = { kind: 'sweep', machine, warmth: { winding, magnet }, points: FEW_POINTS }
  const said = JSON.stringify(order)
  const known = !quick && KEPT.has(said)
  const control = useRun(quick || known ? null : order)
  const { run } = control
  if (run.state === 'done') keep(run.answer)
  const here = useMemo(() => (quick ? completed(sweepTorque(drive, POINTS)) : null), [quick, drive])
  const view = useView(here ?? KEPT.get(said) ?? null)
  return { view, control: quick || known ? null : control }
}

function useView(curves: Curves | null): TorqueView | null {
  const { drive } = useWorkshop().frame
  const { thermal } = useMachine((now) => now)
  const bench = useBench((now) => now)
  const point = useSteady()
  return useMemo(() => {
    const found = curves && torqueLines(drive, curves)
    if (!found) return null
    const input = { ...bench, connected: true }
    return torqueView({ found, drive, input, point, thermal, winding: bench.winding })
  }, [curves, drive, bench, point, thermal])
}
