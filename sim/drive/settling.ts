import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import { leftLoad, rightLoad } from './motion.ts'
import type { Load } from '../machine/machine.ts'

/**
 * Sets work.rate to a bound of the rate at which speed settles at any speed up to work.reach [1/s]: the slope
 * of torque over speed on the least inertia, a(w) = (T - D(w))/J, -da/dw <= (ke^2/Ra + bv + 2 cf w + sum (b +
 * 2 c w/u) / (u^2 etaF))/J. No period-mean current falls faster than 1/Ra with the opposing voltage. Derived
 * here.
 */
export function boundRate(drive: Drive, input: DriveInput): void {
  const { work } = drive
  work.rate = drive.viscousTorque + 2 * drive.fanTorque * work.reach
  // Unplugged, only a motor that is turned the wrong way drives a current.
  if (input.connected || work.speed < 0) work.rate += drive.motorSlope
  addSlope(drive, leftLoad(drive, input))
  addSlope(drive, rightLoad(drive, input))
  work.rate /= drive.leastInertia
}

/** Adds the slope of a load to the field, because handing the number back could cost a box. */
function addSlope(drive: Drive, load: Load): void {
  const { work, ratio } = drive
  work.rate +=
    (load.linear + (2 * load.quadratic * work.reach) / ratio) / (ratio * ratio * drive.forwardEfficiency)
}
