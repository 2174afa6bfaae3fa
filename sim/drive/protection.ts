import type { CurrentCycle } from '../electric/cycle.ts'
import type { Machine } from '../machine/machine.ts'
import type { Drive } from './drive.ts'
import type { DriveState } from './state.ts'

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

/** Warms fuse or overload switch over the step just taken, at the current of its end; opens it at Q = 1. */
export function warmProtection(state: DriveState, drive: Drive): void {
  const { melting, work } = drive
  if (!melting) return
  const excess = work.live ? meltingSquare(melting, work.cycle) / melting.square : 0
  state.fuse = excess + (state.fuse - excess) * Math.exp(-state.stepLength / melting.time)
  if (state.fuse >= 1) state.isOpen = true
}

/** A new fuse in its place, or the overload switch closed again, cold. */
export function resetProtection(state: DriveState): void {
  state.fuse = 0
  state.isOpen = false
}
