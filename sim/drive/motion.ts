import { solveBridge, solveIdleBridge } from '../electric/bridge.ts'
import { solveChopper, solveIdleChopper } from '../electric/chopper.ts'
import { clearCycle } from '../electric/cycle.ts'
import type { Load } from '../machine/machine.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import type { WheelWork, Work } from './work.ts'

const NO_LOAD: Load = { name: '', active: 0, passive: 0, linear: 0, quadratic: 0 }

export const leftLoad = (drive: Drive, input: DriveInput): Load => drive.loads[input.leftLoad] ?? NO_LOAD
export const rightLoad = (drive: Drive, input: DriveInput): Load => drive.loads[input.rightLoad] ?? NO_LOAD

/** Sets work.torque to the mean motor torque at work.speed, and work.cycle to the currents behind it. */
export function solveTorque(drive: Drive, input: DriveInput): void {
  const { work } = drive
  const { cycle } = work
  const bridge = drive.bridges[input.setting]
  const chopper = drive.choppers[input.setting]
  cycle.opposing = drive.emfConstant * work.speed + drive.brushDrop
  if (bridge) {
    if (input.connected) solveBridge(cycle, bridge, work.bridge)
    else solveIdleBridge(cycle, bridge)
  } else if (chopper) {
    if (input.connected) solveChopper(cycle, chopper)
    else solveIdleChopper(cycle, chopper)
  } else clearCycle(cycle)
  cycle.torque = drive.emfConstant * cycle.mean
  work.torque = cycle.torque
}

/**
 * Sets work.acceleration from work.speed, work.motion (not 0) and work.torque: J a = T - losses - sum h(X)/u,
 * X = drag + Jw a/u, h = X/etaF where the wheel opposes the motion, etaB X where it drives. The right side
 * has one kink a wheel, where X = 0; asking on which side of both kinks the answer lies makes the solution
 * exact without iteration.
 */
export function accelerate(drive: Drive, input: DriveInput): void {
  const { work, ratio, rotorInertia, wheelInertia } = drive
  const s = work.motion
  setRotorDrag(drive)
  const net = work.torque - work.rotorDrag
  setDrag(work.left, leftLoad(drive, input), drive, input.sense)
  setDrag(work.right, rightLoad(drive, input), drive, input.sense)
  const left = work.left.drag
  const right = work.right.drag
  const wheelPart = wheelInertia / ratio
  const forward = 1 / drive.forwardEfficiency
  const backward = drive.backwardEfficiency
  // Where one wheel is at its kink, only the other asks for torque: the difference of the two drags.
  const rightAlone = ((s * (right - left) >= 0 ? forward : backward) * (right - left)) / ratio
  const leftAlone = ((s * (left - right) >= 0 ? forward : backward) * (left - right)) / ratio
  const leftAtKink = (rightAlone - net) * wheelPart - rotorInertia * left
  const rightAtKink = (leftAlone - net) * wheelPart - rotorInertia * right
  const leftShare = s * leftAtKink <= 0 ? forward : backward
  const rightShare = s * rightAtKink <= 0 ? forward : backward
  const inertia = rotorInertia + ((leftShare + rightShare) * wheelPart) / ratio
  work.acceleration = (net - (leftShare * left + rightShare * right) / ratio) / inertia
}

/** Sets torque and acceleration at work.speed, the sense of motion held. */
export function respond(drive: Drive, input: DriveInput): void {
  solveTorque(drive, input)
  accelerate(drive, input)
}

/** Acceleration at work.speed; at rest the sense of motion too, 0 where friction or a jam holds the drive. */
export function respondFrom(drive: Drive, input: DriveInput): void {
  const { work } = drive
  if (work.speed !== 0) {
    work.motion = Math.sign(work.speed)
    respond(drive, input)
  } else {
    solveTorque(drive, input)
    start(drive, input)
  }
}

function setRotorDrag(drive: Drive): void {
  const { work } = drive
  work.rotorDrag =
    work.motion * drive.frictionTorque +
    drive.viscousTorque * work.speed +
    drive.fanTorque * work.speed * Math.abs(work.speed)
}

function setDrag(wheel: WheelWork, load: Load, drive: Drive, sense: number): void {
  const s = drive.work.motion
  const speed = drive.work.speed / drive.ratio
  wheel.load =
    sense * load.active + s * load.passive + load.linear * speed + load.quadratic * speed * Math.abs(speed)
  wheel.drag = wheel.load + s * drive.bearingTorque
}

/** Fills the torques through both meshes at work.speed, work.motion and work.acceleration. */
export function loadMeshes(drive: Drive, input: DriveInput): void {
  const { work } = drive
  setDrag(work.left, leftLoad(drive, input), drive, input.sense)
  setDrag(work.right, rightLoad(drive, input), drive, input.sense)
  loadMesh(work.left, drive)
  loadMesh(work.right, drive)
}

function loadMesh(wheel: WheelWork, drive: Drive): void {
  const { work, ratio } = drive
  wheel.mesh = wheel.drag + (drive.wheelInertia * work.acceleration) / ratio
  const opposes = work.motion * wheel.mesh >= 0
  wheel.wormTorque = (wheel.mesh * (opposes ? 1 / drive.forwardEfficiency : drive.backwardEfficiency)) / ratio
}

/** Sets work.torque to what a prescribed motion asks of the hand, meshes loaded. */
export function demandTorque(drive: Drive): void {
  const { work } = drive
  setRotorDrag(drive)
  work.torque =
    drive.rotorInertia * work.acceleration + work.rotorDrag + work.left.wormTorque + work.right.wormTorque
}

/**
 * At standstill with work.torque known: sets work.motion to the sense in which the drive would start, 0 where
 * friction holds it, and work.acceleration to match. A jammed wheel holds always.
 */
export function start(drive: Drive, input: DriveInput): void {
  const { work } = drive
  work.speed = 0
  if (input.jammed === 'none') {
    work.motion = 1
    accelerate(drive, input)
    if (work.acceleration > 0) return
    work.motion = -1
    accelerate(drive, input)
    if (work.acceleration < 0) return
  }
  work.motion = 0
  work.acceleration = 0
}

/** Whether the numbers of the machine let it move under its own power at all. */
export const canMove = (drive: Drive): boolean => drive.notComputed === null

/** Sets the sense of motion from work.speed, and at rest from work.acceleration. */
export function senseMotion(work: Work): void {
  work.motion = Math.sign(work.speed)
  if (work.motion === 0) work.motion = Math.sign(work.acceleration)
}
