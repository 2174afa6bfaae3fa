/** The motor as it stands: as warm as the bench says, and on the kind of current that its chain gives it. */
import { magnetFactor, resistanceFactor } from '../../sim/heat/resistance.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Situation } from './situation.ts'
import { PER_CENT } from '../../sim/quantity/constants.ts'

/** Resistance of the winding at its temperature [ohm] */
export const warmResistance = ({ machine: { motor }, winding }: Situation): number =>
  (motor?.resistance ?? 0) * resistanceFactor(winding)

/** Constant of a motor with magnets at their temperature [V s/rad]; 0 for any other. */
function warmConstant({ machine: { motor, thermal }, magnet }: Situation): number {
  if (motor?.kind !== 'permanent-magnet') return 0
  return motor.emfConstant * magnetFactor(PER_CENT * (thermal?.magnetCoefficient ?? 0), magnet)
}

/**
 * Emf in the driven sense [V]. That of a series motor follows its current over the wave; this is its mean weighted
 * by the current, which times the mean current is the power that becomes motion.
 */
export function motorEmf(situation: Situation): number {
  const { machine, reading, sense } = situation
  const speed = reading.wormSpeed * sense
  if (machine.motor?.kind !== 'universal') return warmConstant(situation) * speed
  return reading.currentMean === 0 ? 0 : (reading.motorTorque * speed) / reading.currentMean
}

/** Whether both half waves reach the motor with their own signs. */
export const isAlternating = ({ supply, rectifier, control }: Machine, setting: number): boolean =>
  supply.kind === 'mains' &&
  rectifier === null &&
  (control.kind === 'phase' || (control.kind === 'half-wave' && control.steps[setting]?.waves === 2))

export const isSmoothed = ({ rectifier }: Machine): boolean => rectifier !== null && rectifier.capacitance > 0
