import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import { demandTorque, loadMeshes, takeInput } from '../drive/motion.ts'
import { newReading, readAt } from '../drive/reading.ts'
import { solveTorque } from '../drive/torque.ts'
import { lastPlace } from '../gear/last-place.ts'
import type { Curve } from '../numeric/brent.ts'
import { brent } from '../numeric/brent.ts'
import { chartSpeed } from './chart-speed.ts'

/** Where motor torque and demand meet. */
export interface Crossing {
  /** In the commanded sense [rad/s] */
  readonly speed: number
  /** [N m] */
  readonly torque: number
  /** Whether the drive comes back to it after a push: the motor's torque falls below the demand beyond it */
  readonly isStable: boolean
}

/** Steady running of one setting from standstill up, as columns of equal length, in the commanded sense. */
export interface TorqueSpeedCurve {
  readonly setting: number
  /** [rad/s] */
  readonly speed: Float64Array
  /** Of the motor, and what loads and losses ask of it at that speed [N m] */
  readonly torque: Float64Array
  readonly demand: Float64Array
  /** [A] */
  readonly currentMean: Float64Array
  readonly currentRms: Float64Array
  /** From wall or battery [W] */
  readonly inputPower: Float64Array
  /** Torque that starts the drive from standstill [N m] */
  readonly breakawayTorque: number
  readonly crossings: readonly Crossing[]
}

/** `n` - points, >= 2; `top` - the highest speed [rad/s], > 0. Exact at every point. */
export function torqueSpeedCurve(
  drive: Drive,
  input: DriveInput,
  n: number,
  top = chartSpeed(drive, input),
): TorqueSpeedCurve {
  const column = (): Float64Array => new Float64Array(n)
  const curve = {
    setting: input.setting,
    speed: column().map((_, i) => (top * i) / (n - 1)),
    torque: column(),
    demand: column(),
    currentMean: column(),
    currentRms: column(),
    inputPower: column(),
  }
  const reading = newReading()
  for (let i = 0; i < n; i++) {
    const speed = curve.speed[i]!
    readAt(reading, drive, input, input.sense * speed, 0)
    curve.torque[i] = reading.motorTorque
    curve.currentMean[i] = reading.currentMean
    curve.currentRms[i] = reading.currentRms
    curve.inputPower[i] = drive.supplyFrequency > 0 ? reading.wallPower : reading.inputPower
    curve.demand[i] = demandAt(drive, input, speed, 1)
  }
  return {
    ...curve,
    breakawayTorque: demandAt(drive, input, 0, drive.breakaway),
    crossings: findCrossings(drive, input, curve),
  }
}

const settings = (drive: Drive, input: DriveInput): readonly DriveInput[] =>
  Array.from({ length: drive.circuits.length }, (_, setting) => ({ ...input, setting }))

/** The highest of all settings [rad/s] */
const highest = (drive: Drive, input: DriveInput): number =>
  Math.max(...settings(drive, input).map((each) => chartSpeed(drive, each)))

/** All settings on the same axis of speed, a curve at a time, so that it can be stopped in between. */
export function* torqueSpeedCurves(
  drive: Drive,
  input: DriveInput,
  n: number,
  top = highest(drive, input),
): Generator<TorqueSpeedCurve, void> {
  for (const each of settings(drive, input)) yield torqueSpeedCurve(drive, each, n, top)
}

/** What forward running at a steady speed asks of the motor [N m]; no current is looked for. */
export function demandAt(drive: Drive, input: DriveInput, speed: number, stiction: number): number {
  const { work } = drive
  work.speed = speed
  work.motion = 1
  work.acceleration = 0
  work.stiction = stiction
  loadMeshes(drive, input)
  demandTorque(drive)
  work.stiction = 1
  return work.torque
}

/** Motor torque less demand [N m] */
function surplusAt(drive: Drive, input: DriveInput, speed: number): number {
  const demand = demandAt(drive, input, speed, 1)
  takeInput(drive, input)
  drive.work.exact = true
  drive.work.speed = speed
  solveTorque(drive, input)
  return drive.work.torque - demand
}

function findCrossings(
  drive: Drive,
  input: DriveInput,
  { speed, torque, demand }: Pick<TorqueSpeedCurve, 'speed' | 'torque' | 'demand'>,
): Crossing[] {
  const curve: Curve = { at: (w) => surplusAt(drive, input, w) }
  const found: Crossing[] = []
  for (let i = 1; i < speed.length; i++) {
    const before = torque[i - 1]! - demand[i - 1]!
    const after = torque[i]! - demand[i]!
    if (before > 0 === after > 0) continue
    const at =
      after === 0
        ? lastPlace(speed[i - 1]!, speed[i]!, (w) => curve.at(w) > 0)
        : brent(curve, speed[i - 1]!, speed[i]!, before, after, 0)
    found.push({ speed: at, torque: demandAt(drive, input, at, 1), isStable: before > 0 })
  }
  return found
}
