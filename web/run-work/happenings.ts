/** A start, a jam, a pull of the plug: from which state each is run, and for how long. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import { type TransientOptions, transient } from '../../sim/run/transient.ts'
import type { Wave } from '../../sim/run/waveform-record.ts'

export type Happening = 'start' | 'jam-left' | 'jam-right' | 'unplug'

/** A running machine runs on as it is for so long before something happens [s]. Our choice: five periods. */
export const LEAD = 0.1

const SAMPLES = 3989
/** Steps in which the time that it will take is looked for, and where that ends [s] */
const STEP = 2e-3
const LONGEST = 10
/** Part of the final speed that counts as there */
const THERE = 0.98

/** Time until the speed has come to its end, at the averaged level [s] */
function timeToSettle(drive: Drive, input: DriveInput, from: number, to: number): number {
  const state = restState()
  state.speed = from
  const there = (): boolean => (to === 0 ? state.speed === 0 : Math.abs(state.speed) >= THERE * Math.abs(to))
  while (!there() && state.time < LONGEST) step(state, drive, input, STEP)
  return state.time
}

/** Up to the next of 1, 2, 5 and their tens. */
export function roundUp(value: number): number {
  const ten = 10 ** Math.floor(Math.log10(value))
  return ten * ([1, 2, 5, 10].find((each) => each * ten >= 0.999 * value) ?? 10)
}

const changeOf = (what: Happening): Partial<DriveInput> =>
  what === 'unplug' ? { connected: false } : { jammed: what === 'jam-left' ? 'left' : 'right' }

/** Null for a drive without waveforms, or without a steady running to begin from or end at. */
export function optionsFor(drive: Drive, input: DriveInput, what: Happening): TransientOptions | null {
  const steady = operatingPoint(drive, input)
  if (!steady || drive.circuits.length === 0) return null
  if (what === 'start')
    return {
      duration: roundUp(1.3 * timeToSettle(drive, input, 0, steady.speed) + 0.05),
      samples: SAMPLES,
    }
  const change = changeOf(what)
  const settles = timeToSettle(drive, { ...input, ...change }, steady.speed, 0)
  return {
    duration: LEAD + roundUp(1.3 * settles + 0.05),
    samples: SAMPLES,
    speed: steady.speed,
    capacitorVoltage: steady.reading.capacitorVoltage,
    changes: [{ time: LEAD, change }],
  }
}

/** Plugged in and free to begin with, whatever the input says. */
export function happen(drive: Drive, input: DriveInput, what: Happening): Wave | null {
  const free: DriveInput = { ...input, connected: true, jammed: 'none' }
  const options = optionsFor(drive, free, what)
  return options && (transient(drive, free, options)?.wave ?? null)
}
