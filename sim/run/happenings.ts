/** A start, a jam, a pull of the plug: from which state each is run, and for how long. */
import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import { operatingPoint } from '../drive/operating-point.ts'
import { restState } from '../drive/state.ts'
import { step } from '../drive/step.ts'
import { type TransientOptions, transient } from './transient.ts'
import type { Wave } from './waveform-record.ts'

export type Happening = 'start' | 'jam-left' | 'jam-right' | 'unplug'

/** A running machine runs on as it is for so long before something happens [s]. Our choice: five periods. */
export const LEAD = 0.1

/** Between samples: of a chopper's period, and of the mains, where the crest of a half wave is met to 1 in 2000 */
const SAMPLES_A_SWITCHING = 8
const SAMPLE = 1e-4
const FEWEST_SAMPLES = 4001
const MOST_SAMPLES = 40_001
/** Steps in which the time that it will take is looked for, and where that ends [s] */
const STEP = 2e-3
const LONGEST = { start: 4, jam: 0.5, unplug: 10 }
/** A chopper takes many steps. */
const LONGEST_CHOPPED = 0.7
/** Part of the final speed that counts as there */
const THERE = 0.98

/** So that its end is seen to stay: what is added in parts of the time, and at least [s]. Our choice. */
const REST = 0.3
const LEAST_REST = 0.05

const withRest = (time: number): number => (1 + REST) * time + LEAST_REST

/** Rounding that a round number may be short of what is asked for, in parts of it */
const SLACK = 1e-3

/** Time until the speed has come to its end, at the averaged level [s] */
function timeToSettle(drive: Drive, input: DriveInput, from: number, to: number, longest: number): number {
  const state = restState()
  state.speed = from
  const there = (): boolean => (to === 0 ? state.speed === 0 : Math.abs(state.speed) >= THERE * Math.abs(to))
  while (!there() && state.time < longest) step(state, drive, input, STEP)
  return state.time
}

/** Up to the next of 1, 2, 5 and their tens. */
export function roundUp(value: number): number {
  const ten = 10 ** Math.floor(Math.log10(value))
  return ten * ([1, 2, 5, 10].find((each) => each * ten >= (1 - SLACK) * value) ?? 10)
}

function longestOf(drive: Drive, { setting }: DriveInput, what: Happening): number {
  const most = LONGEST[what === 'start' || what === 'unplug' ? what : 'jam']
  const chopped = drive.circuits[setting]!.chopper !== null && what !== 'unplug'
  return chopped ? Math.min(most, LONGEST_CHOPPED) : most
}

function samplesOf(drive: Drive, { setting }: DriveInput, duration: number): number {
  const { chopper } = drive.circuits[setting]!
  const between = chopper ? chopper.period / SAMPLES_A_SWITCHING : SAMPLE
  return Math.min(MOST_SAMPLES, Math.max(FEWEST_SAMPLES, 1 + Math.ceil(duration / between)))
}

const changeOf = (what: Happening): Partial<DriveInput> =>
  what === 'unplug' ? { connected: false } : { jammed: what === 'jam-left' ? 'left' : 'right' }

/** Null for a drive without waveforms, or without a steady running to begin from or end at. */
export function optionsFor(drive: Drive, input: DriveInput, what: Happening): TransientOptions | null {
  const steady = operatingPoint(drive, input)
  if (!steady || drive.circuits.length === 0) return null
  const longest = longestOf(drive, input, what)
  if (what === 'start') {
    const duration = roundUp(withRest(timeToSettle(drive, input, 0, steady.speed, longest)))
    return { duration, samples: samplesOf(drive, input, duration) }
  }
  const change = changeOf(what)
  const settles = timeToSettle(drive, { ...input, ...change }, steady.speed, 0, longest)
  const duration = LEAD + roundUp(withRest(settles))
  return {
    duration,
    samples: samplesOf(drive, input, duration),
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
