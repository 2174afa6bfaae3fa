import { solveBridge, solveIdleBridge } from '../electric/bridge.ts'
import { solveChopper, solveIdleChopper } from '../electric/chopper.ts'
import { clearCycle } from '../electric/cycle.ts'
import type { Load } from '../machine/machine.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import type { WheelWork, Work } from './work.ts'

/** Torque that a jammed wheel holds before anything gives: more than any part here could transmit [N m]. */
const JAM_TORQUE = 1e4

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
  work.torque = drive.emfConstant * cycle.mean
}

/**
 * Sets work.acceleration from work.speed, work.motion (not 0) and work.torque:
 * J a = T - losses - sum h(X)/u, X = drag + Jw a/u, h = X/etaF where the wheel opposes the motion, etaB X where it
 * drives. The right side has one kink a wheel, where X = 0; asking on which side of both kinks the answer lies makes
 * the solution exact without iteration.
 */
export function accelerate(drive: Drive, input: DriveInput): void {
  const { work, ratio, rotorInertia, wheelInertia } = drive
  const s = work.motion
  const net = work.torque - rotorDrag(drive)
  setDrag(work.left, leftLoad(drive, input), drive, input.sense, input.jammed === 'left')
  setDrag(work.right, rightLoad(drive, input), drive, input.sense, input.jammed === 'right')
  const left = work.left.drag
  const right = work.right.drag
  const wheelPart = wheelInertia / ratio
  const leftAtKink = (wormTorque(drive, s, right - left) - net) * wheelPart - rotorInertia * left
  const rightAtKink = (wormTorque(drive, s, left - right) - net) * wheelPart - rotorInertia * right
  const leftShare = s * leftAtKink <= 0 ? 1 / drive.forwardEfficiency : drive.backwardEfficiency
  const rightShare = s * rightAtKink <= 0 ? 1 / drive.forwardEfficiency : drive.backwardEfficiency
  const inertia = rotorInertia + ((leftShare + rightShare) * wheelPart) / ratio
  work.acceleration = (net - (leftShare * left + rightShare * right) / ratio) / inertia
}

/** Torque at the worm for torque X at a wheel, for the sense of motion s. */
export const wormTorque = (drive: Drive, s: number, X: number): number =>
  (s * X >= 0 ? X / drive.forwardEfficiency : X * drive.backwardEfficiency) / drive.ratio

/** Friction and fan of the worm shaft [N m] */
const rotorDrag = (drive: Drive): number =>
  drive.work.motion * drive.frictionTorque +
  drive.viscousTorque * drive.work.speed +
  drive.fanTorque * drive.work.speed * Math.abs(drive.work.speed)

function setDrag(wheel: WheelWork, load: Load, drive: Drive, sense: number, jammed: boolean): void {
  const s = drive.work.motion
  const speed = drive.work.speed / drive.ratio
  const jam = jammed ? JAM_TORQUE : 0
  wheel.load =
    sense * load.active +
    s * (load.passive + jam) +
    load.linear * speed +
    load.quadratic * speed * Math.abs(speed)
  wheel.drag = wheel.load + s * drive.bearingTorque
}

/** Fills the torques through both meshes at work.speed, work.motion and work.acceleration. */
export function loadMeshes(drive: Drive, input: DriveInput): void {
  const { work } = drive
  setDrag(work.left, leftLoad(drive, input), drive, input.sense, input.jammed === 'left')
  setDrag(work.right, rightLoad(drive, input), drive, input.sense, input.jammed === 'right')
  loadMesh(work.left, drive)
  loadMesh(work.right, drive)
}

function loadMesh(wheel: WheelWork, drive: Drive): void {
  wheel.mesh = wheel.drag + (drive.wheelInertia * drive.work.acceleration) / drive.ratio
  wheel.wormTorque = wormTorque(drive, drive.work.motion, wheel.mesh)
}

/** Torque that a prescribed motion asks at the worm, meshes loaded [N m] */
export const demandedTorque = (drive: Drive): number =>
  drive.rotorInertia * drive.work.acceleration +
  rotorDrag(drive) +
  drive.work.left.wormTorque +
  drive.work.right.wormTorque

/**
 * At standstill with work.torque known: sets work.motion to the sense in which the drive would start, 0 where friction
 * holds it, and work.acceleration to match. A jammed wheel holds always.
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

export function enterCommandedFrame(work: Work, sense: number, speed: number, acceleration: number): void {
  work.speed = sense * speed
  work.acceleration = sense * acceleration
  work.motion = Math.sign(work.speed) || Math.sign(work.acceleration)
}
