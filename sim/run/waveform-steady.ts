import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import { TIME } from '../numeric/dormand-prince.ts'
import type { RefinedPoint } from './refined.ts'
import { refinedPoint } from './refined.ts'
import { advanceTo } from './waveform.ts'
import type { Wave } from './waveform-record.ts'
import { newRecorder } from './waveform-record.ts'

export interface SteadyWave {
  readonly wave: Wave
  readonly point: RefinedPoint
  /** Length of one period [s] */
  readonly period: number
}

/**
 * Waves of steady running over whole periods, from a mains zero where the voltage begins to rise, or from the start of
 * a chopper's period; the speed swings as it does. Null where there is no refined point.
 */
export function steadyWave(
  drive: Drive,
  input: DriveInput,
  periods: number,
  samples: number,
): SteadyWave | null {
  const point = refinedPoint(drive, input)
  if (!point) return null
  const { run } = point
  const { network } = run.parts
  const half = network.alternating ? network.length : network.circuit.chopper!.period
  const period = network.turnsOver ? 2 * half : half
  advanceTo(run, Math.ceil(run.y[TIME]! / period) * period)
  const recorder = newRecorder(run, periods * period, samples)
  run.events.witness = recorder
  advanceTo(run, run.y[TIME]! + periods * period)
  run.events.witness = null
  return { wave: recorder.wave, point, period }
}
