import type { Machine, Thermal } from '../../sim/machine/machine.ts'

/** A machine whose file says where its heat goes. */
export type ThermalMachine = Machine & { readonly thermal: Thermal }

export const hasHeat = (machine: Machine): machine is ThermalMachine => machine.thermal !== null
