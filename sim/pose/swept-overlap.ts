/** The space that both outputs sweep through, at the level of the rows. */
import { type Rows, leastClearance } from '../gear/row-clearance.ts'
import { rowOffset } from '../gear/timing.ts'
import type { Machine } from '../machine/machine.ts'
import { outputTiming } from '../machine/output-timing.ts'

/** Pieces of each of the two arcs */
const PIECES = 24

/**
 * Outline of the overlap, x and z [mm] in the machine's frame, all the way round; null where the sweeps do not reach
 * each other. The circle about x = a crosses the middle at the angle acos(a/Rb) either way of -x.
 */
export function overlapZone({
  rows,
}: {
  readonly rows: Rows
}): readonly (readonly [number, number])[] | null {
  const { centreDistance: a, sweepRadius } = rows
  if (sweepRadius <= a) return null
  const reach = Math.acos(a / sweepRadius)
  const angles = Array.from({ length: PIECES }, (_, i) => reach * ((2 * i) / PIECES - 1))
  const right = angles.map((t): [number, number] => [
    a - sweepRadius * Math.cos(t),
    sweepRadius * Math.sin(t),
  ])
  return [...right, ...right.map(([x, z]): [number, number] => [-x, -z])]
}

export interface TimingSign {
  /** x and z [mm], all the way round */
  readonly outline: readonly (readonly [number, number])[]
  /** Whether the rows meet somewhere in a turn: hatch it then. */
  readonly clash: boolean
}

/** Its height is the middle of the rows, `layout.output.brush`. Null where the outputs cannot meet at all. */
export function timingSign(machine: Machine): TimingSign | null {
  const pair = outputTiming(machine)
  const outline = overlapZone(pair)
  if (outline === null) return null
  const least = leastClearance(pair.rows, rowOffset(pair, machine.outputs.toothOffset), pair.need)
  return { outline, clash: least.distance <= pair.need }
}
