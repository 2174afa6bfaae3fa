import type { DriveInput } from '../drive/input.ts'
import type { Machine } from '../machine/machine.ts'
import type { Pair } from './heating-fixed-pair.ts'
import { fixedPair } from './heating-fixed-pair.ts'
import type { HeatPoint } from './heating-point.ts'
import { newHeatPoint, writeRunning } from './heating-point.ts'
import type { HeatingConditions, HeatSource } from './heating-source.ts'
import { heatSource } from './heating-source.ts'

/** Where a machine that runs on and on ends up. */
export interface SettledHeat {
  /** [degC] */
  readonly winding: number
  readonly case: number
  /** The drive at these temperatures */
  readonly point: HeatPoint
}

/** Or why it ends nowhere, as a sentence for the person. */
export interface NoSettling {
  readonly reason: string
}

/** Beyond this temperature of the winding nothing here holds any more [degC]; chosen here, above every class. */
export const HOTTEST = 400

export const RUNAWAY = `no settling: thermal runaway or locked, the winding would pass ${HOTTEST} °C`
const NO_SPEED = 'no settling: the load drives the machine ever faster'

const FINENESS = { nearness: 1e-9, difference: 1e-3 }

/**
 * Temperatures that heat and cooling settle at, resistance and magnets as warm as they make themselves. Null without a
 * thermal description. Where more than one pair would do, it is the coolest, which a machine from cold comes to.
 */
export function settledHeat(
  machine: Machine,
  input: DriveInput,
  conditions: HeatingConditions = {},
): SettledHeat | NoSettling | null {
  const source = heatSource(machine, input, conditions)
  if (!source) return null
  if (source.notComputed !== null) return { reason: source.notComputed }
  const point = newHeatPoint()
  const found = settledPair(source, point)
  if (!found) return { reason: Number.isFinite(point.speed) ? RUNAWAY : NO_SPEED }
  writeRunning(point, source, found[0], found[1])
  return { winding: found[0], case: found[1], point }
}

/** Winding and case [degC]; null where nothing settles. */
export function settledPair(source: HeatSource, point = newHeatPoint()): Pair | null {
  const { ambient } = source.thermal
  return fixedPair([ambient, ambient], HOTTEST, FINENESS, ([winding, body]) => {
    writeRunning(point, source, winding, body)
    point.before = point.speed
    const heat = point.windingHeat + point.caseHeat
    const nextBody = ambient + heat / point.caseToAir
    return [nextBody + point.windingHeat / point.windingToCase, nextBody]
  })
}
