import type { Load } from '../machine/machine.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import { leftLoad, rightLoad } from './motion.ts'
import type { WheelWork } from './work.ts'

/**
 * Shares the torque of a drive that friction holds at rest. Rigid friction leaves the shares open; here every
 * dry friction, of shaft, bearings and loads, stands at the same part of its limit, and a jammed wheel
 * carries only what the others cannot. That is a choice: it meets both ends of the band in which the drive
 * stays at rest.
 */
export function holdAtRest(drive: Drive, input: DriveInput): void {
  const { work } = drive
  const { left, right } = work
  const frictionTorque = drive.breakaway * drive.frictionTorque
  const leftDuty = leftLoad(drive, input)
  const rightDuty = rightLoad(drive, input)
  findStarts(left, drive, leftDuty, input.sense)
  findStarts(right, drive, rightDuty, input.sense)
  const highest = frictionTorque + left.forwardStart + right.forwardStart
  const lowest = left.backwardStart + right.backwardStart - frictionTorque
  const band = highest - lowest
  const place = band > 0 ? (work.torque - lowest) / band : 1
  // Clamped where a jam, or a start in the next instant, carries more than friction can.
  work.hold = 2 * place - 1
  if (work.hold > 1) work.hold = 1
  if (work.hold < -1) work.hold = -1
  work.rotorDrag = work.hold * frictionTorque
  hold(left, drive, leftDuty, input.sense)
  hold(right, drive, rightDuty, input.sense)
  if (input.jammed === 'left') carryRest(left, drive)
  if (input.jammed === 'right') carryRest(right, drive)
}

function findStarts(wheel: WheelWork, drive: Drive, load: Load, sense: number): void {
  const friction = drive.breakaway * (load.passive + drive.bearingTorque)
  const forward = sense * load.active + friction
  const backward = sense * load.active - friction
  const opposing = 1 / drive.forwardEfficiency
  const driving = drive.backwardEfficiency
  wheel.forwardStart = (forward * (forward >= 0 ? opposing : driving)) / drive.ratio
  wheel.backwardStart = (backward * (backward <= 0 ? opposing : driving)) / drive.ratio
}

function hold(wheel: WheelWork, drive: Drive, load: Load, sense: number): void {
  const part = drive.work.hold
  const dry = part * drive.breakaway
  wheel.load = sense * load.active + dry * load.passive
  wheel.drag = wheel.load + dry * drive.bearingTorque
  wheel.mesh = wheel.drag
  wheel.wormTorque = wheel.backwardStart + ((part + 1) / 2) * (wheel.forwardStart - wheel.backwardStart)
}

/** Gives a jammed wheel what motor or hand has left over. */
function carryRest(wheel: WheelWork, drive: Drive): void {
  const { work } = drive
  const excess = work.torque - work.rotorDrag - work.left.wormTorque - work.right.wormTorque
  wheel.wormTorque += excess
  const torque = excess * drive.ratio * drive.forwardEfficiency
  wheel.load += torque
  wheel.drag += torque
  wheel.mesh += torque
}
