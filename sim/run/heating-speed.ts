import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import { accelerate } from '../drive/motion.ts'
import { steadySpeed } from '../drive/steady-speed.ts'
import { solveTorque } from '../drive/torque.ts'
import type { Curve } from '../numeric/brent.ts'
import { brent } from '../numeric/brent.ts'

/** Part of the speed by which the search first moves, and how much further each time. */
const FIRST_MOVE = 1e-3
const GROWTH = 8
/** How closely the speed is found, as a part of it. */
const NEARNESS = 1e-10
/** Part of the speed that a slope is trusted for, and how often. */
const TRUST = 0.2
const MOST_ROUNDS = 8
/** Beyond what any machine in range reaches [rad/s] */
const RUNAWAY = 2 ** 23

/**
 * Worm speed at which a drive keeps running that ran at a speed like it a moment ago [rad/s], in the commanded frame;
 * 0 where it stalls or is held, Infinity where nothing stops its rise. It takes a few evaluations of the torque rather
 * than the hundred of a search from nothing, and stays on the branch on which the drive runs.
 */
export function followedSpeed(drive: Drive, input: DriveInput, before: number): number {
  const { work } = drive
  work.live = input.connected
  work.exact = true
  work.capacitorVoltage = 0
  if (before === 0) return steadySpeed(drive, input)
  const motion = Math.sign(before)
  const surplus: Curve = { at: (size) => surplusAt(drive, input, motion, size) }
  const near = Math.abs(before)
  const close = bySecants(surplus, near)
  return motion * (Number.isNaN(close) ? byBracket(surplus, near) : close)
}

/** Acceleration at a steady speed of this size, positive where the drive would still gain speed [rad/s2]. */
function surplusAt(drive: Drive, input: DriveInput, motion: number, size: number): number {
  drive.work.speed = motion * size
  drive.work.motion = motion
  solveTorque(drive, input)
  accelerate(drive, input)
  return motion * drive.work.acceleration
}

/** Zero of a falling curve close by; NaN where secants do not lead there at once. */
function bySecants(curve: Curve, near: number): number {
  let before = near
  let beforeValue = curve.at(before)
  let size = near * (1 + Math.sign(beforeValue) * FIRST_MOVE)
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const value = curve.at(size)
    const move = (-value * (size - before)) / (value - beforeValue)
    const isFalling = value > beforeValue !== size > before
    if (value === 0 || size === before) return size
    if (!isFalling || !(Math.abs(move) < TRUST * size)) return NaN
    before = size
    beforeValue = value
    size += move
    if (Math.abs(move) < NEARNESS * size) return size
  }
  return NaN
}

/** The next zero in the way in which the speed changes at `near`; 0 where it goes on falling, Infinity where rising. */
function byBracket(curve: Curve, near: number): number {
  let size = near
  let value = curve.at(size)
  const way = Math.sign(value)
  let move = FIRST_MOVE * near
  while (value * way > 0) {
    const next = Math.max(0, size + way * move)
    if (next === 0) return 0
    const nextValue = curve.at(next)
    if (nextValue * way <= 0)
      return brent(curve, size, next, value, nextValue, NEARNESS * Math.max(size, next))
    size = next
    value = nextValue
    move *= GROWTH
    if (!(size < RUNAWAY)) return Infinity
  }
  return size
}
