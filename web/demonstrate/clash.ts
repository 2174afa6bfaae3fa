/** Whether the machine is turning with outputs that clash; the check is fetched when it first turns. */
import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import type { Machine } from '../../sim/machine/machine.ts'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'

const fetchCheck = async () => (await import('../../sim/machine/timing-problems.ts')).outputClash

/** Turned by hand beside the timing panel, the exercise there says it and stops in time. */
function useTold(): boolean {
  const { readout } = useWorkshop()
  const motion = useStore(readout, (now) => now.motion)
  const timing = useView(({ panel }) => panel === 'timing')
  const asked = useView(({ way }) => way === 'predict')
  return !asked && (motion === 'running' || (motion !== 'still' && !timing))
}

export function useClash(): boolean {
  const { announcer } = useWorkshop()
  const machine = useMachine((now) => now)
  const told = useTold()
  const [clashing, setClashing] = useState<Machine | null>(null)
  useEffect(() => {
    if (!told) return undefined
    let left = false
    // without the check there is no note, and it is asked for again at the next turn
    fetchCheck().then(
      (outputClash) => !left && setClashing(outputClash(machine).length > 0 ? machine : null),
      () => {},
    )
    return () => {
      left = true
    }
  }, [told, machine])
  const clash = told && clashing === machine
  useEffect(() => {
    if (clash) announcer.say('The outputs clash.')
  }, [clash, announcer])
  return clash
}
