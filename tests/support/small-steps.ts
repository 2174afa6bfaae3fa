import type { BridgeCircuit } from '../../sim/electric/bridge-circuit.ts'

/**
 * The same circuit in small time steps, written without modes: each step asks which diodes can conduct. Backward
 * Euler, so its means are right to about the step. `see` is
 * shown the source current of the last half cycle, with its mains angle [rad].
 */
export function inSmallSteps(
  given: BridgeCircuit,
  opposing: number,
  perHalfCycle: number,
  halfCycles: number,
  see: (source: number, angle: number) => void = () => {},
) {
  const { emfPeak, angularFrequency, sourceResistance, sourceInductance, motorResistance, motorInductance } =
    given
  const dt = Math.PI / angularFrequency / perHalfCycle
  const against = opposing + given.diodeDrops
  let motor = 0
  let source = 0
  let [mean, square, power] = [0, 0, 0]
  for (let n = 0; n < perHalfCycle * halfCycles; n++) {
    const angle = (angularFrequency * dt * (n + 1)) % (2 * Math.PI)
    const e = emfPeak * Math.sin(angle)
    // All diodes on: two separate loops. Otherwise the larger of the two ends decides which pair carries both.
    const apart = (motorInductance * motor - dt * against) / (motorInductance + dt * motorResistance)
    const free = (sourceInductance * source + dt * e) / (sourceInductance + dt * sourceResistance)
    if (apart >= Math.abs(free)) {
      motor = apart
      source = free
    } else {
      const sign = Math.sign(free)
      const flux = motorInductance * motor + sourceInductance * sign * source
      const total = motorInductance + sourceInductance
      motor = Math.max(
        0,
        (flux + dt * (sign * e - against)) / (total + dt * (motorResistance + sourceResistance)),
      )
      source = sign * motor
    }
    if (n < perHalfCycle * (halfCycles - 1)) continue
    see(source, angle)
    mean += motor / perHalfCycle
    square += motor ** 2 / perHalfCycle
    power += (source * e) / perHalfCycle
  }
  return { mean, square, power }
}
