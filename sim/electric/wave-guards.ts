import type { WaveNetwork } from './wave-network.ts'
import {
  CAPACITOR,
  canFeed,
  hasImpedance,
  MOTOR,
  smoothed,
  SOURCE,
  SPEED,
  switchDrop,
} from './wave-network.ts'
import type { Look } from './wave-rates.ts'
import { lookAt, lookAtEmf } from './wave-rates.ts'

/** The motor's current starts in the sense of the supply, or ends */
export const CURRENT = 0
/** It starts around the source, driven by a motor that is turned the wrong way */
export const AROUND = 1
/** It starts back into the capacitor, or meets the limit */
export const BACK = 2
/** The source starts, ends, or hands the motor's current over */
export const HANDOVER = 3
/** The current of a shorted source passes zero */
export const REVERSAL = 4
/** The capacitor is empty and the legs hold it there */
export const EMPTY = 5
export const NETWORK_GUARDS = 6

/** A guard that has nothing to watch */
const AT_EASE = 1

export function writeNetworkGuards(
  out: Float64Array,
  network: WaveNetwork,
  look: Look,
  y: Float64Array,
): void {
  for (let n = 0; n < NETWORK_GUARDS; n++) out[n] = AT_EASE
  lookAtEmf(look, network, y)
  if (network.path === 'still') guardStart(out, network, look, y)
  else guardCurrent(out, network, y)
  if (network.feed === 'series') guardSeries(out, network, look, y)
  else if (network.feed === 'shorted') guardShorted(out, network, look, y)
  else if (network.feed === 'charging') guardCharging(out, network, look, y)
  else guardOpen(out, network, look, y)
}

/** With no current a series motor has no emf. */
const emfAtRest = (network: WaveNetwork, y: Float64Array): number => {
  const { motor } = network
  return motor.isSeries ? 0 : motor.emfConstant * y[SPEED]!
}

function guardStart(out: Float64Array, network: WaveNetwork, look: Look, y: Float64Array): void {
  const { circuit, voltageSize } = network
  const opposing = emfAtRest(network, y)
  const { brushDrop } = network.motor
  if (smoothed(network)) {
    const duty = network.averaged ? network.duty : 1
    const v = duty * (y[CAPACITOR]! - switchDrop(network))
    const given = v - (1 - duty) * (circuit.chopper?.freewheelDrop ?? 0)
    if (network.closed) out[CURRENT] = (opposing + brushDrop - given) / voltageSize
    if (!circuit.chopper) out[BACK] = (y[CAPACITOR]! + brushDrop - opposing) / voltageSize
  } else if (canFeed(network)) {
    const drops = circuit.diodeDrops + (circuit.triac?.drop ?? 0) + switchDrop(network)
    out[CURRENT] = (opposing + brushDrop + drops - look.emf) / voltageSize
  }
  if (circuit.chopper) out[AROUND] = (opposing + brushDrop + circuit.chopper.freewheelDrop) / voltageSize
  else if (network.hasLegs && !smoothed(network))
    out[AROUND] = (opposing + brushDrop + circuit.diodeDrops) / voltageSize
}

function guardCurrent(out: Float64Array, network: WaveNetwork, y: Float64Array): void {
  const { circuit, currentSize, path, sense } = network
  out[CURRENT] = (sense * y[MOTOR]!) / currentSize
  if (network.currentLimit < Infinity && sense > 0 && path !== 'freewheel' && path !== 'legs')
    out[BACK] = (network.currentLimit - y[MOTOR]!) / currentSize
  if (network.hasLegs && path === 'capacitor')
    out[EMPTY] = (y[CAPACITOR]! + circuit.diodeDrops) / network.voltageSize
}

/** The voltage behind source and triac: where it turns negative, all legs of the rectifier conduct. */
function guardSeries(out: Float64Array, network: WaveNetwork, look: Look, y: Float64Array): void {
  if (!network.hasLegs || !network.alternating) return
  if (!hasImpedance(network) && !network.circuit.triac && network.turnsOver) return
  lookAt(look, network, y)
  const { sourceResistance, sourceInductance, turn, loops } = network
  const drop = sourceResistance * y[MOTOR]! + sourceInductance * look.motorRate
  out[HANDOVER] = (turn * look.emf - loops.triac - drop) / network.voltageSize
}

function guardShorted(out: Float64Array, network: WaveNetwork, look: Look, y: Float64Array): void {
  const e = look.emf
  const { sourceResistance, sourceInductance, turn, circuit, voltageSize, currentSize } = network
  const triac = circuit.triac?.drop ?? 0
  const follows = sourceInductance > 0
  if (network.armed)
    out[HANDOVER] = follows
      ? (y[MOTOR]! - y[SOURCE]!) / currentSize
      : (sourceResistance * y[MOTOR]! - (e - turn * triac)) / voltageSize
  const free = network.connected && !circuit.triac && network.turnsOver
  if (!free) out[REVERSAL] = follows ? (turn * y[SOURCE]!) / currentSize : (turn * e - triac) / voltageSize
}

function guardCharging(out: Float64Array, network: WaveNetwork, look: Look, y: Float64Array): void {
  const e = look.emf
  const { turn, circuit, sourceInductance } = network
  const against = circuit.diodeDrops + (circuit.triac?.drop ?? 0) + y[CAPACITOR]!
  out[HANDOVER] =
    sourceInductance > 0
      ? (turn * y[SOURCE]!) / network.currentSize
      : (turn * e - against) / network.voltageSize
}

function guardOpen(out: Float64Array, network: WaveNetwork, look: Look, y: Float64Array): void {
  const e = look.emf
  const { circuit, path } = network
  if (!canFeed(network)) return
  const triac = circuit.triac?.drop ?? 0
  if (path === 'legs') {
    if (network.alternating) out[HANDOVER] = (triac - e) / network.voltageSize
  } else if (smoothed(network))
    out[HANDOVER] = (circuit.diodeDrops + triac + y[CAPACITOR]! - e) / network.voltageSize
}
