/** Rows of the two outputs that would strike each other, and the tooth that cures it. */
import { hubRoom, leastClearance } from '../gear/row-clearance.ts'
import { nearestClearPhase, rowOffset } from '../gear/timing.ts'
import type { Machine } from './machine.ts'
import { outputTiming } from './output-timing.ts'
import type { Problem } from './problem.ts'

const length = (mm: number): string => `${mm.toFixed(2)} mm`

/** Numbers that other checks speak of already leave nothing to say here. */
function canBeTimed({ outputs, gearing }: Pick<Machine, 'gearing' | 'outputs'>): boolean {
  const { hubDiameter, sweepDiameter, tufts } = outputs
  return (
    tufts >= 1 &&
    sweepDiameter > hubDiameter &&
    gearing.wheelTeeth >= 1 &&
    outputs.toothOffset < gearing.wheelTeeth
  )
}

export function outputClash(machine: Pick<Machine, 'gearing' | 'outputs'>): readonly Problem[] {
  if (!canBeTimed(machine)) return []
  const pair = outputTiming(machine)
  const { toothOffset } = machine.outputs
  if (hubRoom(pair.rows) <= 0) return []
  const { distance } = leastClearance(pair.rows, rowOffset(pair, toothOffset))
  if (distance > pair.need) return []
  const clear = nearestClearPhase(pair, toothOffset)
  const cure =
    clear === null
      ? 'no tooth clears them; make the sweep smaller, the rows thinner or fewer'
      : `at tooth ${clear.toothOffset} they keep ${length(clear.distance)}`
  const message =
    `rows of the two outputs must keep more than ${length(pair.need)} from each other, middle to middle, over a ` +
    `whole turn, got ${length(distance)} at tooth ${toothOffset}; ${cure}`
  return [{ path: 'outputs.toothOffset', severity: 'warning', message }]
}
