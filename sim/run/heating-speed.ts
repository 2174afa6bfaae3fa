import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import { accelerate, solveTorque, start } from '../drive/motion.ts'
import { operatingPoint } from '../drive/operating-point.ts'
import { brent } from '../numeric/brent.ts'

/** Part of the speed by which the search first moves, and how much further each time. */
const FIRST_MOVE = 1e-3
const GROWTH = 8
/** How closely the speed is found, as a part of it. */
const NEARNESS = 1e-11

/**
 * Worm speed at which a drive keeps running that ran at a speed like it a moment ago [rad/s], in the commanded frame;
 * 0 where it stalls or is held. It takes a few evaluations of the torque rather than the hundreds of a search from
 * nothing, and stays on the branch on which the drive runs.
 */
export function followedSpeed(drive: Drive, input: DriveInput, before: number): number {
  if (input.jammed !== 'none') return 0
  if (before === 0) return speedFromRest(drive, input)
  const motion = Math.sign(before)
  const surplus = { at: (size: number) => surplusAt(drive, input, motion, size) }
  let near = Math.abs(before)
  let nearValue = surplus.at(near)
  const way = Math.sign(nearValue)
  let move = FIRST_MOVE * near
  while (nearValue * way > 0) {
    const far = Math.max(0, near + way * move)
    if (far === 0) return 0
    const farValue = surplus.at(far)
    if (farValue * way <= 0)
      return motion * brent(surplus, near, far, nearValue, farValue, NEARNESS * Math.max(near, far))
    near = far
    nearValue = farValue
    move *= GROWTH
    if (!(move < Infinity)) return NaN
  }
  return motion * near
}

/** Where a drive settles that is switched on at rest [rad/s], in the commanded frame. */
export function speedFromRest(drive: Drive, input: DriveInput): number {
  drive.work.speed = 0
  solveTorque(drive, input)
  start(drive, input)
  if (drive.work.motion === 0) return 0
  const point = operatingPoint(drive, input)
  return point ? input.sense * point.speed : NaN
}

/** Acceleration at a steady speed of this size, positive where the drive would still gain speed [rad/s2]. */
function surplusAt(drive: Drive, input: DriveInput, motion: number, size: number): number {
  drive.work.speed = motion * size
  drive.work.motion = motion
  solveTorque(drive, input)
  accelerate(drive, input)
  return motion * drive.work.acceleration
}
