/** Torque over speed at every setting, with a word on how far it is after each. */
import type { Drive } from '../drive/drive.ts'
import { firstInput } from '../drive/input.ts'
import { operatingPoint } from '../drive/operating-point.ts'
import { chartSpeed } from './chart-speed.ts'
import { type TorqueSpeedCurve, torqueSpeedCurves } from './torque-speed.ts'

/** How far beyond light running a motor is shown that has no speed of its own without torque. Our choice. */
const BEYOND = 1.3

/** The last speed of all settings [rad/s] */
function lastSpeed(drive: Drive): number {
  const inputs = drive.circuits.map((_, setting) => ({ ...firstInput(), setting }))
  const ends = Math.max(...inputs.map((input) => chartSpeed(drive, input)))
  const light = Math.max(...inputs.map((input) => Math.abs(operatingPoint(drive, input)?.speed ?? 0)))
  return light > 0 ? Math.min(ends, BEYOND * light) : ends
}

/** Curves at every setting up to one last speed; yields the part that is done, 0 to 1. */
export function* sweepTorque(drive: Drive, points: number): Generator<number, readonly TorqueSpeedCurve[]> {
  if (drive.circuits.length === 0) return []
  const found: TorqueSpeedCurve[] = []
  for (const curve of torqueSpeedCurves(drive, firstInput(), points, lastSpeed(drive))) {
    found.push(curve)
    yield found.length / drive.circuits.length
  }
  return found
}
