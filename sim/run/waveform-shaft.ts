import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import type { Load } from '../machine/machine.ts'

/**
 * The worm shaft with both wheels, in the supply's sense, at the torque of the moment: J a = T - losses - sum h(X)/u,
 * X = drag + Jw a/u, h = X/etaF where a wheel opposes the motion, etaB X where it drives. The sense of motion and the
 * branch of each wheel hold within a step, so that everything is smooth there; guards tell when they change.
 */
export interface Shaft {
  readonly ratio: number
  readonly rotorInertia: number
  readonly wheelInertia: number
  readonly frictionTorque: number
  readonly viscousTorque: number
  readonly fanTorque: number
  readonly bearingTorque: number
  /** Torque at the worm for one at the wheel, worm driving and wheel driving */
  readonly opposed: number
  readonly driven: number
  readonly breakaway: number
  /** Ordinary torque at the worm [N m] and speed [rad/s] */
  readonly torqueSize: number
  readonly speedSize: number
  readonly left: ShaftWheel
  readonly right: ShaftWheel
  /** Sense of motion, 0 at rest */
  motion: -1 | 0 | 1
  /** Worm acceleration [rad/s2] */
  acceleration: number
}

/** One wheel; torques at the wheel, positive against forward motion [N m]. */
export interface ShaftWheel {
  active: number
  passive: number
  linear: number
  quadratic: number
  /** 1 where it opposes the motion, -1 where it drives */
  branch: -1 | 1
  /** Of what it is given to do; through the mesh, with bearings and inertia */
  load: number
  mesh: number
}

const newWheel = (): ShaftWheel => ({
  active: 0,
  passive: 0,
  linear: 0,
  quadratic: 0,
  branch: 1,
  load: 0,
  mesh: 0,
})

/** Throws where the mesh cannot let rigid parts move at all, which `drive.notComputed` tells. */
export function newShaft(drive: Drive, torqueSize: number, speedSize: number): Shaft {
  return {
    ratio: drive.ratio,
    rotorInertia: drive.rotorInertia,
    wheelInertia: drive.wheelInertia,
    frictionTorque: drive.frictionTorque,
    viscousTorque: drive.viscousTorque,
    fanTorque: drive.fanTorque,
    bearingTorque: drive.bearingTorque,
    opposed: 1 / drive.forwardEfficiency,
    driven: drive.backwardEfficiency,
    breakaway: drive.breakaway,
    torqueSize,
    speedSize,
    left: newWheel(),
    right: newWheel(),
    motion: 0,
    acceleration: 0,
  }
}

/** A jam is more dry friction on its wheel, as much as whatever jams it can hold. */
export function loadShaft(shaft: Shaft, drive: Drive, input: DriveInput): void {
  const { jammed, sense } = input
  const jam = drive.jamTorque
  loadWheel(shaft.left, drive.loads[input.leftLoad], jammed === 'left' ? jam : 0, sense)
  loadWheel(shaft.right, drive.loads[input.rightLoad], jammed === 'right' ? jam : 0, sense)
}

function loadWheel(wheel: ShaftWheel, load: Load | undefined, jam: number, sense: number): void {
  wheel.active = sense * (load?.active ?? 0)
  wheel.passive = (load?.passive ?? 0) + jam
  wheel.linear = load?.linear ?? 0
  wheel.quadratic = load?.quadratic ?? 0
}

const share = (shaft: Shaft, wheel: ShaftWheel): number => (wheel.branch > 0 ? shaft.opposed : shaft.driven)

/** Sets loads, meshes and acceleration at motor torque T and speed w for the sense of motion and branches that hold. */
export function lookAtShaft(shaft: Shaft, T: number, w: number): void {
  if (shaft.motion === 0) {
    shaft.acceleration = 0
    return
  }
  respond(shaft, T, w, shaft.motion, 1)
}

/** `stiction` is what dry friction is more than in running. */
function respond(shaft: Shaft, T: number, w: number, motion: number, stiction: number): void {
  const { left, right, ratio, wheelInertia } = shaft
  const wk = w / ratio
  const dry = motion * stiction
  const rotor = dry * shaft.frictionTorque + shaft.viscousTorque * w + shaft.fanTorque * motion * w * w
  left.load = left.active + dry * left.passive + (left.linear + left.quadratic * motion * wk) * wk
  right.load = right.active + dry * right.passive + (right.linear + right.quadratic * motion * wk) * wk
  left.mesh = left.load + dry * shaft.bearingTorque
  right.mesh = right.load + dry * shaft.bearingTorque
  const leftShare = share(shaft, left)
  const rightShare = share(shaft, right)
  const inertia = shaft.rotorInertia + ((leftShare + rightShare) * wheelInertia) / (ratio * ratio)
  const net = T - rotor - (leftShare * left.mesh + rightShare * right.mesh) / ratio
  shaft.acceleration = net / inertia
  left.mesh += (wheelInertia * shaft.acceleration) / ratio
  right.mesh += (wheelInertia * shaft.acceleration) / ratio
}

const BRANCHES = [1, -1] as const

/**
 * Sets the branch of each wheel that agrees with the acceleration it leads to; with positive inertia there is just
 * one pair that does, but for rounding, so that the pair that agrees best is taken.
 */
function chooseBranches(shaft: Shaft, T: number, w: number, motion: -1 | 1, stiction: number): void {
  const { left, right } = shaft
  let best = -Infinity
  let bestLeft: -1 | 1 = 1
  let bestRight: -1 | 1 = 1
  for (const leftBranch of BRANCHES)
    for (const rightBranch of BRANCHES) {
      left.branch = leftBranch
      right.branch = rightBranch
      respond(shaft, T, w, motion, stiction)
      const agreement = Math.min(leftBranch * motion * left.mesh, rightBranch * motion * right.mesh)
      if (agreement <= best) continue
      best = agreement
      bestLeft = leftBranch
      bestRight = rightBranch
    }
  left.branch = bestLeft
  right.branch = bestRight
  respond(shaft, T, w, motion, stiction)
}

/** Sets sense of motion, branches and acceleration at torque T and speed w; at rest friction may hold the shaft. */
export function settleShaft(shaft: Shaft, T: number, w: number): void {
  if (w !== 0) {
    shaft.motion = w > 0 ? 1 : -1
    chooseBranches(shaft, T, w, shaft.motion, 1)
    return
  }
  for (const motion of BRANCHES) {
    chooseBranches(shaft, T, 0, motion, 1)
    shaft.motion = motion
    if (motion * shaft.acceleration > 0) return
  }
  rest(shaft)
}

function rest(shaft: Shaft): void {
  shaft.motion = 0
  shaft.acceleration = 0
  shaft.left.mesh = 0
  shaft.right.mesh = 0
  shaft.left.load = 0
  shaft.right.load = 0
}

/** How much torque T [N m] is short of starting a resting shaft in the sense given; below 0 it starts. */
export function shortOfStart(shaft: Shaft, T: number, motion: -1 | 1): number {
  chooseBranches(shaft, T, 0, motion, shaft.breakaway)
  const missing = -motion * shaft.acceleration * shaft.rotorInertia
  rest(shaft)
  return missing
}

/** Lets a shaft that breaks away go in the sense given, against running friction from now on. */
export function startShaft(shaft: Shaft, T: number, motion: -1 | 1): void {
  shaft.motion = motion
  chooseBranches(shaft, T, 0, motion, 1)
}

/** Which branch the other way round agrees from where the torque through a mesh passes zero. */
export function turnBranch(wheel: ShaftWheel): void {
  wheel.branch = wheel.branch === 1 ? -1 : 1
}

/** Guards: the sense of motion, the branch of each wheel, a start forward and one backward */
export const STOP = 0
export const LEFT_BRANCH = 1
const RIGHT_BRANCH = 2
export const FORWARD = 3
export const BACKWARD = 4
export const SHAFT_GUARDS = 5

/** Writes the guards from index `at` on; the shaft has been looked at for this T and w. */
export function writeShaftGuards(out: Float64Array, at: number, shaft: Shaft, T: number, w: number): void {
  const { motion, left, right, torqueSize } = shaft
  out.fill(1, at, at + SHAFT_GUARDS)
  if (motion === 0) {
    out[at + FORWARD] = shortOfStart(shaft, T, 1) / torqueSize
    out[at + BACKWARD] = shortOfStart(shaft, T, -1) / torqueSize
    return
  }
  out[at + STOP] = (motion * w) / shaft.speedSize
  out[at + LEFT_BRANCH] = (left.branch * motion * left.mesh) / (torqueSize * shaft.ratio)
  out[at + RIGHT_BRANCH] = (right.branch * motion * right.mesh) / (torqueSize * shaft.ratio)
}
