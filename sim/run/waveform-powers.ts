import type { WaveNetwork } from '../electric/wave-network.ts'
import { CAPACITOR, MOTOR, SPEED } from '../electric/wave-network.ts'
import type { Look } from '../electric/wave-rates.ts'
import type { Shaft } from './waveform-shaft.ts'
import * as at from './waveform-state.ts'

/**
 * Writes the power of every entry of the ledger. Each is a product of what the equations hold, signed as they are, so
 * that the entries add up to the input at every moment but for rounding, whatever the mode.
 */
export function writeElectricPowers(
  out: Float64Array,
  network: WaveNetwork,
  look: Look,
  y: Float64Array,
): void {
  const { loops, turn, circuit } = network
  const i = y[MOTOR]!
  const v = y[CAPACITOR]!
  const own = turn * look.source
  out[at.INPUT] = look.emf * look.source
  out[at.SOURCE_RESISTANCE] = network.sourceResistance * look.source * look.source
  // Legs that hold an empty capacitor carry what its bleed resistor would have it lose.
  const held = ((1 - loops.charged) * circuit.diodeDrops * v) / circuit.bleedResistance
  out[at.DIODES] = loops.diode * i + loops.ownDiode * own + held
  out[at.SWITCH] = (loops.triac + loops.switched) * i + loops.ownTriac * own
  out[at.FREEWHEEL] = loops.freewheel * i
  out[at.BLEED] = (v * v) / circuit.bleedResistance
  out[at.COPPER] = network.motor.resistance * i * i
  out[at.BRUSH] = loops.brush * i
  out[at.ARC] = 0
  out[at.STORED] =
    look.inductance * i * look.motorRate +
    network.sourceInductance * look.source * look.sourceRate +
    circuit.capacitance * v * look.capacitorRate
  out[at.CURRENT_INTEGRAL] = circuit.rectifier === 'none' && network.alternating ? network.sense * i : i
  out[at.CURRENT_SQUARE] = i * i
  out[at.SOURCE_SQUARE] = look.source * look.source
  out[at.TORQUE_INTEGRAL] = look.torque
}

export function writeShaftPowers(out: Float64Array, shaft: Shaft, y: Float64Array): void {
  const { motion, left, right, ratio } = shaft
  const w = y[SPEED]!
  const wk = w / ratio
  out[at.FRICTION] = (motion * shaft.frictionTorque + shaft.viscousTorque * w) * w
  out[at.FAN] = shaft.fanTorque * motion * w * w * w
  out[at.BEARINGS] = 2 * motion * shaft.bearingTorque * wk
  out[at.LEFT_MESH] = (left.share - 1) * left.mesh * wk
  out[at.RIGHT_MESH] = (right.share - 1) * right.mesh * wk
  out[at.LEFT_OUTPUT] = left.load * wk
  out[at.RIGHT_OUTPUT] = right.load * wk
  const inertia = shaft.rotorInertia + (2 * shaft.wheelInertia) / (ratio * ratio)
  out[at.STORED]! += inertia * w * shaft.acceleration
}

/**
 * Energy in the field of the motor [J]: the integral of i L(i) di, with L(i) = Lc + Lf/(1 + |i|/is)^2 in a series
 * motor, which is Lc i^2/2 + Lf is^2 (ln(1 + x) - x/(1 + x)), x = |i|/is (derived here).
 */
export function fieldEnergy(network: WaveNetwork, i: number): number {
  const { inductance, saturationCurrent: is, fieldInductance } = network.motor
  const constant = (inductance * i * i) / 2
  if (is === Infinity) return constant + (fieldInductance * i * i) / 2
  const x = Math.abs(i) / is
  return constant + fieldInductance * is * is * (Math.log1p(x) - x / (1 + x))
}
