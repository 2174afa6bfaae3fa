/** A machine turned in the core alone, and how far its parts have come by what their poses say. */
import { TICKS_PER_TURN, advanceTicks, noTurns } from '../../sim/drive/turns.ts'
import type { WormTurns } from '../../sim/drive/turns.ts'
import type { Hand } from '../../sim/gear/gear-numbers.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import type { PartName } from '../../sim/pose/parts.ts'
import { type PosePlan, newPoses, poseOffset, posePlan, writePoses } from '../../sim/pose/pose.ts'
import { bootCleaner } from './machines.ts'

/** What single precision and unwrapping leave of a place read from a pose [turn] */
export const POSE_ERROR = 1e-6

const plans = new Map<string, PosePlan>()

/** The boot cleaner with other counts. */
export function planOf(wormStarts: number, wheelTeeth: number, hand: Hand = 'right'): PosePlan {
  const key = `${wormStarts}/${wheelTeeth}/${hand}`
  const gearing = { ...bootCleaner.gearing, wormStarts, wheelTeeth, hand }
  const plan = plans.get(key) ?? posePlan(machineLayout({ ...bootCleaner, gearing }))
  plans.set(key, plan)
  return plan
}

type Spinning = 'rotor' | 'leftWheel' | 'rightWheel'

/** About which axis a part turns: where that component of the quaternion stands in a pose */
const COMPONENT: Readonly<Record<Spinning, number>> = { rotor: 5, leftWheel: 4, rightWheel: 4 }

/** Angle of a part about its axis as a part of a turn, from the quaternion of its pose. */
function turnOf(poses: Float32Array, part: Spinning): number {
  const at = poseOffset(part)
  return Math.atan2(poses[at + COMPONENT[part]]!, poses[at + 6]!) / Math.PI
}

/** Turns about +z, and about +y, with sign [turn] */
export interface Turned {
  readonly worm: number
  readonly left: number
  readonly right: number
}

const PARTS: readonly Spinning[] = ['rotor', 'leftWheel', 'rightWheel']
/** Few enough that no part makes half a turn between two looks */
const LOOKS_A_TURN = 4

/**
 * Turns the worm by whole ticks, a quarter turn at a time, and adds up from look to look how far each part came. Looks
 * on until `seen` says that it has seen enough.
 */
export function turnByTicks(plan: PosePlan, ticks: number, seen?: (turned: Turned) => boolean): Turned {
  const turns = noTurns()
  const poses = newPoses()
  const sums = [0, 0, 0]
  const last = PARTS.map((part) => turnOf(writePoses(poses, plan, turns, 0), part))
  const looks = Math.ceil((Math.abs(ticks) / TICKS_PER_TURN) * LOOKS_A_TURN)
  let done = 0
  for (let look = 1; look <= looks; look++) {
    const until = Math.round((ticks * look) / looks)
    advanceTicks(turns, until - done)
    done = until
    writePoses(poses, plan, turns, 0)
    PARTS.forEach((part, i) => {
      const now = turnOf(poses, part)
      const moved = now - last[i]!
      sums[i]! += moved - Math.round(moved)
      last[i] = now
    })
    if (seen?.({ worm: sums[0]!, left: sums[1]!, right: sums[2]! })) break
  }
  return { worm: sums[0]!, left: sums[1]!, right: sums[2]! }
}

export const turnWorm = (plan: PosePlan, turns: number): Turned =>
  turnByTicks(plan, Math.round(turns * TICKS_PER_TURN))

/** Where a point that is fixed to a part has come to, from `from` to `to`, seen from the part's own axis. */
export function carried(
  plan: PosePlan,
  part: PartName,
  [x, y, z]: readonly [number, number, number],
  to: WormTurns,
): readonly [number, number, number] {
  const poses = writePoses(newPoses(), plan, to, 0)
  const at = poseOffset(part)
  const [qx, qy, qz, qw] = [poses[at + 3]!, poses[at + 4]!, poses[at + 5]!, poses[at + 6]!]
  // v + 2 q x (q x v + w v)
  const [tx, ty, tz] = [qy * z - qz * y + qw * x, qz * x - qx * z + qw * y, qx * y - qy * x + qw * z]
  return [x + 2 * (qy * tz - qz * ty), y + 2 * (qz * tx - qx * tz), z + 2 * (qx * ty - qy * tx)]
}
