/** Where every part is and how it is turned: the last step before the picture, shared by the 3D and the drawn view. */
import { type WormTurns, wheelFraction, wormFraction } from '../drive/turns.ts'
import { wayApart } from './apart.ts'
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

/** Angle of the left wheel about +y [rad], within a turn either way; 0 with the mark at its pointer. */
export const leftWheelAngle = (layout: Layout, turns: WormTurns): number =>
  layout.leftSense * TURN * wheelFraction(turns, layout.starts, layout.teeth)

/** Angle of the right wheel about +y [rad], within a turn either way; 0 with the mark at its pointer. */
export const rightWheelAngle = (layout: Layout, turns: WormTurns): number =>
  layout.rightSense * TURN * wheelFraction(turns, layout.starts, layout.teeth)

function write(
  out: Float32Array,
  part: PartName,
  x: number,
  y: number,
  z: number,
  aboutY: number,
  aboutZ: number,
): void {
  const at = poseOffset(part)
  out[at] = x
  out[at + 1] = y
  out[at + 2] = z
  out[at + 3] = 0
  out[at + 4] = Math.sin(aboutY / 2)
  out[at + 5] = Math.sin(aboutZ / 2)
  out[at + 6] = Math.cos((aboutY === 0 ? aboutZ : aboutY) / 2)
}

/**
 * Writes the pose of every part, also of those that this machine lacks, into `out` and allocates nothing. Angles are
 * reduced to parts of a turn in double precision before they are stored in single.
 *
 * apart - 0 together, 1 all parts off
 */
export function writePoses(out: Float32Array, layout: Layout, turns: WormTurns, apart: number): Float32Array {
  const worm = wormAngle(turns)
  const left = leftWheelAngle(layout, turns)
  const right = rightWheelAngle(layout, turns)
  const leftX = -layout.gears.centreDistance + wayApart('leftWheel', layout, apart)
  const rightX = layout.gears.centreDistance + wayApart('rightWheel', layout, apart)
  const { brush } = layout.output
  write(out, 'case', 0, wayApart('case', layout, apart), 0, 0, 0)
  write(out, 'tray', 0, 0, 0, 0, 0)
  write(out, 'motor', 0, 0, wayApart('motor', layout, apart), 0, 0)
  write(out, 'rotor', 0, 0, 0, 0, worm)
  write(out, 'fan', 0, 0, wayApart('fan', layout, apart), 0, worm)
  write(out, 'brushGear', 0, wayApart('brushGear', layout, apart), 0, 0, 0)
  write(out, 'frontBearing', 0, 0, wayApart('frontBearing', layout, apart), 0, 0)
  write(out, 'rearBearing', 0, 0, wayApart('rearBearing', layout, apart), 0, 0)
  write(out, 'leftWheel', leftX, 0, 0, left, 0)
  write(out, 'rightWheel', rightX, 0, 0, right, 0)
  write(out, 'leftBrush', leftX, brush + wayApart('leftBrush', layout, apart), 0, left, 0)
  write(out, 'rightBrush', rightX, brush + wayApart('rightBrush', layout, apart), 0, right, 0)
  write(out, 'crank', 0, 0, wayApart('crank', layout, apart), 0, worm)
  return out
}
