/** A wave with all that the panel tells about it. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import type { Circuit } from '../../sim/electric/circuit.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Wave } from '../../sim/run/waveform-record.ts'
import { TURN } from '../../sim/quantity/constants.ts'
import { type Flow, flowOf } from './waves-flow.ts'
import { type Lane, type WaveSource, lanesOf, ownVoltage } from './waves-lanes.ts'
import { type Meters, readMeters } from './waves-meters.ts'
import { waveAt } from './waves-work.ts'
import type { Moment } from './waves-moment.ts'

/** What is looked at: periods of the mains, or of the chopper. */
export interface Look {
  readonly periods: 1 | 2
  readonly of: 'mains' | 'switching'
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
  /** The motor's own voltage, mean over the wave [V] */
  readonly emf: number
}

/** What can be looked at: a direct supply has no period of its own. */
export const looksOf = ({ source, chopper }: Circuit): readonly Look['of'][] => [
  ...(source.angularFrequency > 0 ? (['mains'] as const) : []),
  ...(chopper ? (['switching'] as const) : []),
]

export const sourceOf = (machine: Machine, drive: Drive, { setting, sense }: DriveInput): WaveSource => ({
  circuit: drive.circuits[setting]!,
  turnsRatio: drive.primaries[setting]?.turnsRatio ?? 1,
  battery: machine.supply.kind === 'battery',
  sense,
})

export function seenAt(machine: Machine, { drive, input, speed }: Moment, look: Look): Seen {
  const circuit = drive.circuits[input.setting]!
  const of = looksOf(circuit).includes(look.of) ? look.of : looksOf(circuit)[0]!
  const period = of === 'mains' ? TURN / circuit.source.angularFrequency : circuit.chopper!.period
  const span = look.periods * period
  const { wave, ripple } = waveAt(drive, input, speed, { of, periods: look.periods, period })
  const source = sourceOf(machine, drive, input)
  const lanes = lanesOf(wave, source)
  const read = new Map<Lane, Meters>()
  const small = span < 2e-3
  const perSecond = small ? 1e6 : 1e3
  return {
    circuit,
    wave,
    ripple,
    lanes,
    flow: flowOf(wave.time, wave.motorCurrent, wave.sourceCurrent),
    span,
    speed,
    shown: { time: wave.time.map((t) => t * perSecond), unit: small ? 'µs' : 'ms', perSecond },
    meters(lane) {
      const known = read.get(lane) ?? readMeters(wave.time, lane.traces[0].values)
      read.set(lane, known)
      return known
    },
    emf: readMeters(wave.time, ownVoltage(source, wave)).mean,
  }
}
