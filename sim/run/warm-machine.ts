import { magnetFactor, resistanceFactor } from '../heat/resistance.ts'
import type { Machine } from '../machine/machine.ts'

const PER_CENT = 1e-2

/** The machine with a winding and magnets as warm as this [degC]. */
export function warmed(machine: Machine, winding: number, magnet: number): Machine {
  const { motor, thermal } = machine
  if (!motor || !thermal) return machine
  const resistance = motor.resistance * resistanceFactor(winding)
  const flux = magnetFactor(thermal.magnetCoefficient * PER_CENT, magnet)
  if (motor.kind === 'universal') return { ...machine, motor: { ...motor, resistance } }
  return { ...machine, motor: { ...motor, resistance, emfConstant: motor.emfConstant * flux } }
}
