/** What can be asked of the other thread, and what comes back. Each is a function of `sim` that tells how far it is. */
import type { Warmth } from '../../sim/drive/circuits.ts'
import { compileDrive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { type HeatingOptions, type HeatingRun, heatingRun } from '../../sim/run/heating.ts'
import {
  type Duty,
  type LongestDuty,
  type SettledDuty,
  longestDuty,
  settledDuty,
} from '../../sim/run/heating-duty.ts'
import { type NoSettling, type SettledHeat, settledHeat } from '../../sim/run/heating-settled.ts'
import type { TorqueSpeedCurve } from '../../sim/run/torque-speed.ts'
import type { Wave } from '../../sim/run/waveform-record.ts'
import { steadyWave } from '../../sim/run/waveform-steady.ts'
import { type Happening, happen } from '../../sim/run/happenings.ts'
import { sweepTorque } from '../../sim/run/torque-sweep.ts'

/** Hours of warming and cooling; null where a machine has no thermal description. */
export interface HeatingOrder {
  readonly kind: 'heating'
  readonly machine: Machine
  readonly input: DriveInput
  readonly options: HeatingOptions
}

/** Where warming ends up, for each of some inputs; null where a machine has no thermal description. */
export interface SettledOrder {
  readonly kind: 'settled'
  readonly machine: Machine
  readonly inputs: readonly DriveInput[]
}

/** What running on and off by turns ends in; null where a machine has no thermal description. */
export interface DutyOrder {
  readonly kind: 'duty'
  readonly machine: Machine
  readonly input: DriveInput
  readonly duty: Duty
}

/** How long it may be on at a stretch with a pause of `off` [s] between; null as above, and where nothing is computed. */
export interface LongestOrder {
  readonly kind: 'longest'
  readonly machine: Machine
  readonly input: DriveInput
  readonly off: number
}

/** A start, a jam or a pull of the plug, moment by moment; null where there are no waveforms, or no steady running. */
export interface TransientOrder {
  readonly kind: 'transient'
  readonly machine: Machine
  readonly warmth: Warmth
  readonly input: DriveInput
  readonly what: Happening
}

/** Torque over speed at every setting; none where there are no circuits. */
export interface SweepOrder {
  readonly kind: 'sweep'
  readonly machine: Machine
  readonly warmth: Warmth
  /** How many speeds, 2 or more */
  readonly points: number
}

/** With what it was asked for, so that an answer is never taken for that of another machine. */
export interface Sweep {
  readonly order: SweepOrder
  readonly curves: readonly TorqueSpeedCurve[]
}

/** Steady running as a scope sees it; null where there is none. */
export interface WaveOrder {
  readonly kind: 'wave'
  readonly machine: Machine
  readonly warmth: Warmth
  readonly input: DriveInput
  readonly periods: number
  readonly samples: number
}
export interface WaveAnswer {
  readonly wave: Wave
  /** Of the speed, from the least to the most over the mean; null where cycle means stand for it */
  readonly ripple: number | null
}

export type RunOrder =
  | HeatingOrder
  | SettledOrder
  | DutyOrder
  | LongestOrder
  | SweepOrder
  | TransientOrder
  | WaveOrder

/** Where warming ends up, or a sentence where it ends nowhere. */
export type Settled = SettledPoint | NoSettling
interface SettledPoint {
  /** [degC] */
  readonly winding: number
  readonly case: number
  /** Of the worm, in the sense in which it is driven [rad/s] */
  readonly speed: number
  /** That arises in the motor [W] */
  readonly heat: number
}

interface Answers {
  readonly sweep: Sweep
  readonly heating: HeatingRun | null
  readonly settled: readonly Settled[] | null
  readonly duty: SettledDuty | NoSettling | null
  readonly longest: LongestDuty | null
  readonly transient: Wave | null
  readonly wave: WaveAnswer | null
}
export type AnswerTo<Order extends RunOrder> = Answers[Order['kind']]

/** Yields the part that is done, 0 to 1. */
export function runOrder<Order extends RunOrder>(order: Order): Generator<number, AnswerTo<Order>>
export function runOrder(order: RunOrder): Generator<number, AnswerTo<RunOrder>> {
  switch (order.kind) {
    case 'heating':
      return heatingRun(order.machine, order.input, order.options)
    case 'settled':
      return settledRun(order)
    case 'duty':
      return dutyRun(order)
    case 'longest':
      return longestDuty(order.machine, order.input, order.off)
    case 'sweep':
      return sweepRun(order)
    case 'transient':
      return transientRun(order)
    case 'wave':
      return waveRun(order)
  }
}

function* settledRun({ machine, inputs }: SettledOrder): Generator<number, readonly Settled[] | null> {
  const found: Settled[] = []
  for (const input of inputs) {
    const settled = settledHeat(machine, input)
    if (!settled) return null
    found.push('reason' in settled ? settled : toldOf(settled))
    yield found.length / inputs.length
  }
  return found
}

const toldOf = ({ winding, case: body, point }: SettledHeat): Settled => ({
  winding,
  case: body,
  speed: point.speed,
  heat: point.windingHeat + point.caseHeat,
})

function* dutyRun({ machine, input, duty }: DutyOrder): Generator<number, SettledDuty | NoSettling | null> {
  yield 0
  return settledDuty(machine, input, duty)
}

function* transientRun({ machine, warmth, input, what }: TransientOrder): Generator<number, Wave | null> {
  yield 0
  return happen(compileDrive(machine, warmth), input, what)
}

function* sweepRun(order: SweepOrder): Generator<number, Sweep> {
  const { machine, warmth, points } = order
  return { order, curves: yield* sweepTorque(compileDrive(machine, warmth), points) }
}

function* waveRun(order: WaveOrder): Generator<number, WaveAnswer | null> {
  yield 0
  const { machine, warmth, input, periods, samples } = order
  const steady = steadyWave(compileDrive(machine, warmth), input, periods, samples)
  if (!steady) return null
  const { wave, point } = steady
  return { wave, ripple: point.isNeeded ? point.ripple : null }
}
