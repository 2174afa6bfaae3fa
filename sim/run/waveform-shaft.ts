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
  /** Torque at the worm for one at the wheel but for the ratio, worm driving and wheel driving */
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
  /** Motor torque at hand [N m], worm speed [rad/s] */
  torque: number
  speed: number
  /** What dry friction is more than in running */
  stiction: number
  /** Worm acceleration [rad/s2] */
  acceleration: number
}

/** One wheel; torques at the wheel, positive against forward motion [N m]. */
export interface ShaftWheel {
  active: number
  passive: number
  linear: number
  quadratic: number
  /** 1 where it opposes the motion, -1 where it drives, and the torque at the worm for one at the wheel then */
  branch: -1 | 1
  share: number
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
  share: 1,
  load: 0,
  mesh: 0,
})

/** At rest, without loads. */
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
    torque: 0,
    speed: 0,
    stiction: 1,
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

/**
 * Sets loads, meshes and acceleration at the torque and speed in the shaft, for its sense of motion, its branches and
 * its stiction.
 */
export function lookAtShaft(shaft: Shaft): void {
  const { left, right, ratio, motion, torque: T, speed: w } = shaft
  shaft.acceleration = 0
  if (motion === 0) return
  const wk = w / ratio
  const dry = motion * shaft.stiction
  const rotor = dry * shaft.frictionTorque + (shaft.viscousTorque + shaft.fanTorque * motion * w) * w
  left.load = left.active + dry * left.passive + (left.linear + left.quadratic * motion * wk) * wk
  right.load = right.active + dry * right.passive + (right.linear + right.quadratic * motion * wk) * wk
  left.mesh = left.load + dry * shaft.bearingTorque
  right.mesh = right.load + dry * shaft.bearingTorque
  const wheelPart = shaft.wheelInertia / ratio
  const inertia = shaft.rotorInertia + ((left.share + right.share) * wheelPart) / ratio
  const net = T - rotor - (left.share * left.mesh + right.share * right.mesh) / ratio
  shaft.acceleration = net / inertia
  left.mesh += wheelPart * shaft.acceleration
  right.mesh += wheelPart * shaft.acceleration
}

export function takeBranch(shaft: Shaft, wheel: ShaftWheel, branch: -1 | 1): void {
  wheel.branch = branch
  wheel.share = branch > 0 ? shaft.opposed : shaft.driven
}
