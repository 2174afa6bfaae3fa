/** Where every part is and how it is turned: the last step before the picture, shared by the 3D and the drawn view. */
import type { Play } from '../drive/play.ts'
import { type WormTurns, wheelFraction, wormFraction, writeFractions } from '../drive/turns.ts'
import { BEGINS, eased, wholeWay } from './apart.ts'
import type { Layout } from './layout.ts'
import { PART_NAMES, type PartName } from './parts.ts'

/** x y z [mm], then the quaternion qx qy qz qw */
export const POSE_STRIDE = 7

export const newPoses = (): Float32Array => new Float32Array(PART_NAMES.length * POSE_STRIDE)

const INDEX = Object.fromEntries(PART_NAMES.map((part, index) => [part, index])) as Record<PartName, number>

/** Where a part's pose begins in the array. */
export const poseOffset = (part: PartName): number => INDEX[part] * POSE_STRIDE

const TURN = 2 * Math.PI

/** Angle of the worm about +z [rad], in [0, 2 pi] */
export const wormAngle = (turns: WormTurns): number => TURN * wormFraction(turns)

/** Turns of a wheel for a lag counted in turns of the worm. */
const wheelLag = ({ starts, teeth }: Layout, lag: number): number => (lag * starts) / teeth

/**
 * Angle of the left wheel about +y [rad], within a turn either way; 0 with the mark at its pointer. With `play` it is
 * where the flanks have left the wheel, without it where the exact ratio puts it.
 */
export const leftWheelAngle = (layout: Layout, turns: WormTurns, play?: Play): number =>
  layout.leftSense *
  TURN *
  (wheelFraction(turns, layout.starts, layout.teeth) + wheelLag(layout, play?.left ?? 0))

/** The same of the right wheel. */
export const rightWheelAngle = (layout: Layout, turns: WormTurns, play?: Play): number =>
  layout.rightSense *
  TURN *
  (wheelFraction(turns, layout.starts, layout.teeth) + wheelLag(layout, play?.right ?? 0))

type Spin = 'still' | 'worm' | 'left' | 'right'

const SPINS: Readonly<Record<PartName, Spin>> = {
  case: 'still',
  tray: 'still',
  motor: 'still',
  rotor: 'worm',
  fan: 'worm',
  brushGear: 'still',
  frontBearing: 'still',
  rearBearing: 'still',
  leftWheel: 'left',
  rightWheel: 'right',
  leftBrush: 'left',
  rightBrush: 'right',
  crank: 'worm',
  plug: 'still',
  battery: 'still',
  transformer: 'still',
  rectifier: 'still',
  capacitor: 'still',
  setting: 'still',
  leads: 'still',
}

const SPIN_CODE: Readonly<Record<Spin, number>> = { still: 0, worm: 1, left: 2, right: 3 }

/** What `writePoses` needs of a layout, as numbers only: three coordinates for each part. */
export interface PosePlan {
  /** Where a part belongs [mm] */
  readonly place: Float64Array
  /** How far it comes off [mm] */
  readonly way: Float64Array
  /** Where on the slider, 0 to 1, that move begins */
  readonly begins: Float64Array
  readonly spins: Uint8Array
  /** Of the worm's and the wheels' turns, for the frame that is being written */
  readonly fractions: Float64Array
  readonly layout: Layout
}

const AXIS: Readonly<Record<PartName, 0 | 1 | 2>> = {
  case: 1,
  tray: 1,
  motor: 2,
  rotor: 2,
  fan: 2,
  brushGear: 1,
  frontBearing: 2,
  rearBearing: 2,
  leftWheel: 0,
  rightWheel: 0,
  leftBrush: 1,
  rightBrush: 1,
  crank: 2,
  plug: 1,
  battery: 1,
  transformer: 1,
  rectifier: 1,
  capacitor: 1,
  setting: 1,
  leads: 1,
}

export function posePlan(layout: Layout): PosePlan {
  const place = new Float64Array(3 * PART_NAMES.length)
  const way = new Float64Array(3 * PART_NAMES.length)
  const begins = new Float64Array(3 * PART_NAMES.length)
  const spins = Uint8Array.from(PART_NAMES, (part) => SPIN_CODE[SPINS[part]])
  const comesOff = (part: PartName, axis: 0 | 1 | 2, as: PartName) => {
    way[3 * INDEX[part] + axis] = wholeWay(as, layout)
    begins[3 * INDEX[part] + axis] = BEGINS[as]
  }
  for (const part of PART_NAMES) comesOff(part, AXIS[part], part)
  // A brush sits on its wheel's shaft, so it also goes out with the wheel.
  comesOff('leftBrush', 0, 'leftWheel')
  comesOff('rightBrush', 0, 'rightWheel')
  for (const part of ['leftWheel', 'leftBrush'] as const)
    place[3 * INDEX[part]] = -layout.gears.centreDistance
  for (const part of ['rightWheel', 'rightBrush'] as const)
    place[3 * INDEX[part]] = layout.gears.centreDistance
  for (const part of ['leftBrush', 'rightBrush'] as const) place[3 * INDEX[part] + 1] = layout.output.brush
  return { place, way, begins, spins, fractions: new Float64Array(2), layout }
}

/**
 * Writes the pose of every part, also of those that this machine lacks, into `out` and allocates nothing. Angles are
 * reduced to parts of a turn in double precision before they are stored in single.
 *
 * apart - 0 together, 1 all parts off
 * play  - where backlash has left the wheels; without it they stand where the exact ratio puts them
 */
export function writePoses(
  out: Float32Array,
  plan: PosePlan,
  turns: WormTurns,
  apart: number,
  play?: Play,
): Float32Array {
  const { place, way, begins, spins, fractions, layout } = plan
  writeFractions(fractions, turns, layout.starts, layout.teeth)
  const worm = Math.PI * fractions[0]!
  let left = fractions[1]!
  let right = fractions[1]!
  if (play !== undefined) {
    left += (play.left * layout.starts) / layout.teeth
    right += (play.right * layout.starts) / layout.teeth
  }
  left *= layout.leftSense * Math.PI
  right *= layout.rightSense * Math.PI
  for (let part = 0; part < spins.length; part++) {
    const at = part * POSE_STRIDE
    for (let axis = 0; axis < 3; axis++) {
      const j = 3 * part + axis
      out[at + axis] = place[j]! + way[j]! * eased(apart, begins[j]!)
    }
    const spin = spins[part]!
    const half = spin === 0 ? 0 : spin === 1 ? worm : spin === 2 ? left : right
    out[at + 3] = 0
    out[at + 4] = spin > 1 ? Math.sin(half) : 0
    out[at + 5] = spin === 1 ? Math.sin(half) : 0
    out[at + 6] = Math.cos(half)
  }
  return out
}
