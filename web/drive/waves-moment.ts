/** At which speed the waves are worked out: the live one, the one that was held, or that of steady running. */
import { useEffect, useState } from 'react'
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { steadyNow, useBench, useMachine, useWorkshop } from '../frame/workshop.ts'
import type { Bench } from '../store/bench.ts'

export interface Moment {
  readonly drive: Drive
  readonly input: DriveInput
  readonly kind: 'now' | 'held' | 'steady'
  /** About +z [rad/s] */
  readonly speed: number
}

/** New waves at most this often while the machine runs [ms] */
const EVERY = 200
/** A speed that has changed by less than this part is the same. Our choice. */
const SAME = 2e-4

export const inputOf = (bench: Bench): DriveInput => ({
  setting: bench.setting,
  connected: bench.pluggedIn,
  sense: bench.sense,
  leftLoad: bench.leftLoad,
  rightLoad: bench.rightLoad,
  jammed: bench.jammed,
})

/** Null where the drive is not computed, or does not settle and does not run. */
export function useMoment(): Moment | null {
  const { frame, readout, document, bench: benchStore } = useWorkshop()
  const machine = useMachine((now) => now)
  const bench = useBench((now) => now)
  const [running, setRunning] = useState<Moment | null>(null)
  useEffect(() => {
    let last = -Infinity
    let late: ReturnType<typeof setTimeout> | undefined
    const look = () => {
      const { motion, reading } = readout.getState()
      if (motion !== 'running') {
        setRunning((was) => was && { ...was, kind: 'held' })
        return
      }
      const now = performance.now()
      clearTimeout(late)
      if (now - last < EVERY) {
        late = setTimeout(look, EVERY)
        return
      }
      last = now
      const speed = reading.wormSpeed
      const next = { drive: frame.drive, input: inputOf(benchStore.getState()), kind: 'now' as const, speed }
      setRunning((was) => (was && sameMoment(was, next) ? was : next))
    }
    look()
    const stops = [readout.subscribe(look), benchStore.subscribe(look), document.store.subscribe(look)]
    return () => {
      clearTimeout(late)
      for (const stop of stops) stop()
    }
  }, [frame, readout, document, benchStore])
  const input = inputOf(bench)
  if (
    running &&
    (running.kind === 'now' || (running.drive === frame.drive && sameInput(running.input, input)))
  )
    return running
  const steady = machine && frame.drive.notComputed === null ? steadyNow(frame.drive, bench) : null
  return (
    steady && {
      drive: frame.drive,
      input: { ...input, connected: true },
      kind: 'steady',
      speed: steady.speed,
    }
  )
}

const sameInput = (a: DriveInput, b: DriveInput): boolean =>
  a.setting === b.setting &&
  a.connected === b.connected &&
  a.sense === b.sense &&
  a.leftLoad === b.leftLoad &&
  a.rightLoad === b.rightLoad &&
  a.jammed === b.jammed

const sameMoment = (a: Moment, b: Moment): boolean =>
  a.kind === b.kind &&
  a.drive === b.drive &&
  sameInput(a.input, b.input) &&
  Math.abs(a.speed - b.speed) <= SAME * Math.abs(a.speed)
