import type { Load } from '../machine/machine.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import { leftLoad, rightLoad, wormTorque } from './motion.ts'
import type { WheelWork } from './work.ts'

/**
 * Shares the torque of a drive that friction holds at rest. Rigid friction leaves the shares open; here every dry
 * friction, of shaft, bearings and loads, stands at the same part of its limit, and a jammed wheel carries only what
 * the others cannot. That is a choice: it meets both ends of the band in which the drive stays at rest.
 */
export function holdAtRest(drive: Drive, input: DriveInput): void {
  const { work, frictionTorque } = drive
  const left = leftLoad(drive, input)
  const right = rightLoad(drive, input)
  const highest =
    frictionTorque + breakaway(drive, left, input.sense, 1) + breakaway(drive, right, input.sense, 1)
  const lowest =
    breakaway(drive, left, input.sense, -1) + breakaway(drive, right, input.sense, -1) - frictionTorque
  const band = highest - lowest
  const place = band > 0 ? (work.torque - lowest) / band : 1
  // Clamped where a jam, or a start in the next instant, carries more than friction can.
  const part = 2 * Math.min(1, Math.max(0, place)) - 1
  hold(work.left, drive, left, input.sense, part)
  hold(work.right, drive, right, input.sense, part)
  const excess = work.torque - work.left.wormTorque - work.right.wormTorque - part * frictionTorque
  if (input.jammed === 'left') carryAll(work.left, drive, excess)
  if (input.jammed === 'right') carryAll(work.right, drive, excess)
}

/** Torque at the worm at which one wheel would start in the sense s. */
const breakaway = (drive: Drive, load: Load, sense: number, s: number): number =>
  wormTorque(drive, s, sense * load.active + s * (load.passive + drive.bearingTorque))

/** part: -1 about to turn backward, 1 about to turn forward */
function hold(wheel: WheelWork, drive: Drive, load: Load, sense: number, part: number): void {
  wheel.load = sense * load.active + part * load.passive
  wheel.drag = wheel.load + part * drive.bearingTorque
  wheel.mesh = wheel.drag
  const forward = breakaway(drive, load, sense, 1)
  const backward = breakaway(drive, load, sense, -1)
  wheel.wormTorque = backward + ((part + 1) / 2) * (forward - backward)
}

function carryAll(wheel: WheelWork, drive: Drive, excess: number): void {
  wheel.wormTorque += excess
  const torque = excess * drive.ratio * drive.forwardEfficiency
  wheel.load += torque
  wheel.drag += torque
  wheel.mesh += torque
}
