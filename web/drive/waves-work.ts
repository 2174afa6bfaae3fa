/** The wave of a moment: of steady running with its ripple, or at a speed on the way there. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { CAPACITOR, MOTOR, SOURCE } from '../../sim/electric/wave-network.ts'
import { advanceTo, createRun } from '../../sim/run/waveform.ts'
import { type Wave, newRecorder } from '../../sim/run/waveform-record.ts'
import { steadyWave } from '../../sim/run/waveform-steady.ts'

export interface WaveAt {
  readonly wave: Wave
  /** Speed ripple from the least to the most over the mean; null at a speed that is held still in time */
  readonly ripple: number | null
}

export interface Stretch {
  readonly of: 'mains' | 'switching'
  readonly periods: number
  /** Of one of them [s] */
  readonly period: number
}

const SAMPLES = 1441
/** A speed this near to the settled one is it: cycle means and waveform differ by less. Design choice. */
const SETTLED = 1e-3

/** @param speed - about +z [rad/s] */
export function waveAt(drive: Drive, input: DriveInput, speed: number, stretch: Stretch): WaveAt {
  const steady = isSettled(drive, input, speed) && isWhole(drive, input, stretch)
  const settled = steady ? steadyWave(drive, input, stretch.periods, SAMPLES) : null
  if (settled) return { wave: settled.wave, ripple: settled.point.ripple }
  return { wave: wavePassing(drive, input, speed, stretch), ripple: null }
}

function isSettled(drive: Drive, input: DriveInput, speed: number): boolean {
  const point = operatingPoint(drive, input)
  return point !== null && Math.abs(speed - point.speed) <= SETTLED * Math.abs(point.speed)
}

/** Whether the stretch is of the period in which everything repeats. */
const isWhole = (drive: Drive, { setting }: DriveInput, { of }: Stretch): boolean =>
  (of === 'mains') === drive.circuits[setting]!.source.angularFrequency > 0

/** An inertia that no torque of a machine can move within a second [kg m2] */
const UNMOVED = 1e6
/** Periods until currents repeat: at least, at most; and what counts as repeating, in ordinary sizes. Our choice. */
const FEWEST = 3
const MOST = 60
const REPEATS = 1e-5

/** At a speed that is held still in time, once the currents repeat themselves. */
function wavePassing(drive: Drive, input: DriveInput, speed: number, stretch: Stretch): Wave {
  const { of, periods, period } = stretch
  const held = { ...drive, rotorInertia: UNMOVED }
  const run = createRun(held, input, { speed, averaged: of === 'mains' })
  const { source } = drive.circuits[input.setting]!
  const repeat = source.angularFrequency > 0 ? (2 * Math.PI) / source.angularFrequency : period
  const { network } = run.parts
  const sizes = [network.currentSize, network.currentSize, network.voltageSize]
  const most = source.angularFrequency > 0 ? MOST : MOST * MOST
  let last = [0, 0, 0]
  for (let n = 1; n <= most; n++) {
    advanceTo(run, n * repeat)
    const now = [run.y[MOTOR]!, run.y[SOURCE]!, run.y[CAPACITOR]!]
    const miss = now.map((value, at) => Math.abs(value - last[at]!) / sizes[at]!)
    if (n >= FEWEST && Math.max(...miss) < REPEATS) break
    last = now
  }
  const recorder = newRecorder(run, periods * period, SAMPLES)
  run.events.witness = recorder
  advanceTo(run, run.y[0]! + periods * period)
  run.events.witness = null
  return recorder.wave
}
