/** The motor's lines at every setting with what goes with them, and what is asked for at the same speeds. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { type TorqueSpeedCurve, demandAt } from '../../sim/run/torque-speed.ts'

/** One setting of the motor, at each of the speeds */
export interface TorqueLine extends Pick<
  TorqueSpeedCurve,
  'torque' | 'currentMean' | 'currentRms' | 'inputPower'
> {
  /** What the shaft gives, friction and fan taken off [W]; below 0 where it must be driven */
  readonly shaftPower: Float64Array
  /** Of what is taken in, 0 to 1; 0 where the shaft must be driven */
  readonly efficiency: Float64Array
  /** Heat that arises in the motor but for its fan's [W] */
  readonly copperLoss: Float64Array
  readonly brushLoss: Float64Array
  readonly frictionLoss: Float64Array
}

export interface TorqueLines {
  /** Worm speed from 0, in the sense in which it is driven [rad/s] */
  readonly speed: Float64Array
  readonly lines: readonly TorqueLine[]
}

/** Null where there are no lines: a crank, or chains that are not computed. */
export function torqueLines(drive: Drive, curves: readonly TorqueSpeedCurve[]): TorqueLines | null {
  const [first] = curves
  if (!first || curves.length !== drive.circuits.length) return null
  return { speed: first.speed, lines: curves.map((curve) => lineOf(drive, curve)) }
}

function lineOf(drive: Drive, curve: TorqueSpeedCurve): TorqueLine {
  const { speed, torque, currentMean, currentRms, inputPower, setting } = curve
  const { resistance, brushDrop } = drive.circuits[setting]!.winding
  const frictionLoss = speed.map((w) => (drive.frictionTorque + drive.viscousTorque * w) * w)
  const shaftPower = speed.map((w, i) => torque[i]! * w - frictionLoss[i]! - drive.fanTorque * w ** 3)
  return {
    torque,
    currentMean,
    currentRms,
    inputPower,
    shaftPower,
    efficiency: shaftPower.map((given, i) => (given > 0 && inputPower[i]! > 0 ? given / inputPower[i]! : 0)),
    copperLoss: currentRms.map((rms) => resistance * rms * rms),
    brushLoss: currentMean.map((mean) => brushDrop * mean),
    frictionLoss,
  }
}

/** What a steady speed [rad/s] asks of the motor: outputs, bearings, meshes, friction and fan [N m] */
export const demandTorque = (drive: Drive, input: DriveInput, speed: number): number =>
  demandAt(drive, input, speed, 1)
