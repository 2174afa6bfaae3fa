/** At which speed the waves are worked out: the live one, the one that was held, or that of steady running. */
import { useEffect, useMemo, useState } from 'react'
import type { Warmth } from '../../sim/drive/circuits.ts'
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { settlingNow } from '../frame/steady.ts'
import { type Workshop, useBench, useMachine, useWorkshop } from '../frame/workshop.ts'
import { useReadout } from '../instrument/use-reading.ts'
import { inputOf } from '../store/bench.ts'

export interface Moment {
  readonly machine: Machine
  readonly warmth: Warmth
  readonly drive: Drive
  readonly input: DriveInput
  readonly kind: 'now' | 'held' | 'steady'
  /** About +z [rad/s] */
  readonly speed: number
  /** Whether that is where it settles */
  readonly settled: boolean
  /** Whether fuse or overload switch has opened */
  readonly open: boolean
}

/** A drive as it is set, at a speed that it has or had. */
interface Passing {
  readonly drive: Drive
  readonly input: DriveInput
  readonly kind: 'now' | 'held'
  readonly speed: number
}

/** New waves at most this often while the machine runs [ms] */
const EVERY = 200
/** A speed that has changed by less than this part is the same. Our choice. */
const SAME = 2e-4
/** A speed this near to the settled one is it: cycle means and waveform differ by about as much. Our choice. */
const SETTLED = 1e-3

/** A sentence where the drive is not computed, or does not settle and does not run. */
export function useMoment(): Moment | string {
  const workshop = useWorkshop()
  const { drive } = workshop.frame
  const machine = useMachine((now) => now)
  const { winding, magnet, ...set } = useBench((now) => now)
  const { pluggedIn, setting, sense, leftLoad, rightLoad, jammed } = set
  const open = useReadout(({ reading }) => reading.isOpen)
  const warmth = useMemo(() => ({ winding, magnet }), [winding, magnet])
  const input = useMemo(
    () => ({ setting, connected: pluggedIn && !open, sense, leftLoad, rightLoad, jammed }),
    [pluggedIn, open, setting, sense, leftLoad, rightLoad, jammed],
  )
  const steady = useMemo(() => steadySpeed(drive, input), [drive, input])
  const passing = usePassing(workshop)
  return useMemo(() => {
    const base = { machine, warmth, drive, open }
    if (passing && passing.drive === drive && sameInput(passing.input, input)) {
      const { kind, speed } = passing
      return { ...base, input, kind, speed, settled: input.connected && isNear(speed, steady) }
    }
    if (typeof steady === 'string') return steady
    return { ...base, input: { ...input, connected: true }, kind: 'steady', speed: steady, settled: true }
  }, [machine, warmth, drive, open, input, steady, passing])
}

const CRANKED =
  'A hand turns this machine: there is no voltage and no current to look at. Open a machine with a motor to see its waves.'

/** Plugged in, whether it is or not [rad/s]; or why there is none */
function steadySpeed(drive: Drive, input: DriveInput): number | string {
  if (drive.circuits.length === 0) return CRANKED
  const { point, reason } = settlingNow(drive, { ...input, connected: true })
  return point ? point.speed : reason
}

const isNear = (speed: number, steady: number | string): boolean =>
  typeof steady === 'number' && Math.abs(speed - steady) <= SETTLED * Math.abs(steady)

/** The last speed at which the machine ran; null until it does. */
function usePassing({ frame, readout, bench }: Workshop): Passing | null {
  const [passing, setPassing] = useState<Passing | null>(null)
  useEffect(() => {
    let last = -Infinity
    let late: ReturnType<typeof setTimeout> | undefined
    const look = () => {
      const { motion, reading } = readout.getState()
      clearTimeout(late)
      if (motion !== 'running') {
        setPassing((was) => (was?.kind === 'now' ? { ...was, kind: 'held' } : was))
        return
      }
      const now = performance.now()
      if (now - last < EVERY) {
        late = setTimeout(look, EVERY)
        return
      }
      last = now
      const set = inputOf(bench.getState())
      const input = { ...set, connected: set.connected && !reading.isOpen }
      const next: Passing = { drive: frame.drive, input, kind: 'now', speed: reading.wormSpeed }
      setPassing((was) => (was && samePassing(was, next) ? was : next))
    }
    look()
    const stop = readout.subscribe(look)
    return () => {
      clearTimeout(late)
      stop()
    }
  }, [frame, readout, bench])
  return passing
}

const sameInput = (a: DriveInput, b: DriveInput): boolean =>
  a.setting === b.setting &&
  a.connected === b.connected &&
  a.sense === b.sense &&
  a.leftLoad === b.leftLoad &&
  a.rightLoad === b.rightLoad &&
  a.jammed === b.jammed

const samePassing = (a: Passing, b: Passing): boolean =>
  a.kind === b.kind &&
  a.drive === b.drive &&
  sameInput(a.input, b.input) &&
  Math.abs(a.speed - b.speed) <= SAME * Math.abs(a.speed)
