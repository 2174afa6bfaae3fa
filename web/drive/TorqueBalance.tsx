/** Motor to two wheels: copies of the motor's torque above, below them what becomes of it. */
import { useDeferredValue, useMemo, useRef } from 'react'
import type { Drive } from '../../sim/drive/drive.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { ChartActions } from '../chart/ChartActions.tsx'
import type { Column } from '../chart/table.ts'
import { useWidth } from '../chart/use-width.ts'
import { steadyNow } from '../frame/steady.ts'
import { useBench, useMachine, useWorkshop } from '../frame/workshop.ts'
import type { Bench } from '../store/bench.ts'
import { quantityText, ratioFigure } from '../instrument/reading-text.ts'
import { useNowOrSteady, useReadout, useSteady } from '../instrument/use-reading.ts'
import { type Balance, type OtherBalance, balance } from './torque-balance.ts'
import { TorqueBars } from './TorqueBars.tsx'
import { TorqueTable } from './TorqueTable.tsx'

interface Balances {
  readonly set: Balance | null
  /** Steady running with other loads to compare; null where the machine knows only one */
  readonly other: OtherBalance | null
  readonly running: boolean
}

/** As set, now or in steady running; beside it the heaviest load on one wheel, or on both where they already differ. */
function useBalances(): Balances {
  const { frame } = useWorkshop()
  const machine = useMachine((now) => now)
  const bench = useBench((now) => now)
  const steady = useSteady()
  const { drive } = frame
  const running = useReadout(({ motion }) => motion === 'running')
  const reading = useNowOrSteady(steady)
  const set = useMemo(() => ({ drive, machine, bench }), [drive, machine, bench])
  const other = useOther(useDeferredValue(set))
  return { set: reading && balance(machine, reading, bench.sense), other, running }
}

interface AsSet {
  readonly drive: Drive
  readonly machine: Machine
  readonly bench: Bench
}

/** Its steady running is worked out after that of the loads as set is drawn. */
function useOther({ drive, machine, bench }: AsSet): OtherBalance | null {
  return useMemo(() => {
    const { loads } = machine.outputs
    if (loads.length < 2) return null
    const heavy = heaviest(loads)
    const differ = bench.leftLoad !== bench.rightLoad
    const input = { ...bench, jammed: 'none' as const, leftLoad: heavy, rightLoad: differ ? heavy : 0 }
    const point = steadyNow(drive, input)
    const told = point && balance(machine, point.reading, bench.sense)
    if (!told) return null
    return differ
      ? { name: 'Both wheels loaded', short: 'Both loaded', balance: told }
      : { name: 'Only the left wheel loaded', short: 'One loaded', balance: told }
  }, [drive, machine, bench])
}

const heaviest = (loads: readonly { readonly active: number; readonly passive: number }[]): number => {
  const sizes = loads.map(({ active, passive }) => Math.abs(active) + passive)
  return sizes.indexOf(Math.max(...sizes))
}

export function TorqueBalance() {
  const { set, other, running } = useBalances()
  const machine = useMachine((now) => now)
  const figure = useRef<SVGSVGElement>(null)
  const [box, width] = useWidth<HTMLDivElement>()
  const times = ratioFigure(machine)
  const driver = machine.motor ? 'motor' : 'hand'
  return (
    <section className="torque-balance" aria-label={`From the ${driver} to two wheels`}>
      <h2>From the {driver} to two wheels</h2>
      <div className="drive-figure" ref={box}>
        {set && <TorqueBars set={set} other={other} width={width} driver={driver} figure={figure} />}
      </div>
      {set ? (
        <>
          <p className="small">
            {running ? 'Now, as it turns.' : 'Running steadily as set.'} Hatched is lost on the way. Each
            wheel takes what its load asks, not half.
          </p>
          <TorqueTable set={set} other={other} />
          <p className="small">
            Without losses both wheels together would carry {times} times {quantityText(set.each, 'N m')},
            half of it each when they share evenly (common practice).
          </p>
          <ChartActions
            name={`${machine.name} torque balance`}
            figure={figure}
            columns={() => balanceColumns(set, other?.balance ?? null)}
          />
        </>
      ) : (
        <p>
          At a standstill friction holds whatever is left over, and how it divides cannot be told. Let the
          machine turn.
        </p>
      )}
    </section>
  )
}

/** As set first, with the other loads second. */
export function balanceColumns(set: Balance, other: Balance | null): readonly Column[] {
  const both = other ? [set, other] : [set]
  const names = [...new Set(both.flatMap(({ parts }) => parts.map(({ name }) => name)))]
  return [
    { heading: 'Torque of motor or hand [N m]', values: both.map(({ each }) => each) },
    { heading: 'That times the ratio [N m]', values: both.map(({ total }) => total) },
    ...names.map((part) => ({
      heading: `${part} [N m]`,
      values: both.map(({ parts }) => parts.find(({ name }) => name === part)?.torque ?? 0),
    })),
  ]
}
