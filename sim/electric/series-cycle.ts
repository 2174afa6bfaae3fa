import type { Circuit } from './circuit.ts'
import type { CurrentCycle } from './cycle.ts'
import { clearCycle } from './cycle.ts'
import { followPulse } from './follow-pulse.ts'
import type { SeriesPulse } from './series-pulse.ts'
import {
  newSeriesPulse,
  OF_COSINE,
  OF_CURRENT,
  OF_SINE,
  OF_SQUARE,
  OF_TORQUE,
  OF_VOLTAGE,
  OF_VOLTAGE_SQUARE,
} from './series-pulse.ts'

/** A series motor on the mains, behind a triac, a diode or nothing: one pulse of current at a time. */
export interface SeriesCircuit {
  readonly pulse: SeriesPulse
  /** From which angle of a half wave the current may start [rad] */
  readonly firing: number
  /** Whether only one half wave of each period is used */
  readonly isHalfWave: boolean
  readonly hasTriac: boolean
}

/** The circuit as one of these; null where it is another. */
export function seriesOf(circuit: Circuit): SeriesCircuit | null {
  const { source, winding, rectifier, triac } = circuit
  if (winding.kind !== 'universal' || source.angularFrequency === 0 || source.inductance > 0) return null
  if (rectifier !== 'none' && rectifier !== 'half-wave') return null
  const pulse = newSeriesPulse(circuit, winding)
  const opposed = pulse.drops < pulse.emf ? Math.asin(pulse.drops / pulse.emf) : Math.PI
  return {
    pulse,
    firing: Math.max(triac?.firingAngle ?? 0, opposed),
    isHalfWave: rectifier === 'half-wave',
    hasTriac: triac !== null,
  }
}

const MOST_ROUNDS = 30
/** How nearly a pulse ends where the next one starts [rad] */
const NEAR = 1e-13

/**
 * Means of the period that repeats itself at pulse.speed; false where pulses do not end. Where a pulse has ended when
 * the next one fires, one pulse is the answer. Otherwise the next begins where it ends, since the gate of the triac
 * is held; the start is sought from which it ends half a period later (secant).
 */
export function solveSeries(cycle: CurrentCycle, circuit: SeriesCircuit): boolean {
  const { pulse, firing, isHalfWave, hasTriac } = circuit
  clearCycle(cycle)
  pulse.from = firing
  if (pulse.emf * Math.sin(firing) < pulse.drops * (1 - Number.EPSILON)) return true
  if (!followPulse(pulse)) {
    if (!excite(cycle, pulse)) return false
  } else if (!isHalfWave && pulse.to > firing + Math.PI && !repeat(pulse)) return false
  else fill(cycle, circuit)
  if (isHalfWave) cycle.rectifiedMean = cycle.mean
  if (hasTriac) cycle.switchMean = cycle.mean
  return true
}

/**
 * A series motor that is turned the wrong way so fast that its pulses do not end excites itself: a direct current with
 * R i + V0 = k0 |w| i/(1 + i/is), on which the mains only puts a ripple, which is left out. False where it does not.
 */
function excite(cycle: CurrentCycle, { winding, resistance, drops, speed }: SeriesPulse): boolean {
  const { emfConstant, saturationCurrent: is } = winding
  const surplus = -emfConstant * speed - resistance - drops / is
  const root = surplus * surplus - (4 * drops * resistance) / is
  if (!(surplus > 0 && root >= 0)) return false
  const i = ((surplus + Math.sqrt(root)) * is) / (2 * resistance)
  if (!Number.isFinite(i)) return false
  cycle.mean = i
  cycle.square = i * i
  cycle.peak = i
  cycle.conducting = 1
  cycle.torque = (emfConstant * i * i) / (1 + i / is)
  cycle.motorVoltage = (resistance - winding.resistance) * i + drops - winding.brushDrop
  cycle.sourceSquare = i * i
  return true
}

function repeat(pulse: SeriesPulse): boolean {
  let last = pulse.from
  let lastMiss = pulse.to - Math.PI - last
  pulse.from = last + lastMiss
  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (!followPulse(pulse)) return false
    const miss = pulse.to - Math.PI - pulse.from
    if (Math.abs(miss) <= NEAR) return true
    const slope = (miss - lastMiss) / (pulse.from - last)
    last = pulse.from
    lastMiss = miss
    pulse.from += slope < 0 ? -miss / slope : miss
  }
  return false
}

function fill(cycle: CurrentCycle, { pulse, isHalfWave }: SeriesCircuit): void {
  const { sums, winding } = pulse
  const angle = isHalfWave ? 2 * Math.PI : Math.PI
  cycle.mean = sums[OF_CURRENT]! / angle
  cycle.square = sums[OF_SQUARE]! / angle
  cycle.peak = pulse.peak
  cycle.conducting = (pulse.to - pulse.from) / angle
  cycle.torque = (winding.emfConstant * sums[OF_TORQUE]!) / angle
  cycle.motorVoltage = isHalfWave ? sums[OF_VOLTAGE]! / angle : Math.sqrt(sums[OF_VOLTAGE_SQUARE]! / angle)
  cycle.sourceSquare = cycle.square
  cycle.sourcePower = (pulse.emf * sums[OF_SINE]!) / angle
  cycle.sourceQuadrature = (pulse.emf * sums[OF_COSINE]!) / angle
}
