/** Outputs that would strike each other, and what cures it. */
import { hubRoom, leastClearance } from '../gear/row-clearance.ts'
import { nearestClearPhase, rowOffset } from '../gear/timing.ts'
import type { Machine } from './machine.ts'
import { outputTiming } from './output-timing.ts'
import type { Problem } from './problem.ts'
import { toldNumber } from './told.ts'

type Timed = Pick<Machine, 'gearing' | 'outputs'>

const millimetres = (length: number): string => `${toldNumber(length)} mm`
const toHundredths = (length: number): string => `${length.toFixed(2)} mm`

function sweepProblem(mostSweep: number, { outputs }: Timed): Problem | null {
  const { hubDiameter, sweepDiameter } = outputs
  const path = 'outputs.sweepDiameter'
  const got = `got ${millimetres(sweepDiameter)}`
  if (sweepDiameter <= hubDiameter)
    return {
      path,
      severity: 'error',
      message: `must be more than the hub's ${millimetres(hubDiameter)}, ${got}`,
    }
  if (sweepDiameter < mostSweep) return null
  const limit = `must be less than ${toHundredths(mostSweep)} for the tips to pass the hub of the other output`
  return { path, severity: 'warning', message: `${limit}, ${got}` }
}

/** Rows that come too near, with the nearest tooth that clears them; the ways of the tips when they strike a hub. */
export function outputClash(machine: Timed): readonly Problem[] {
  const pair = outputTiming(machine)
  const { toothOffset, sweepDiameter } = machine.outputs
  const sweep = sweepProblem(sweepDiameter + 2 * hubRoom(pair.rows), machine)
  if (sweep !== null) return [sweep]
  const { distance } = leastClearance(pair.rows, rowOffset(pair, toothOffset))
  if (distance > pair.need) return []
  const clear = nearestClearPhase(pair, toothOffset)
  const cure =
    clear === null
      ? 'no tooth clears them; make the sweep smaller, the rows thinner or fewer'
      : `at tooth ${clear.toothOffset} they keep ${toHundredths(clear.distance)}`
  const message =
    `rows of the two outputs must keep more than ${toHundredths(pair.need)} from each other, middle to middle, ` +
    `over a whole turn, got ${toHundredths(distance)} at tooth ${toothOffset}; ${cure}`
  return [{ path: 'outputs.toothOffset', severity: 'warning', message }]
}
