import type { CurrentCycle } from '../electric/cycle.ts'
import type { Machine } from '../machine/machine.ts'

/** A fuse or an overload switch: dQ/dt = ((I/Imf)^2 - Q)/tau, open at Q = 1. */
export interface Melting {
  /** Whether it stands on the mains side of a transformer */
  readonly isPrimary: boolean
  /** Imf^2, the square of the least current that ever opens it [A2] */
  readonly square: number
  /** tau [s] */
  readonly time: number
}

export function compileMelting({ protection, transformer }: Machine): Melting | null {
  if (protection.kind !== 'fuse' && protection.kind !== 'overload') return null
  return {
    isPrimary: protection.side === 'primary' && transformer !== null,
    square: protection.current ** 2,
    time: protection.timeConstant,
  }
}

/** Mean square of the current through it [A2]; needs the primary current where it stands there. */
export const meltingSquare = (melting: Melting, cycle: CurrentCycle): number =>
  melting.isPrimary ? cycle.primary * cycle.primary : cycle.sourceSquare
