import type { CurrentCycle } from './cycle.ts'
import { clearCycle } from './cycle.ts'
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
  /** Motor current at which the switch opens for the rest of the period [A]; Infinity is none */
  readonly currentLimit: number
}

/** Halvings of the duty until rounding */
const MOST_HALVINGS = 60

/**
 * Period means of a chopper feeding R, L and an opposing voltage, exact in both regimes: the current rises
 * towards I1 with the switch closed and falls towards I2 through the diode, both exponentially; where it
 * would pass zero it stays there until the switch closes again. Derived here; for continuous current it
 * agrees with P. S. Bimbhra, Power Electronics, chapter 7. Where the crest would pass the limit, the duty is
 * taken at which it just reaches it.
 */
export function solveChopper(cycle: CurrentCycle, circuit: ChopperCircuit): void {
  clearCycle(cycle)
  cycle.duty = circuit.duty
  if (circuit.duty >= 1) {
    cycle.peak = (circuit.voltage - cycle.opposing) / (circuit.sourceResistance + circuit.motorResistance)
    if (!(cycle.peak > circuit.currentLimit)) {
      conductAlways(cycle, circuit)
      return
    }
  }
  findPeak(cycle, circuit)
  if (cycle.peak > circuit.currentLimit) limit(cycle, circuit)
  average(cycle, circuit)
}

/** Largest duty at which the crest stays within the limit: the crest grows with the duty. */
function limit(cycle: CurrentCycle, circuit: ChopperCircuit): void {
  let low = 0
  let high = cycle.duty
  for (let n = 0; n < MOST_HALVINGS; n++) {
    cycle.duty = (low + high) / 2
    if (cycle.duty <= low || cycle.duty >= high) break
    findPeak(cycle, circuit)
    if (cycle.peak > circuit.currentLimit) high = cycle.duty
    else low = cycle.duty
  }
  cycle.duty = low
  findPeak(cycle, circuit)
}

/** Sets cycle.decay.start to the least current of a period and cycle.peak to the largest. */
function findPeak(cycle: CurrentCycle, circuit: ChopperCircuit): void {
  const { voltage, sourceResistance, motorResistance, motorInductance, period } = circuit
  const i1 = (voltage - circuit.switchDrop - cycle.opposing) / (sourceResistance + motorResistance)
  const i2 = -(circuit.freewheelDrop + cycle.opposing) / motorResistance
  const on = cycle.duty * period
  const rise = -Math.expm1((-on * (sourceResistance + motorResistance)) / motorInductance)
  const wholeFall = -Math.expm1(((on - period) * motorResistance) / motorInductance)
  // The current that repeats: i0 = i2 fall + (1 - fall)(i1 rise + i0 (1 - rise)).
  const repeating = (i2 * wholeFall + (1 - wholeFall) * i1 * rise) / (rise + wholeFall - rise * wholeFall)
  const low = repeating > 0 ? repeating : 0
  cycle.decay.start = low
  cycle.decay.aim = i1
  cycle.peak = low + (i1 - low) * rise
}

/** Fills the means from what `findPeak` has found. */
function average(cycle: CurrentCycle, circuit: ChopperCircuit): void {
  const { voltage, sourceResistance, motorResistance, motorInductance, period } = circuit
  const { decay } = cycle
  const low = decay.start
  const high = cycle.peak
  const continuous = low > 0
  if (!continuous && decay.aim <= 0) {
    cycle.peak = 0
    return
  }
  const on = cycle.duty * period
  const i2 = -(circuit.freewheelDrop + cycle.opposing) / motorResistance
  const tau2 = motorInductance / motorResistance
  let off = period - on
  // Where nothing opposes the current its fall has no end of its own, and a low of 0 is one below rounding.
  if (!continuous && i2 < 0) off = Math.min(off, tau2 * Math.log1p(-high / i2))
  decay.x = (on * (sourceResistance + motorResistance)) / motorInductance
  averageDecay(decay)
  const onPart = on / period
  cycle.sourceMean = onPart * decay.mean
  cycle.switchMean = cycle.sourceMean
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
  // Turned the wrong way, a motor drives more current through the diode alone than through the battery.
  if (low > high) cycle.peak = low
}

/** A relay past the switch: direct current, which it lets flow out of the battery only. */
function conductAlways(cycle: CurrentCycle, circuit: ChopperCircuit): void {
  const current = cycle.peak
  if (current <= 0) {
    cycle.peak = 0
    return
  }
  cycle.mean = current
  cycle.square = current * current
  cycle.conducting = 1
  cycle.sourceMean = current
  cycle.sourceSquare = current * current
  cycle.sourcePower = circuit.voltage * current
}
