import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import { accelerate, canMove, solveTorque, start } from './motion.ts'
import type { Reading } from './reading.ts'
import { newReading, readAt } from './reading.ts'

/** Where a drive settles. */
export interface OperatingPoint {
  readonly reading: Reading
  /** Worm speed about +z [rad/s] */
  readonly speed: number
  /** Powered but not turning */
  readonly stalled: boolean
  /** Held by a jam */
  readonly locked: boolean
  /** Motor torque at standstill [N m]; 0 for a crank, whose hand has no set limit */
  readonly stallTorque: number
}

/**
 * Twice what any motor in range reaches, 280 V/50 V x 250 V x sqrt 2 on 0.0005 V s/rad: beyond it lies
 * nothing.
 */
const MOST_DOUBLINGS = 23
const RUNAWAY = 2 ** MOST_DOUBLINGS // [rad/s]
const SLICES = 64
const MOST_HALVINGS = 200

/**
 * Steady running with this input. Null where the drive is not computed, which `drive.notComputed` tells, and,
 * with that null too, where its load drives it ever faster.
 */
export function operatingPoint(drive: Drive, input: DriveInput): OperatingPoint | null {
  if (!canMove(drive)) return null
  const speed = input.sense * steadySpeed(drive, input)
  if (!Number.isFinite(speed)) return null
  const reading = readAt(newReading(), drive, input, speed, 0)
  return {
    reading,
    speed,
    stalled: input.connected && speed === 0,
    locked: input.jammed !== 'none',
    stallTorque: stallTorque(drive, input),
  }
}

function stallTorque(drive: Drive, input: DriveInput): number {
  drive.work.speed = 0
  solveTorque(drive, input)
  return drive.work.torque
}

/** In the commanded frame [rad/s] */
function steadySpeed(drive: Drive, input: DriveInput): number {
  if (input.jammed !== 'none') return 0
  if (drive.crankSpeeds.length > 0 && input.connected) return drive.crankSpeeds[input.setting] ?? 0
  stallTorque(drive, input)
  start(drive, input)
  const motion = drive.work.motion
  return motion === 0 ? 0 : motion * outermostRest(drive, input, motion)
}

/** Acceleration at a steady speed of this size, positive where the drive would still gain speed. */
function surplus(drive: Drive, input: DriveInput, motion: number, size: number): number {
  drive.work.speed = motion * size
  drive.work.motion = motion
  solveTorque(drive, input)
  accelerate(drive, input)
  return motion * drive.work.acceleration
}

/**
 * The highest speed at which torque and demand meet: bracketed by doubling, looked for from above, halved.
 */
function outermostRest(drive: Drive, input: DriveInput, motion: number): number {
  let high = 1
  for (let i = 0; i < MOST_DOUBLINGS && surplus(drive, input, motion, high) > 0; i++) high *= 2
  if (high >= RUNAWAY) return Infinity
  const slice = high / SLICES
  let low = high - slice
  while (low > 0 && surplus(drive, input, motion, low) <= 0) {
    high = low
    low -= slice
  }
  low = Math.max(0, low)
  for (let i = 0; i < MOST_HALVINGS; i++) {
    const middle = (low + high) / 2
    if (middle <= low || middle >= high) break
    if (surplus(drive, input, motion, middle) > 0) low = middle
    else high = middle
  }
  return high
}
