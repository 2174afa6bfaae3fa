import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import { leftLoad, rightLoad } from './motion.ts'
import type { Load } from '../machine/machine.ts'

/**
 * Sets work.rate to a bound of the rate at which speed settles at any speed up to work.reach [1/s]: the slope
 * of torque over speed on the least inertia, a(w) = (T - D(w))/J, -da/dw <= (motor + bv + 2 cf w + sum (b +
 * 2 c w/u) / (u^2 etaF))/J. Derived here.
 */
export function boundRate(drive: Drive, input: DriveInput): void {
  const { work } = drive
  work.rate = drive.viscousTorque + 2 * drive.fanTorque * work.reach
  // Without a source, only a motor that is turned the wrong way drives a current.
  if (!work.held && (work.live || work.speed < 0)) addMotorSlope(drive, input)
  addSlope(drive, leftLoad(drive, input))
  addSlope(drive, rightLoad(drive, input))
  work.rate /= drive.leastInertia
}

/**
 * With magnets, no period-mean current falls faster with the opposing voltage than through the winding alone:
 * ke^2/R. In series a voltage U that stands still gives T = k U^2/(R + k w)^2, which falls by no more than 2 k T/R,
 * and no torque is more than k i^2 without saturation.
 */
function addMotorSlope({ circuits, work }: Drive, input: DriveInput): void {
  const winding = circuits[input.setting]?.winding
  if (!winding) return
  const k = winding.emfConstant
  if (winding.kind === 'permanent-magnet') work.rate += (k * k) / winding.resistance
  else work.rate += (2 * k * k * work.cycle.square) / winding.resistance
}

/** Adds the slope of a load to the field, because handing the number back could cost a box. */
function addSlope(drive: Drive, load: Load): void {
  const { work, ratio } = drive
  work.rate +=
    (load.linear + (2 * load.quadratic * work.reach) / ratio) / (ratio * ratio * drive.forwardEfficiency)
}
