import { copyTurns, noTurns } from './turns.ts'
import type { WormTurns } from './turns.ts'

/** The least that must be integrated; everything else follows from it, the drive and the input. */
export interface DriveState {
  readonly turns: WormTurns
  /** Worm speed about +z [rad/s] */
  speed: number
  /** [rad/s2] */
  acceleration: number
  /** Mean voltage of the smoothing capacitor, 0 without one [V] */
  capacitorVoltage: number
  /** How warm fuse or overload switch is, 1 where it opens; and whether it has */
  fuse: number
  isOpen: boolean
  /** Model time [s]: timeBase + steps x stepLength, so that many equal steps add no rounding */
  time: number
  /** Time at which the present step length came into use [s] */
  timeBase: number
  /** Steps of that length since then */
  steps: number
  /** [s] */
  stepLength: number
}

export const restState = (): DriveState => ({
  turns: noTurns(),
  speed: 0,
  acceleration: 0,
  capacitorVoltage: 0,
  fuse: 0,
  isOpen: false,
  time: 0,
  timeBase: 0,
  steps: 0,
  stepLength: 0,
})

export function copyState(out: DriveState, from: DriveState): DriveState {
  copyTurns(out.turns, from.turns)
  out.speed = from.speed
  out.acceleration = from.acceleration
  out.capacitorVoltage = from.capacitorVoltage
  out.fuse = from.fuse
  out.isOpen = from.isOpen
  out.time = from.time
  out.timeBase = from.timeBase
  out.steps = from.steps
  out.stepLength = from.stepLength
  return out
}

/** Counts a step; a new length begins a new count. */
export function countStep(state: DriveState, dt: number): void {
  if (dt !== state.stepLength) {
    state.timeBase = state.time
    state.steps = 0
    state.stepLength = dt
  }
  state.steps += 1
  state.time = state.timeBase + state.steps * dt
}
