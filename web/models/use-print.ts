/** What is chosen for the print, and what it comes to. */
import { useEffect, useMemo, useState } from 'react'
import type { Machine } from '../../sim/machine/machine.ts'
import { useMachine } from '../frame/workshop.ts'
import { begin } from './model-client.ts'
import type { PrintMeasure } from './print-model.ts'
import {
  type Fineness,
  type PrintChanges,
  type PrintOrder,
  type What,
  chosenChanges,
  printGearing,
} from './print-order.ts'

export interface Print {
  readonly machine: Machine
  readonly order: PrintOrder
  readonly changes: PrintChanges
  readonly setWhat: (what: What) => void
  readonly setFineness: (fineness: Fineness) => void
  readonly change: (changes: Partial<PrintChanges>) => void
}

export function usePrint(): Print {
  const machine = useMachine((now) => now)
  const [what, setWhat] = useState<What>('set')
  const [fineness, setFineness] = useState<Fineness>('print')
  const [wanted, setWanted] = useState<Partial<PrintChanges>>({})
  const { name, gearing } = machine
  const changes = useMemo(() => chosenChanges(gearing, wanted), [gearing, wanted])
  const order = useMemo(
    () => ({ machineName: name, gearing: printGearing(gearing, changes), what, fineness }),
    [name, gearing, changes, what, fineness],
  )
  const change = (next: Partial<PrintChanges>) => setWanted((last) => ({ ...last, ...next }))
  return { machine, order, changes, setWhat, setFineness, change }
}

export interface Measured {
  /** Of an older order while the new one is worked on; null before the first. */
  readonly measure: PrintMeasure | null
  readonly state: 'busy' | 'done' | 'failed'
}

/** Changes that come faster than this are one [ms] */
const SETTLED = 200

export function useMeasure(order: PrintOrder): Measured {
  const [last, setLast] = useState<{
    readonly order: PrintOrder
    readonly measure: PrintMeasure | null
  } | null>(null)
  useEffect(() => {
    let cancel = () => {}
    const timer = setTimeout(() => {
      const work = begin({ order, format: null }, () => {})
      cancel = work.cancel
      work.done.then(
        (answer) => answer && setLast({ order, measure: answer.measure }),
        () => setLast({ order, measure: null }),
      )
    }, SETTLED)
    return () => {
      clearTimeout(timer)
      cancel()
    }
  }, [order])
  const measure = last?.measure ?? null
  if (last?.order !== order) return { measure, state: 'busy' }
  return { measure, state: measure === null ? 'failed' : 'done' }
}
