/** What the timing panel knows of one machine, worked out anew only when the numbers behind it change. */
import { useMemo } from 'react'
import {
  type AssemblyPhase,
  type TimedPair,
  assemblyPhases,
  clashZones,
  phaseCount,
} from '../../sim/gear/timing.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { outputTiming } from '../../sim/machine/output-timing.ts'
import { type Layout, machineLayout } from '../../sim/pose/layout.ts'

export interface Timing {
  readonly layout: Layout
  readonly pair: TimedPair
  /** Best first */
  readonly phases: readonly AssemblyPhase[]
  /** The one that is put in */
  readonly chosen: AssemblyPhase
  /** Offsets at which the rows meet somewhere in a turn [rad] */
  readonly zones: readonly (readonly [number, number])[]
}

/** Two teeth that give the same phase differ by so many. */
export const sameTooth = ({ teeth, rows }: TimedPair, one: number, other: number): boolean =>
  (one - other) % phaseCount(teeth, rows.count) === 0

export function useTiming(machine: Machine): Timing {
  const { gearing, outputs } = machine
  const { toothOffset } = outputs
  const layout = useMemo(() => machineLayout(machine), [machine])
  const pair = useMemo(() => outputTiming({ gearing, outputs }), [gearing, outputs])
  const numbers = JSON.stringify(pair)
  const { phases, zones } = useMemo(() => {
    const same = JSON.parse(numbers) as TimedPair
    return { phases: assemblyPhases(same), zones: clashZones(same) }
  }, [numbers])
  // every tooth has its phase among them
  const chosen = phases.find((phase) => sameTooth(pair, phase.toothOffset, toothOffset))!
  return { layout, pair, phases, zones, chosen }
}
