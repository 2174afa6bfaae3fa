import type { Load } from '../machine/machine.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import type { DriveState } from './state.ts'
import { solveTorque } from './torque.ts'
import type { WheelWork, Work } from './work.ts'

const NO_LOAD: Load = { name: '', active: 0, passive: 0, linear: 0, quadratic: 0 }

export const leftLoad = (drive: Drive, input: DriveInput): Load => drive.loads[input.leftLoad] ?? NO_LOAD
export const rightLoad = (drive: Drive, input: DriveInput): Load => drive.loads[input.rightLoad] ?? NO_LOAD

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
  setDrags(drive, input)
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

/** Acceleration at work.speed; at rest the sense of motion too, 0 where friction holds the drive. */
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
    work.motion * work.stiction * drive.frictionTorque +
    drive.viscousTorque * work.speed +
    drive.fanTorque * work.speed * Math.abs(work.speed)
}

function setDrags(drive: Drive, input: DriveInput): void {
  const { left, right } = drive.work
  left.jam = input.jammed === 'left' ? drive.jamTorque : 0
  right.jam = input.jammed === 'right' ? drive.jamTorque : 0
  setDrag(left, leftLoad(drive, input), drive, input.sense)
  setDrag(right, rightLoad(drive, input), drive, input.sense)
}

function setDrag(wheel: WheelWork, load: Load, drive: Drive, sense: number): void {
  const { work } = drive
  const dry = work.motion * work.stiction
  const speed = work.speed / drive.ratio
  const moved = load.linear * speed + load.quadratic * speed * Math.abs(speed)
  wheel.load = sense * load.active + dry * (load.passive + wheel.jam) + moved
  wheel.drag = wheel.load + dry * drive.bearingTorque
}

/** Fills the torques through both meshes at work.speed, work.motion and work.acceleration. */
export function loadMeshes(drive: Drive, input: DriveInput): void {
  const { work } = drive
  setDrags(drive, input)
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
 * friction or a jam holds it, and work.acceleration to match. Dry friction holds with its breakaway value; what
 * has left standstill has that of running.
 */
export function start(drive: Drive, input: DriveInput): void {
  const { work } = drive
  work.speed = 0
  work.stiction = drive.breakaway
  work.motion = 1
  accelerate(drive, input)
  if (work.acceleration <= 0) {
    work.motion = -1
    accelerate(drive, input)
    if (work.acceleration >= 0) work.motion = 0
  }
  work.stiction = 1
  work.acceleration = 0
  if (work.motion !== 0) accelerate(drive, input)
}

/** Whether the numbers of the machine let it move under its own power at all. */
export const canMove = (drive: Drive): boolean => drive.notComputed === null

/** Takes from the input whether the supply reaches the drive: protection closed, smoothing capacitor else empty. */
export function takeInput({ work }: Drive, input: DriveInput): void {
  work.live = input.connected
  work.exact = false
  work.held = false
  work.capacitorVoltage = 0
}

/** Takes speed and capacitor of a state, and whether the supply reaches the drive in it. */
export function takeState(state: DriveState, drive: Drive, input: DriveInput): void {
  const { work } = drive
  takeInput(drive, input)
  if (state.isOpen) work.live = false
  work.capacitorVoltage = state.capacitorVoltage
  work.speed = input.sense * state.speed
}

/** Sets the sense of motion from work.speed, and at rest from work.acceleration. */
export function senseMotion(work: Work): void {
  work.motion = Math.sign(work.speed)
  if (work.motion === 0) work.motion = Math.sign(work.acceleration)
}
