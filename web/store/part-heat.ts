/** How warm each part is shown, and on which scale. */
import { CLASS_TEMPERATURE } from '../../sim/heat/insulation.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Bench } from './bench.ts'
import type { HeatLook } from './view.ts'

export interface PartHeat {
  /** [degC] */
  readonly winding: number
  /** Of case and magnets, which are as warm as each other */
  readonly case: number
  /** Of the air, and of all parts that are not computed */
  readonly air: number
  /** Ends of the scale: the air, or what is colder, and the class of the winding */
  readonly from: number
  readonly to: number
  /** Since it was switched on [s]; null is as warm as the bench says */
  readonly seconds: number | null
}

/** Null where the machine has no thermal description. A moment that was looked at counts for that machine only. */
export function partHeat(
  machine: Machine,
  { winding, magnet }: Pick<Bench, 'winding' | 'magnet'>,
  look: HeatLook | null,
): PartHeat | null {
  const { thermal } = machine
  if (!thermal) return null
  const shown = look?.machine === machine ? look : { winding, case: magnet, seconds: null }
  const { ambient: air, insulation } = thermal
  return {
    winding: shown.winding,
    case: shown.case,
    air,
    from: Math.min(air, shown.winding, shown.case),
    to: CLASS_TEMPERATURE[insulation],
    seconds: shown.seconds,
  }
}
