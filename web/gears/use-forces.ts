/** The forces for the loads that are chosen. */
import { useMemo } from 'react'
import { machineLayout } from '../../sim/pose/layout.ts'
import { steadyNow } from '../frame/steady.ts'
import { useBench, useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { type WormForces, bearingsAt, sharedTorques, startingTorque, wormForces } from './forces.ts'

export interface ForcesNow {
  readonly forces: WormForces
  /** Whether they are those of steady running, and not of the loads alone */
  readonly steady: boolean
  /** End of the worm's shaft, at the front [mm] */
  readonly end: number
}

/** Steady running as set, without the jam; where that is not computed or does not turn, what the loads ask. */
export function useForces(): ForcesNow {
  const { frame } = useWorkshop()
  const machine = useMachine((now) => now)
  const bench = useBench((now) => now)
  const loads = useView((view) => view.forceLoads)
  const support = useView((view) => view.support)
  return useMemo(() => {
    const { outputs, gearing } = machine
    const point = steadyNow(frame.drive, { ...bench, jammed: 'none' })
    const turns = point !== null && !point.stalled && !point.locked
    const asked = (index: number) => {
      const load = outputs.loads[index]
      return load ? startingTorque(load, outputs) : 0
    }
    const set = turns
      ? { left: point.reading.meshTorqueLeft, right: point.reading.meshTorqueRight }
      : { left: asked(bench.leftLoad), right: asked(bench.rightLoad) }
    const { frontBearing: front, rearBearing: rear, front: end } = machineLayout(machine).shaft
    const at = bearingsAt(support, { front, rear })
    return { forces: wormForces(gearing, sharedTorques(set, loads), bench.sense, at), steady: turns, end }
  }, [frame, machine, bench, loads, support])
}
