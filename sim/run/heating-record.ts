import type { InsulationClass } from '../heat/insulation.ts'
import { AMBER_MARGIN, CLASS_TEMPERATURE } from '../heat/insulation.ts'
import { brent } from '../numeric/brent.ts'
import type { Stepper } from '../numeric/dormand-prince.ts'
import { denseValue, TIME } from '../numeric/dormand-prince.ts'
import { CASE, WINDING } from './heating-equations.ts'
import type { HeatPoint } from './heating-point.ts'

/** Columns of one length, a row for each moment. */
export interface HeatingColumns {
  /** [s] */
  readonly time: Float64Array
  /** [degC] */
  readonly winding: Float64Array
  readonly case: Float64Array
  /** Motor, its sense left out [rad/s] */
  readonly speed: Float64Array
  /** Of the motor [A r.m.s.] */
  readonly current: Float64Array
  /** Heat that arises in winding and case, and that the case gives to the air [W] */
  readonly windingHeat: Float64Array
  readonly caseHeat: Float64Array
  readonly givenOff: Float64Array
}

export type HeatingRows = Record<keyof HeatingColumns, number[]>

export const newHeatingRows = (): HeatingRows => ({
  time: [],
  winding: [],
  case: [],
  speed: [],
  current: [],
  windingHeat: [],
  caseHeat: [],
  givenOff: [],
})

/** Adds a row at a state of the run, at which the point stands. */
export function addRow(rows: HeatingRows, y: Float64Array, point: HeatPoint, ambient: number): void {
  rows.time.push(y[TIME]!)
  rows.winding.push(y[WINDING]!)
  rows.case.push(y[CASE]!)
  rows.speed.push(Math.abs(point.speed))
  rows.current.push(point.current)
  rows.windingHeat.push(point.windingHeat)
  rows.caseHeat.push(point.caseHeat)
  rows.givenOff.push(point.caseToAir * (y[CASE]! - ambient))
}

export const columnsOf = (rows: HeatingRows): HeatingColumns => ({
  time: Float64Array.from(rows.time),
  winding: Float64Array.from(rows.winding),
  case: Float64Array.from(rows.case),
  speed: Float64Array.from(rows.speed),
  current: Float64Array.from(rows.current),
  windingHeat: Float64Array.from(rows.windingHeat),
  caseHeat: Float64Array.from(rows.caseHeat),
  givenOff: Float64Array.from(rows.givenOff),
})

/** When a winding first came to a temperature that matters. */
export interface HeatPassage {
  readonly insulation: InsulationClass
  /** Temperature of the class, or the lower one from which it is called hot */
  readonly level: 'amber' | 'red'
  /** Mean of the winding, as its resistance tells, at that moment [degC] */
  readonly winding: number
  /** [s]; Infinity is not in this run */
  seconds: number
}

/** Each class by the mean of the winding, and by the mean at which the hottest spot gets there. */
export interface HeatPassages {
  readonly byMean: readonly HeatPassage[]
  readonly byHotSpot: readonly HeatPassage[]
}

export const newPassages = (margin: number): HeatPassages => ({
  byMean: passagesAt(0),
  byHotSpot: passagesAt(margin),
})

const passagesAt = (margin: number): HeatPassage[] =>
  (Object.keys(CLASS_TEMPERATURE) as InsulationClass[]).flatMap((insulation) =>
    (['amber', 'red'] as const).map((level) => ({
      insulation,
      level,
      winding: CLASS_TEMPERATURE[insulation] - margin - (level === 'amber' ? AMBER_MARGIN : 0),
      seconds: Infinity,
    })),
  )

const NEARNESS = 1e-12 // of a step

/** Notes what the winding came to within the step just taken, whose dense output is prepared. */
export function notePassages(passages: HeatPassages, stepper: Stepper): void {
  for (const list of [passages.byMean, passages.byHotSpot])
    for (const passage of list) if (passage.seconds === Infinity) notePassage(passage, stepper)
}

function notePassage(passage: HeatPassage, stepper: Stepper): void {
  const from = stepper.y[WINDING]! - passage.winding
  const to = stepper.next[WINDING]! - passage.winding
  if (to < 0) return
  if (from >= 0) {
    passage.seconds = stepper.y[TIME]!
    return
  }
  const above = { at: (theta: number) => denseValue(stepper, WINDING, theta) - passage.winding }
  passage.seconds = stepper.y[TIME]! + stepper.span * brent(above, 0, 1, from, to, NEARNESS)
}
