import type { CurrentCycle } from './cycle.ts'
import { circulate, clearCycle } from './cycle.ts'

/** A battery, one switch, a freewheel diode and a motor; all SI. */
export interface ChopperCircuit {
  /** Open-circuit voltage of the battery [V] */
  readonly voltage: number
  /** [ohm] */
  readonly sourceResistance: number
  /** [ohm] */
  readonly motorResistance: number
  /** [H], > 0 */
  readonly motorInductance: number
  /** Switching period [s], > 0 */
  readonly period: number
  /** Part of the period with the switch closed, in (0, 1]; at 1 a relay bridges the switch and its drop */
  readonly duty: number
  /** [V] */
  readonly switchDrop: number
  /** [V] */
  readonly freewheelDrop: number
}

/**
 * Period means of a chopper feeding R, L and an opposing voltage, exact in both regimes: the current rises towards I1
 * with the switch closed and falls towards I2 through the diode, both exponentially; where it would pass zero it stays
 * there until the switch closes again. Derived here; for continuous current it agrees with P. S. Bimbhra, Power
 * Electronics, chapter 7.
 */
export function solveChopper(cycle: CurrentCycle, circuit: ChopperCircuit): void {
  const { voltage, sourceResistance, motorResistance, motorInductance, period, duty } = circuit
  clearCycle(cycle)
  const whole = duty >= 1
  const drop = whole ? 0 : circuit.switchDrop
  const r1 = sourceResistance + motorResistance
  const i1 = (voltage - drop - cycle.opposing) / r1
  if (whole) {
    if (i1 <= 0) return
    cycle.mean = i1
    cycle.square = i1 * i1
    cycle.conducting = 1
    cycle.sourceMean = i1
    cycle.sourceSquare = i1 * i1
    cycle.sourcePower = voltage * i1
    return
  }
  const i2 = -(circuit.freewheelDrop + cycle.opposing) / motorResistance
  const tau1 = motorInductance / r1
  const tau2 = motorInductance / motorResistance
  const on = duty * period
  const rise = -Math.expm1(-on / tau1)
  const wholeFall = -Math.expm1((on - period) / tau2)
  // The current that repeats: i0 = i2 fall + (1 - fall)(i1 rise + i0 (1 - rise)).
  const repeating = (i2 * wholeFall + (1 - wholeFall) * i1 * rise) / (rise + wholeFall - rise * wholeFall)
  const continuous = repeating > 0
  if (!continuous && i1 <= 0) return
  const low = continuous ? repeating : 0
  const high = low + (i1 - low) * rise
  const off = continuous ? period - on : tau2 * Math.log1p(-high / i2)
  const fall = continuous ? wholeFall : high / (high - i2)

  const onMean = i1 * on + (low - i1) * tau1 * rise
  const onSquare =
    i1 * i1 * on +
    2 * i1 * (low - i1) * tau1 * rise +
    (low - i1) * (low - i1) * (tau1 / 2) * rise * (2 - rise)
  const offMean = i2 * off + (high - i2) * tau2 * fall
  const offSquare =
    i2 * i2 * off +
    2 * i2 * (high - i2) * tau2 * fall +
    (high - i2) * (high - i2) * (tau2 / 2) * fall * (2 - fall)
  cycle.mean = (onMean + offMean) / period
  cycle.square = (onSquare + offSquare) / period
  cycle.conducting = (on + off) / period
  cycle.sourceMean = onMean / period
  cycle.sourceSquare = onSquare / period
  cycle.sourcePower = (voltage * onMean) / period
  cycle.freewheelMean = offMean / period
}

/** With the battery off, the freewheel diode still lets a motor that is turned the wrong way drive a current. */
export function solveIdleChopper(cycle: CurrentCycle, circuit: ChopperCircuit): void {
  clearCycle(cycle)
  const current = -(cycle.opposing + circuit.freewheelDrop) / circuit.motorResistance
  if (current > 0) circulate(cycle, current)
}
