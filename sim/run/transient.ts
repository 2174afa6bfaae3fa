import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import type { WaveOptions, WaveRun } from './waveform.ts'
import { advanceTo, changeInput, createRun, hasWaveforms } from './waveform.ts'
import type { Wave } from './waveform-record.ts'
import { newRecorder } from './waveform-record.ts'

/** What is changed while the drive runs, at a time since the start of the record [s]. */
export interface TransientChange {
  readonly time: number
  readonly change: Partial<DriveInput>
}

export interface TransientOptions extends WaveOptions {
  /** [s] */
  readonly duration: number
  readonly samples: number
  readonly changes?: readonly TransientChange[]
}

export interface Transient {
  readonly wave: Wave
  /** As it stands at the end */
  readonly run: WaveRun
}

/**
 * The waves of a start, a jam, a change of load or setting, or of pulling the plug: from rest at a mains zero, or from
 * the state in the options. Null for a drive without waveforms.
 */
export function transient(drive: Drive, input: DriveInput, options: TransientOptions): Transient | null {
  if (!hasWaveforms(drive)) return null
  const run = createRun(drive, input, options)
  return { wave: record(run, options), run }
}

/** The same from a run as it stands. */
export function record(run: WaveRun, { duration, samples, changes = [] }: TransientOptions): Wave {
  const recorder = newRecorder(run, duration, samples)
  run.events.witness = recorder
  const start = run.y[0]!
  for (const { time, change } of [...changes].sort((a, b) => a.time - b.time)) {
    if (time > duration) break
    advanceTo(run, start + time)
    changeInput(run, change)
    run.events.witness = recorder
  }
  advanceTo(run, start + duration)
  run.events.witness = null
  return recorder.wave
}
