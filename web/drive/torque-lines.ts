/**
 * Torque over speed: the motor's line at every setting, as read off the drive at speeds that are held, and what the
 * wheels and the shaft's own losses ask for at the same speeds.
 */
import type { Drive } from '../../sim/drive/drive.ts'
import { type DriveInput, firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { type Reading, newReading, readAt } from '../../sim/drive/reading.ts'

/** One setting of the motor, at each of the speeds */
export interface TorqueLine {
  /** Of the motor [N m] */
  readonly torque: Float64Array
  /** Motor current [A] */
  readonly currentMean: Float64Array
  readonly currentRms: Float64Array
  /** Into the machine [W] */
  readonly inputPower: Float64Array
  /** What the shaft gives, friction and fan taken off [W]; below 0 where it must be driven */
  readonly shaftPower: Float64Array
  /** Of these two, 0 to 1; 0 where the shaft must be driven */
  readonly efficiency: Float64Array
  /** Heat that arises in winding and case but for the fan's [W], for what may be held */
  readonly copperLoss: Float64Array
  readonly brushLoss: Float64Array
  readonly frictionLoss: Float64Array
}

export interface TorqueLines {
  /** Worm speed from 0, in the sense in which it is driven [rad/s] */
  readonly speed: Float64Array
  readonly lines: readonly TorqueLine[]
}

const SPEEDS = 81
/** The speeds end where the strongest line has fallen to this part of its standstill, or so far beyond light running. */
const END_PART = 0.004
const BEYOND = 1.3
const SLICES = 400

/** All settings from standstill to where the strongest of them ends; null without a motor, or where it is not computed. */
export function torqueLines(drive: Drive): TorqueLines | null {
  if (drive.crankSpeeds.length > 0 || drive.notComputed !== null) return null
  const known = KNOWN.get(drive)
  if (known) return known
  const end = lastSpeed(drive)
  const speed = Float64Array.from({ length: SPEEDS }, (_, i) => (end * i) / (SPEEDS - 1))
  const lines = Array.from({ length: drive.steps }, (_, setting) => lineAt(drive, setting, speed))
  const found = { speed, lines }
  KNOWN.set(drive, found)
  return found
}

/** Lines belong to a compiled drive, warm as it is. */
const KNOWN = new WeakMap<Drive, TorqueLines>()

const READING = newReading()

/** What is read at a held speed [rad/s], in the sense in which it is driven; good until the next one is asked for. */
export const heldReading = (drive: Drive, input: DriveInput, speed: number): Reading =>
  readAt(READING, drive, input, input.sense * speed, 0)

function lineAt(drive: Drive, setting: number, speed: Float64Array): TorqueLine {
  const input = { ...firstInput(), setting }
  const column = () => new Float64Array(speed.length)
  const line = {
    torque: column(),
    currentMean: column(),
    currentRms: column(),
    inputPower: column(),
    shaftPower: column(),
    efficiency: column(),
    copperLoss: column(),
    brushLoss: column(),
    frictionLoss: column(),
  }
  speed.forEach((w, i) => {
    const reading = heldReading(drive, input, w)
    const taken = reading.inputPower + reading.coreLoss
    const given = reading.motorTorque * w - reading.frictionLoss - reading.fanLoss
    line.torque[i] = reading.motorTorque
    line.currentMean[i] = reading.currentMean
    line.currentRms[i] = reading.currentRms
    line.inputPower[i] = taken
    line.shaftPower[i] = given
    line.efficiency[i] = given > 0 && taken > 0 ? given / taken : 0
    line.copperLoss[i] = reading.copperLoss
    line.brushLoss[i] = reading.brushLoss
    line.frictionLoss[i] = reading.frictionLoss
  })
  return line
}

/** [rad/s] */
function lastSpeed(drive: Drive): number {
  const inputs = Array.from({ length: drive.steps }, (_, setting) => ({ ...firstInput(), setting }))
  const light = Math.max(...inputs.map((input) => Math.abs(operatingPoint(drive, input)?.speed ?? 0)))
  const standstill = Math.max(...inputs.map((input) => heldReading(drive, input, 0).motorTorque))
  const far = light > 0 ? BEYOND * light : FIRST_GUESS
  const slice = far / SLICES
  for (let speed = light; speed < far; speed += slice) {
    const strongest = Math.max(...inputs.map((input) => heldReading(drive, input, speed).motorTorque))
    if (strongest <= END_PART * standstill) return speed
  }
  return far
}

/** Where nothing turns even lightly [rad/s] */
const FIRST_GUESS = 100
/** Standstill has no sense of motion; what is asked as it begins to turn is asked from here on [rad/s]. */
const BARELY = 1e-6

/** What a steady speed asks of the motor: outputs, bearings, meshes, friction and fan [N m] */
export function demandTorque(drive: Drive, input: DriveInput, speed: number): number {
  const w = Math.max(speed, BARELY)
  const reading = heldReading(drive, { ...input, jammed: 'none' }, w)
  return (
    (reading.frictionLoss +
      reading.fanLoss +
      reading.meshLossLeft +
      reading.meshLossRight +
      reading.bearingLossLeft +
      reading.bearingLossRight +
      reading.outputLeft +
      reading.outputRight) /
    w
  )
}

export const demandLine = (drive: Drive, input: DriveInput, speeds: Float64Array): Float64Array =>
  speeds.map((speed) => demandTorque(drive, input, speed))
