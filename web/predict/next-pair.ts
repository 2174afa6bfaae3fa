/** The pairs of counts that are asked one after another, from a whole answer to one between two worm turns. */
import { checkMachine } from '../../sim/machine/check.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { hasErrors } from '../../sim/machine/problem.ts'
import type { Pair } from '../store/prediction.ts'

const PAIRS: readonly Pair[] = [
  { starts: 1, teeth: 20 },
  { starts: 2, teeth: 27 },
  { starts: 3, teeth: 31 },
  { starts: 1, teeth: 30 },
  { starts: 2, teeth: 40 },
  { starts: 4, teeth: 26 },
  { starts: 1, teeth: 24 },
  { starts: 3, teeth: 40 },
]

export const pairOf = ({ gearing }: Machine): Pair => ({
  starts: gearing.wormStarts,
  teeth: gearing.wheelTeeth,
})

const samePair = (a: Pair, b: Pair): boolean => a.starts === b.starts && a.teeth === b.teeth

export const withPair = (machine: Machine, { starts, teeth }: Pair): Machine => ({
  ...machine,
  gearing: { ...machine.gearing, wormStarts: starts, wheelTeeth: teeth },
})

/** The same machine with the next counts of the list that it can be built with; itself when there are none. */
export function withNextPair(machine: Machine): Machine {
  const now = pairOf(machine)
  const place = PAIRS.findIndex((pair) => samePair(pair, now))
  const order = [...PAIRS.slice(place + 1), ...PAIRS.slice(0, place + 1)]
  const fits = order.find((pair) => !samePair(pair, now) && !hasErrors(checkMachine(withPair(machine, pair))))
  return fits ? withPair(machine, fits) : machine
}
