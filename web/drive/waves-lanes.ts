/** What the scope shows: lanes under one time axis, each a quantity with its curves. */
import type { Circuit } from '../../sim/electric/circuit.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import type { Wave } from '../../sim/run/waveform-record.ts'
import { roundSpan, spanOf } from '../chart/scale.ts'
import type { Column } from '../chart/table.ts'
import type { Unit } from '../instrument/reading-text.ts'

export type LaneId =
  | 'supply-voltage'
  | 'supply-current'
  | 'secondary-voltage'
  | 'secondary-current'
  | 'capacitor-voltage'
  | 'motor-voltage'
  | 'motor-current'
  | 'torque'
  | 'speed'

export interface Trace {
  /** Written at its end; the first one of a lane has the lane's name */
  readonly name: string
  readonly values: Float64Array
}

export interface Lane {
  readonly id: LaneId
  readonly name: string
  readonly unit: Unit
  readonly traces: readonly [Trace, ...Trace[]]
  /** What an instrument there would show; speed and torque are not read by electrical meters */
  readonly meters: 'electrical' | 'mean'
}

/** What a wave was worked out for. */
export interface WaveSource {
  readonly circuit: Circuit
  /** 1 without a transformer */
  readonly turnsRatio: number
  readonly battery: boolean
  /** Of the supply: 1, or -1 with its poles swapped */
  readonly sense: 1 | -1
}

/** The motor's own voltage at each sample [V]: E = k(i) w. */
export function ownVoltage({ circuit, sense }: WaveSource, { motorCurrent, speed }: Wave): Float64Array {
  const { winding } = circuit
  const saturation = winding.kind === 'universal' ? winding.saturationCurrent : Infinity
  return motorCurrent.map((i, n) => {
    const k = winding.emfConstant / (1 + Math.abs(i) / saturation)
    return (winding.kind === 'universal' ? k * i : k) * sense * speed[n]!
  })
}

/** All lanes that this chain has, in the order of the power's way. */
export function lanesOf(wave: Wave, source: WaveSource): readonly Lane[] {
  return [...supplyLanes(wave, source), ...motorLanes(wave, source)]
}

const electrical = (
  id: LaneId,
  name: string,
  unit: Unit,
  values: Float64Array,
  more: Trace[] = [],
): Lane => ({
  id,
  name,
  unit,
  traces: [{ name, values }, ...more],
  meters: 'electrical',
})

function supplyLanes(wave: Wave, { circuit, turnsRatio, battery }: WaveSource): Lane[] {
  const place = battery ? 'Battery' : 'Socket'
  const voltage = wave.sourceVoltage.map((emf) => emf * turnsRatio)
  const lanes = [electrical('supply-voltage', `${place} voltage`, 'V', voltage)]
  if (turnsRatio !== 1)
    return [
      ...lanes,
      electrical('supply-current', 'Socket current', 'A', wave.lineCurrent),
      electrical('secondary-voltage', 'Behind the transformer', 'V', wave.sourceVoltage),
      electrical('secondary-current', 'Transformer current', 'A', wave.sourceCurrent),
    ]
  if (!inSeries(circuit)) lanes.push(electrical('supply-current', `${place} current`, 'A', wave.lineCurrent))
  return lanes
}

/** Whether one current runs through source and motor at all times. */
const inSeries = ({ rectifier, capacitance, chopper }: Circuit): boolean =>
  rectifier === 'none' && capacitance === 0 && chopper === null

function motorLanes(wave: Wave, source: WaveSource): Lane[] {
  const { circuit } = source
  const emf = { name: 'emf', values: ownVoltage(source, wave) }
  const current = inSeries(circuit) ? 'Motor and socket current' : 'Motor current'
  const smoothed =
    circuit.capacitance > 0
      ? [electrical('capacitor-voltage', 'Capacitor voltage', 'V', wave.busVoltage, [emf])]
      : []
  return [
    ...smoothed,
    electrical('motor-voltage', 'Motor voltage', 'V', wave.motorVoltage, [emf]),
    electrical('motor-current', current, 'A', wave.motorCurrent),
    { ...electrical('torque', 'Motor torque', 'N m', wave.torque), meters: 'mean' },
    { ...electrical('speed', 'Motor speed', 'r/min', wave.speed.map(rpm)), meters: 'mean' },
  ]
}

const FIRST: readonly LaneId[] = ['supply-voltage', 'supply-current', 'motor-voltage', 'motor-current']

/** Lanes that are on until somebody chooses: four, with the torque where one current is that of socket and motor. */
export const firstLanes = (lanes: readonly Lane[]): readonly LaneId[] => {
  const smoothed = lanes.some(({ id }) => id === 'capacitor-voltage')
  const wanted = FIRST.map((id) => (id === 'motor-voltage' && smoothed ? 'capacitor-voltage' : id))
  const first = wanted.filter((wanting) => lanes.some(({ id }) => id === wanting))
  return first.length < FIRST.length ? [...first, 'torque'] : first
}

/** From the least to the most of a lane, in round numbers; all but a speed are seen from 0. */
export function laneSpan({ traces, unit }: Lane): readonly [number, number] {
  const [least, most] = spanOf(traces.map(({ values }) => values))
  if (unit === 'r/min') return roundSpan(least, most)
  return least === 0 && most === 0 ? [0, 1] : roundSpan(Math.min(0, least), Math.max(0, most))
}

/** The wave as it was worked out, in SI, for whoever takes the numbers away. */
export const waveColumns = (wave: Wave): readonly Column[] => [
  { heading: 'time [s]', values: wave.time },
  { heading: 'source emf [V]', values: wave.sourceVoltage },
  { heading: 'source current [A]', values: wave.sourceCurrent },
  { heading: 'line current [A]', values: wave.lineCurrent },
  { heading: 'voltage behind the rectifier [V]', values: wave.busVoltage },
  { heading: 'motor voltage [V]', values: wave.motorVoltage },
  { heading: 'motor current [A]', values: wave.motorCurrent },
  { heading: 'motor torque [N m]', values: wave.torque },
  { heading: 'motor speed [rad/s]', values: wave.speed },
  { heading: 'motor angle [rad]', values: wave.turned },
  { heading: 'warmth of the fuse [1]', values: wave.fuse },
]
