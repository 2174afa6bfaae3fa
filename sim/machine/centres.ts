/** The two ways to give the distance between the axes, each of which leaves the other to follow. */
import type { Centres } from '../gear/gear-numbers.ts'
import { pairProportions } from '../gear/proportions.ts'
import type { Machine } from './machine.ts'

/** Decimals worth keeping: below a nanometre lies the dust of binary fractions. */
const DECIMALS = 9
const clean = (value: number): number => Number(value.toFixed(DECIMALS))

/** The machine with its axes given in the other way, where they are; the same object where nothing changes. */
export function withCentres(machine: Machine, kind: Centres['kind']): Machine {
  const { gearing } = machine
  if (gearing.centres.kind === kind) return machine
  const { centreDistance, profileShift } = pairProportions(gearing)
  const centres: Centres =
    kind === 'shift'
      ? { kind, profileShift: clean(profileShift) }
      : { kind, centreDistance: clean(centreDistance) }
  return { ...machine, gearing: { ...gearing, centres } }
}
