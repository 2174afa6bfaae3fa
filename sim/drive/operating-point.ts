import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import { takeInput } from './motion.ts'
import { meltingSquare } from './melting.ts'
import type { Reading } from './reading.ts'
import { newReading, readAt } from './reading.ts'
import { steadySpeed } from './steady-speed.ts'
import { solveTorque } from './torque.ts'

/** Where a drive settles, at cycle means. */
export interface OperatingPoint {
  readonly reading: Reading
  /** Worm speed about +z [rad/s] */
  readonly speed: number
  /** Powered but not turning */
  readonly stalled: boolean
  /** Held by a jam */
  readonly locked: boolean
  /** A load drives its wheel */
  readonly overhauling: boolean
  /** Fuse or overload switch would open in time */
  readonly overLimit: boolean
  /** Motor torque at standstill [N m]; 0 for a crank, whose hand has no set limit */
  readonly stallTorque: number
}

/** Where a drive settles, or why it does not, as a sentence for the person. */
export type Settling =
  | { readonly point: OperatingPoint; readonly reason: null }
  | { readonly point: null; readonly reason: string }

/** Steady running with this input; protection closed. */
export function settling(drive: Drive, input: DriveInput): Settling {
  const { work } = drive
  if (drive.notComputed !== null) return { point: null, reason: drive.notComputed }
  takeInput(drive, input)
  const speed = input.sense * steadySpeed(drive, input)
  if (!Number.isFinite(speed)) return { point: null, reason: whyRunaway(input) }
  const reading = readAt(newReading(), drive, input, speed, 0)
  const { melting } = drive
  const point = {
    reading,
    speed,
    stalled: input.connected && speed === 0,
    locked: input.jammed !== 'none' && speed === 0,
    overhauling: reading.outputLeft < 0 || reading.outputRight < 0,
    overLimit: melting !== null && meltingSquare(melting, work.cycle) > melting.square,
    stallTorque: stallTorque(drive, input),
  }
  return { point, reason: null }
}

/** Null where the drive does not settle, for which `settling` tells the reason. */
export const operatingPoint = (drive: Drive, input: DriveInput): OperatingPoint | null =>
  settling(drive, input).point

const whyRunaway = (input: DriveInput): string =>
  input.connected
    ? 'Nothing takes up the torque, and the machine gains speed without end; give it a load or friction.'
    : 'The loads drive the machine ever faster, and nothing in it holds them back; give it friction.'

/** Exact, as the reading before it was. */
function stallTorque(drive: Drive, input: DriveInput): number {
  drive.work.speed = 0
  solveTorque(drive, input)
  return drive.work.torque
}
