import type { Drive } from './drive.ts'
import { meltingSquare } from './melting.ts'
import type { DriveState } from './state.ts'

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
