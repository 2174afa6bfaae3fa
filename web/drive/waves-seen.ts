/** A wave with all that the panel tells about it. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import type { Circuit } from '../../sim/electric/circuit.ts'
import { TURN } from '../../sim/quantity/constants.ts'
import type { Wave } from '../../sim/run/waveform-record.ts'
import { type Flow, flowOf } from './waves-flow.ts'
import { type Lane, type WaveSource, lanesOf, ownVoltage } from './waves-lanes.ts'
import { type Meters, readMeters } from './waves-meters.ts'
import type { Moment } from './waves-moment.ts'
import type { Stretch } from './waves-work.ts'

/** What is looked at: periods of the mains, or of the chopper. */
export interface Look {
  readonly periods: 1 | 2
  readonly of: Stretch['of']
}

export interface Seen {
  readonly circuit: Circuit
  readonly wave: Wave
  /** Of the speed, from the least to the most over the mean; null at a speed that is held still in time */
  readonly ripple: number | null
  readonly lanes: readonly Lane[]
  readonly flow: Flow
  /** Length of what is shown [s] */
  readonly span: number
  /** Times for the axis, in a unit that reads well */
  readonly shown: { readonly time: Float64Array; readonly unit: 'ms' | 'µs'; readonly perSecond: number }
  readonly meters: (lane: Lane) => Meters
  /** About +z [rad/s] */
  readonly speed: number
  /** The motor's own voltage, mean of its size over the wave [V] */
  readonly emf: number
}

/** What can be looked at: a direct supply has no period of its own. */
export const looksOf = ({ source, chopper }: Circuit): readonly Look['of'][] => [
  ...(source.angularFrequency > 0 ? (['mains'] as const) : []),
  ...(chopper ? (['switching'] as const) : []),
]

/** What is asked for, or the one thing that there is. */
export function stretchOf(circuit: Circuit, { periods, of }: Look): Stretch {
  const looks = looksOf(circuit)
  const kind = looks.includes(of) ? of : looks[0]!
  const period = kind === 'mains' ? TURN / circuit.source.angularFrequency : circuit.chopper!.period
  return { of: kind, periods, period }
}

/** Whether everything repeats within such a stretch, so that there is a steady wave of it. */
export const isWhole = ({ source }: Circuit, { of }: Stretch): boolean =>
  (of === 'mains') === source.angularFrequency > 0

export const sourceOf = (machine: Moment['machine'], drive: Drive, input: DriveInput): WaveSource => ({
  circuit: drive.circuits[input.setting]!,
  turnsRatio: drive.primaries[input.setting]?.turnsRatio ?? 1,
  battery: machine.supply.kind === 'battery',
  sense: input.sense,
})

/** Below this a stretch is told in microseconds [s]. */
const SMALL = 2e-3

export function seenOf({ machine, drive, input, speed }: Moment, wave: Wave, ripple: number | null): Seen {
  const source = sourceOf(machine, drive, input)
  const span = wave.time.at(-1)!
  const perSecond = span < SMALL ? 1e6 : 1e3
  const read = new Map<Lane, Meters>()
  return {
    circuit: source.circuit,
    wave,
    ripple,
    lanes: lanesOf(wave, source),
    flow: flowOf(wave.time, wave.motorCurrent, wave.sourceCurrent),
    span,
    shown: { time: wave.time.map((t) => t * perSecond), unit: span < SMALL ? 'µs' : 'ms', perSecond },
    meters(lane) {
      const known = read.get(lane) ?? readMeters(wave.time, lane.traces[0].values)
      read.set(lane, known)
      return known
    },
    speed,
    emf: readMeters(wave.time, ownVoltage(source, wave)).rectified,
  }
}
