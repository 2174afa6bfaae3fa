import type { DriveInput } from '../drive/input.ts'
import type { Machine } from '../machine/machine.ts'
import { TIME } from '../numeric/dormand-prince.ts'
import { GIVEN_OFF, HEAT } from './heating-equations.ts'
import type { HeatingColumns, HeatPassages } from './heating-record.ts'
import { columnsOf } from './heating-record.ts'
import type { HeatingConditions } from './heating-source.ts'
import { heatSource } from './heating-source.ts'
import { newHeating, stretch } from './heating-stretch.ts'

export interface HeatingOptions extends HeatingConditions {
  /** [s], > 0 */
  readonly duration: number
  /** Temperatures to begin with [degC]; those of the air where left out */
  readonly from?: { readonly winding: number; readonly case: number }
  /** Switched on and off by turns [s], each > 0; on throughout where left out */
  readonly duty?: { readonly on: number; readonly off: number }
  /** Even parts of the duration at whose ends a row is kept; the moments of switching have rows besides */
  readonly parts?: number
  /** Whether a fuse or overload switch that opens ends the heating; otherwise its moment is only told */
  readonly protectionActs?: boolean
}

/** What came of a run. */
export interface HeatingRun {
  readonly columns: HeatingColumns
  readonly passages: HeatPassages
  /** When fuse or overload switch opens [s]; Infinity is not in this run */
  readonly opened: number
  /** When the motor, switched on, comes to rest by growing weak, or does not start [s]; Infinity is never */
  readonly stalled: number
  /** Heat that arose, and that the air took, in the whole run [J] */
  readonly heat: number
  readonly givenOff: number
  /** Why the run ended before its time, as a sentence; null where it did not */
  readonly ended: string | null
}

const PARTS = 240

/**
 * Warming and cooling of a machine, at a speed that is always the settled one. Yields how much of it is done, 0 to 1,
 * after each step, so that it can be abandoned; returns null without a thermal description.
 */
export function* heatingRun(
  machine: Machine,
  input: DriveInput,
  options: HeatingOptions,
): Generator<number, HeatingRun | null> {
  const source = heatSource(machine, input, options)
  if (!source) return null
  const { duration, duty, parts = PARTS, protectionActs = false } = options
  const { ambient } = source.thermal
  const from = options.from ?? { winding: ambient, case: ambient }
  const heating = newHeating(source, from, duration, parts, protectionActs)
  const { stepper } = heating
  for (let on = true; stepper.y[TIME]! < duration && heating.ended === null; on = !on)
    yield* stretch(heating, on || !duty, duty ? (on ? duty.on : duty.off) : duration)
  return {
    columns: columnsOf(heating.rows),
    passages: heating.passages,
    opened: heating.opened,
    stalled: heating.stalled,
    heat: stepper.y[HEAT]!,
    givenOff: stepper.y[GIVEN_OFF]!,
    ended: heating.ended,
  }
}
