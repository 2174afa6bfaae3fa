import type { CurrentCycle } from './cycle.ts'
import { circulate, clearCycle } from './cycle.ts'
import { averageDecay } from './decay.ts'

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
 * Period means of a chopper feeding R, L and an opposing voltage, exact in both regimes: the current rises
 * towards I1 with the switch closed and falls towards I2 through the diode, both exponentially; where it
 * would pass zero it stays there until the switch closes again. Derived here; for continuous current it
 * agrees with P. S. Bimbhra, Power Electronics, chapter 7.
 */
export function solveChopper(cycle: CurrentCycle, circuit: ChopperCircuit): void {
  const { voltage, sourceResistance, motorResistance, motorInductance, period, duty } = circuit
  clearCycle(cycle)
  if (duty >= 1) {
    conductAlways(cycle, circuit)
    return
  }
  const i1 = (voltage - circuit.switchDrop - cycle.opposing) / (sourceResistance + motorResistance)
  const i2 = -(circuit.freewheelDrop + cycle.opposing) / motorResistance
  const tau1 = motorInductance / (sourceResistance + motorResistance)
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
  let off = period - on
  // Where nothing opposes the current its fall has no end of its own, and a low of 0 is one below rounding.
  if (!continuous && i2 < 0) off = Math.min(off, tau2 * Math.log1p(-high / i2))
  const { decay } = cycle
  decay.start = low
  decay.aim = i1
  decay.x = on / tau1
  averageDecay(decay)
  const onPart = on / period
  cycle.sourceMean = onPart * decay.mean
  cycle.switchMean = cycle.sourceMean
  cycle.peak = high
  cycle.sourceSquare = onPart * decay.square
  cycle.sourcePower = voltage * cycle.sourceMean
  decay.start = high
  decay.aim = i2
  decay.x = off / tau2
  averageDecay(decay)
  cycle.freewheelMean = (off / period) * decay.mean
  cycle.mean = cycle.sourceMean + cycle.freewheelMean
  cycle.square = cycle.sourceSquare + (off / period) * decay.square
  cycle.conducting = (on + off) / period
}

/** A relay past the switch: direct current, which it lets flow out of the battery only. */
function conductAlways(cycle: CurrentCycle, circuit: ChopperCircuit): void {
  const { voltage, sourceResistance, motorResistance } = circuit
  const current = (voltage - cycle.opposing) / (sourceResistance + motorResistance)
  if (current <= 0) return
  cycle.mean = current
  cycle.square = current * current
  cycle.peak = current
  cycle.conducting = 1
  cycle.sourceMean = current
  cycle.sourceSquare = current * current
  cycle.sourcePower = voltage * current
}

/**
 * With the battery off, the freewheel diode still lets a motor that is turned the wrong way drive a current.
 */
export function solveIdleChopper(cycle: CurrentCycle, circuit: ChopperCircuit): void {
  clearCycle(cycle)
  const current = -(cycle.opposing + circuit.freewheelDrop) / circuit.motorResistance
  if (current <= 0) return
  circulate(cycle, current)
  cycle.freewheelMean = current
}
