import type { Shaft } from './waveform-shaft.ts'
import { lookAtShaft, takeBranch } from './waveform-shaft.ts'

const BRANCHES = [1, -1] as const

/**
 * Sets the branch of each wheel that agrees with the acceleration it leads to; with positive inertia there is just
 * one pair that does, but for rounding, so that the pair that agrees best is taken.
 */
function chooseBranches(shaft: Shaft, motion: -1 | 1): void {
  const { left, right } = shaft
  shaft.motion = motion
  let best = -Infinity
  let bestLeft: -1 | 1 = 1
  let bestRight: -1 | 1 = 1
  for (const leftBranch of BRANCHES)
    for (const rightBranch of BRANCHES) {
      takeBranch(shaft, left, leftBranch)
      takeBranch(shaft, right, rightBranch)
      lookAtShaft(shaft)
      const agreement = Math.min(leftBranch * motion * left.mesh, rightBranch * motion * right.mesh)
      if (agreement <= best) continue
      best = agreement
      bestLeft = leftBranch
      bestRight = rightBranch
    }
  takeBranch(shaft, left, bestLeft)
  takeBranch(shaft, right, bestRight)
  lookAtShaft(shaft)
}

/** Sets sense of motion, branches and acceleration at the torque and speed in the shaft. */
export function settleShaft(shaft: Shaft): void {
  if (shaft.speed === 0) settleFromRest(shaft, shaft.breakaway)
  else chooseBranches(shaft, shaft.speed > 0 ? 1 : -1)
}

/** Comes to rest out of motion: it goes on the other way at once, or stays. */
export function stopShaft(shaft: Shaft): void {
  shaft.speed = 0
  settleFromRest(shaft, 1)
}

function settleFromRest(shaft: Shaft, stiction: number): void {
  for (const motion of BRANCHES) {
    tryStart(shaft, motion, stiction)
    if (motion * shaft.acceleration <= 0) continue
    startShaft(shaft, motion)
    return
  }
  rest(shaft)
}

function tryStart(shaft: Shaft, motion: -1 | 1, stiction: number): void {
  shaft.stiction = stiction
  chooseBranches(shaft, motion)
  shaft.stiction = 1
}

/** Lets a shaft that breaks away go in the sense given, against running friction from now on. */
export const startShaft = (shaft: Shaft, motion: -1 | 1): void => chooseBranches(shaft, motion)

function rest(shaft: Shaft): void {
  shaft.motion = 0
  shaft.acceleration = 0
  shaft.left.mesh = 0
  shaft.right.mesh = 0
  shaft.left.load = 0
  shaft.right.load = 0
}

/** Which branch the other way round agrees from where the torque through a mesh passes zero. */
export function turnBranch(shaft: Shaft, guard: number): void {
  const wheel = guard === LEFT_BRANCH ? shaft.left : shaft.right
  takeBranch(shaft, wheel, wheel.branch === 1 ? -1 : 1)
}

/** Guards: the sense of motion, the branch of each wheel, a start forward and one backward */
export const STOP = 0
const LEFT_BRANCH = 1
const RIGHT_BRANCH = 2
export const FORWARD = 3
export const BACKWARD = 4
export const SHAFT_GUARDS = 5

/** Writes the guards from index `at` on; the shaft has been looked at. */
export function writeShaftGuards(out: Float64Array, at: number, shaft: Shaft): void {
  const { motion, left, right, torqueSize } = shaft
  out.fill(1, at, at + SHAFT_GUARDS)
  if (motion === 0) {
    guardStart(out, at + FORWARD, shaft, 1)
    guardStart(out, at + BACKWARD, shaft, -1)
    return
  }
  out[at + STOP] = (motion * shaft.speed) / shaft.speedSize
  out[at + LEFT_BRANCH] = (left.branch * motion * left.mesh) / (torqueSize * shaft.ratio)
  out[at + RIGHT_BRANCH] = (right.branch * motion * right.mesh) / (torqueSize * shaft.ratio)
}

/** How much torque is short of starting a resting shaft in the sense given; below 0 it starts. */
function guardStart(out: Float64Array, n: number, shaft: Shaft, motion: -1 | 1): void {
  tryStart(shaft, motion, shaft.breakaway)
  out[n] = (-motion * shaft.acceleration * shaft.rotorInertia) / shaft.torqueSize
  rest(shaft)
}
