import type { Drive } from './drive.ts'
import type { ElectricReading } from './electric-reading.ts'
import { newElectricReading, readElectrics } from './electric-reading.ts'
import { holdAtRest } from './hold.ts'
import type { DriveInput } from './input.ts'
import {
  canMove,
  demandTorque,
  loadMeshes,
  respondFrom,
  senseMotion,
  takeInput,
  takeState,
} from './motion.ts'
import type { DriveState } from './state.ts'
import { solveTorque } from './torque.ts'

/**
 * Everything that can be read off a drive in one instant, as period means. Speeds are signed about the axes
 * of the frame (worm z, wheels y); torques, currents and powers are positive where the supply, or the hand,
 * drives the worm the way it is told to.
 */
export interface Reading extends ElectricReading {
  /** [rad/s] */
  wormSpeed: number
  leftSpeed: number
  rightSpeed: number
  /** Electromagnetic torque of the motor, or torque of the hand [N m] */
  motorTorque: number
  /** Torque that each output takes; negative where it drives [N m] */
  leftTorque: number
  rightTorque: number
  /** Torque of each wheel in its mesh: output, bearings and inertia [N m] */
  meshTorqueLeft: number
  meshTorqueRight: number
  /** The ledger [W] from the shaft on */
  frictionLoss: number
  fanLoss: number
  meshLossLeft: number
  meshLossRight: number
  bearingLossLeft: number
  bearingLossRight: number
  outputLeft: number
  outputRight: number
  /** Rate at which moving parts, and a capacitor that the supply has left, gain energy [W] */
  storedRate: number
  /** Input less all of the above [W]: rounding, where speed and acceleration belong together */
  residual: number
  /** Both outputs over what comes from wall, battery or hand; 0 where the loads drive or nothing comes in */
  efficiency: number
  /** Ratio times motor torque, as if nothing were lost [N m] */
  idealTotal: number
  /** Its parts in proportion to what the outputs take [N m] */
  idealLeft: number
  idealRight: number
  /** How warm fuse or overload switch is, 1 where it opens; and whether it has */
  fuse: number
  isOpen: boolean
}

export const newReading = (): Reading => ({
  ...newElectricReading(),
  wormSpeed: 0,
  leftSpeed: 0,
  rightSpeed: 0,
  motorTorque: 0,
  leftTorque: 0,
  rightTorque: 0,
  meshTorqueLeft: 0,
  meshTorqueRight: 0,
  frictionLoss: 0,
  fanLoss: 0,
  meshLossLeft: 0,
  meshLossRight: 0,
  bearingLossLeft: 0,
  bearingLossRight: 0,
  outputLeft: 0,
  outputRight: 0,
  storedRate: 0,
  residual: 0,
  efficiency: 0,
  idealTotal: 0,
  idealLeft: 0,
  idealRight: 0,
  fuse: 0,
  isOpen: false,
})

/**
 * Reads a drive at a worm speed [rad/s] and acceleration [rad/s2], both about +z, protection cold and a smoothing
 * capacitor empty without supply. Both 0 is standstill, held by friction or by a jam. Without acceleration the
 * reading is of steady running, and period means are exact; otherwise they are the ones that a step sees.
 */
export function readAt(
  out: Reading,
  drive: Drive,
  input: DriveInput,
  speed: number,
  acceleration: number,
): Reading {
  out.wormSpeed = speed
  out.fuse = 0
  out.isOpen = false
  const { work } = drive
  takeInput(drive, input)
  work.speed = input.sense * speed
  work.acceleration = input.sense * acceleration
  work.exact = acceleration === 0
  read(out, drive, input)
  return out
}

/**
 * Reads a drive as it stands in its state. The acceleration is worked out anew, so that an input that has
 * just changed is read with what it does; only a hand on the crank prescribes it. Allocates nothing.
 */
export function readState(out: Reading, drive: Drive, input: DriveInput, state: DriveState): Reading {
  const { work } = drive
  out.wormSpeed = state.speed
  out.fuse = state.fuse
  out.isOpen = state.isOpen
  takeState(state, drive, input)
  work.acceleration = input.sense * state.acceleration
  const prescribed = drive.crankSpeeds.length > 0 && input.connected
  if (!prescribed && canMove(drive)) respondFrom(drive, input)
  read(out, drive, input)
  return out
}

/** Apart from `readAt` so that the two numbers need no boxes on their way here. */
function read(out: Reading, drive: Drive, input: DriveInput): void {
  senseMotion(drive.work)
  solveTorque(drive, input)
  readMechanics(out, drive, input)
  readElectrics(out, drive, input)
  balance(out)
}

function readMechanics(out: Reading, drive: Drive, input: DriveInput): void {
  const { work, ratio } = drive
  const { speed, left, right } = work
  if (work.motion === 0) holdAtRest(drive, input)
  else loadMeshes(drive, input)
  if (drive.crankSpeeds.length > 0 && input.connected && work.motion !== 0) demandTorque(drive)
  const wheelSpeed = speed / ratio
  // Here and below, adding 0 turns a negative zero into a plain one.
  out.rightSpeed = (-drive.handSign * out.wormSpeed) / ratio + 0
  out.leftSpeed = 0 - out.rightSpeed
  out.motorTorque = work.torque
  out.leftTorque = left.load
  out.rightTorque = right.load
  out.meshTorqueLeft = left.mesh
  out.meshTorqueRight = right.mesh
  out.frictionLoss = (work.motion * drive.frictionTorque + drive.viscousTorque * speed) * speed
  out.fanLoss = drive.fanTorque * Math.abs(speed) * speed * speed
  out.meshLossLeft = left.wormTorque * speed - left.mesh * wheelSpeed
  out.meshLossRight = right.wormTorque * speed - right.mesh * wheelSpeed
  out.bearingLossLeft = drive.bearingTorque * Math.abs(wheelSpeed)
  out.bearingLossRight = out.bearingLossLeft
  out.outputLeft = left.load * wheelSpeed + 0
  out.outputRight = right.load * wheelSpeed + 0
  out.storedRate =
    drive.rotorInertia * speed * work.acceleration +
    (2 * drive.wheelInertia * wheelSpeed * work.acceleration) / ratio +
    work.capacitorPower
  out.idealTotal = ratio * work.torque
  const loads = left.load + right.load
  out.idealLeft = 0
  out.idealRight = 0
  if (loads !== 0) {
    out.idealLeft = out.idealTotal * (left.load / loads) + 0
    out.idealRight = out.idealTotal * (right.load / loads) + 0
  }
}

function balance(out: Reading): void {
  const input = out.inputPower + out.coreLoss
  const outputs = out.outputLeft + out.outputRight
  const losses =
    out.coreLoss +
    out.sourceResistanceLoss +
    out.diodeLoss +
    out.bleedLoss +
    out.switchLoss +
    out.copperLoss +
    out.brushLoss +
    out.frictionLoss +
    out.fanLoss +
    out.meshLossLeft +
    out.meshLossRight +
    out.bearingLossLeft +
    out.bearingLossRight
  out.residual = input - losses - outputs - out.storedRate
  out.efficiency = outputs > 0 && input > 0 ? outputs / input : 0
}
