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
  /** Ends of the scale: the air, or what is colder, and the class of the winding, or what the hottest needs */
  readonly from: number
  readonly to: number
  /** Since it was switched on [s]; null is as warm as the bench says */
  readonly seconds: number | null
}

/** Even tens, and the least that a scale spans [K] */
const TEN = 10
/** Part of the way from the air to the class above which the class ends the scale. Our choice. */
const FAR = 0.6

/**
 * Where the scale ends [degC]: at the class, so that tones mean the same from machine to machine; at the next ten above
 * the hottest where that is so far below the class, or above it, that all would look alike.
 */
export function scaleEnd(from: number, hottest: number, limit: number): number {
  const next = TEN * Math.ceil(Math.max(hottest, from + TEN) / TEN)
  const near = next - from > FAR * (limit - from) && hottest <= limit
  return near ? limit : next
}

/** Null where the machine has no thermal description. A moment that was looked at counts for that machine only. */
export function partHeat(
  machine: Machine,
  { winding, magnet }: Pick<Bench, 'winding' | 'magnet'>,
  look: HeatLook | null,
): PartHeat | null {
  const { thermal } = machine
  if (!thermal) return null
  const now = { winding, case: magnet, seconds: null, hottest: Math.max(winding, magnet) }
  const shown = look?.machine === machine ? look : now
  const { ambient: air, insulation } = thermal
  const from = Math.min(air, shown.winding, shown.case)
  return {
    winding: shown.winding,
    case: shown.case,
    air,
    from,
    to: scaleEnd(from, shown.hottest, CLASS_TEMPERATURE[insulation]),
    seconds: shown.seconds,
  }
}
