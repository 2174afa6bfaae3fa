/** The wave of a moment, at a speed that is held still in time. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { CAPACITOR, MOTOR, SOURCE } from '../../sim/electric/wave-network.ts'
import { TURN } from '../../sim/quantity/constants.ts'
import { type WaveRun, advanceTo, createRun } from '../../sim/run/waveform.ts'
import { type Wave, newRecorder } from '../../sim/run/waveform-record.ts'

export interface Stretch {
  readonly of: 'mains' | 'switching'
  readonly periods: number
  /** Of one of them [s] */
  readonly period: number
}

export const SAMPLES = 2881

/** An inertia that no torque of a machine moves within a second [kg m2] */
const UNMOVED = 1e6
/** Periods until currents repeat: at least, at most; and what counts as repeating, in ordinary sizes. Our choice. */
const FEWEST = 3
const MOST = 30
const REPEATS = 1e-6

/** Once the currents repeat themselves; `speed` about +z [rad/s]. */
export function waveAt(drive: Drive, input: DriveInput, speed: number, stretch: Stretch): Wave {
  const { of, periods, period } = stretch
  const held: Drive = { ...drive, rotorInertia: UNMOVED }
  const run = createRun(held, input, { speed, averaged: of === 'mains' })
  const { angularFrequency } = run.parts.network.circuit.source
  settleCurrents(run, angularFrequency > 0 ? TURN / angularFrequency : period)
  const recorder = newRecorder(run, periods * period, SAMPLES)
  run.events.witness = recorder
  advanceTo(run, run.y[0]! + periods * period)
  run.events.witness = null
  return recorder.wave
}

/** Signs are left out: at a zero of the mains they depend on which half cycle it is counted to. */
function settleCurrents(run: WaveRun, period: number): void {
  const { y, parts } = run
  const { currentSize, voltageSize, alternating } = parts.network
  const most = alternating ? MOST : MOST * MOST
  let motor = 0
  let source = 0
  let capacitor = 0
  for (let n = 1; n <= most; n++) {
    advanceTo(run, n * period)
    const miss = Math.max(
      Math.abs(Math.abs(y[MOTOR]!) - motor) / currentSize,
      Math.abs(Math.abs(y[SOURCE]!) - source) / currentSize,
      Math.abs(y[CAPACITOR]! - capacitor) / voltageSize,
    )
    if (n >= FEWEST && miss < REPEATS) return
    motor = Math.abs(y[MOTOR]!)
    source = Math.abs(y[SOURCE]!)
    capacitor = y[CAPACITOR]!
  }
}
