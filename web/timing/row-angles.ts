/** Where the rows of both outputs are now, with what backlash has left of the wheels. */
import type { Play } from '../../sim/drive/play.ts'
import type { WormTurns } from '../../sim/drive/turns.ts'
import type { Layout } from '../../sim/pose/layout.ts'
import { leftWheelAngle, rightWheelAngle } from '../../sim/pose/pose.ts'

/** u: angle of the first right row from the line between the axes, inwards [rad] */
export const rightRowAngle = (layout: Layout, turns: WormTurns, play?: Play): number =>
  layout.output.rightFirstRow + rightWheelAngle(layout, turns, play)

/** The same of the first left row, mirrored so that both grow together; the right one less this is the offset D. */
export const leftRowAngle = (layout: Layout, turns: WormTurns, play?: Play): number =>
  Math.PI - layout.output.leftFirstRow - leftWheelAngle(layout, turns, play)
