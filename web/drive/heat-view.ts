/** What the heat chart draws: runs in the units of its axes. */
import type { Thermal } from '../../sim/machine/machine.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import type { HeatingColumns } from '../../sim/run/heating-record.ts'
import { spanOf, valueAlong } from '../chart/scale.ts'
import type { Column } from '../chart/table.ts'
import type { Heated } from './heat-work.ts'
import { type TimeUnit, timeText, timeUnit } from './heat-span.ts'
import { degreeText } from '../instrument/reading-text.ts'
import { limitOf } from './heat-words.ts'

export interface HeatView {
  readonly thermal: Thermal
  readonly heated: Heated
  /** With the fan's air shut off; null unless asked for */
  readonly stillAir: Heated | null
  readonly unit: TimeUnit
  /** End of the time axis, in its unit */
  readonly end: number
  /** Times of the rows, in the unit of the axis */
  readonly time: Float64Array
  /** [degC] */
  readonly hottest: Float64Array
  readonly least: number
  readonly most: number
}

/** Above the class, so that its line does not lie on the edge [K] */
const ROOM = 12
const TEN = 10

export function heatView(thermal: Thermal, heated: Heated, stillAir: Heated | null): HeatView {
  const { columns } = heated.run
  const { duration } = heated.order.options
  const unit = timeUnit(duration)
  const hottest = columns.winding.map((T) => T + thermal.hotSpotMargin)
  const lines = [columns.case, hottest, ...(stillAir ? [stillAir.run.columns.winding] : [])]
  const [low, high] = spanOf(lines)
  const least = TEN * Math.floor(Math.min(low, thermal.ambient) / TEN)
  const most = TEN * Math.ceil((Math.max(high, limitOf(thermal)) + ROOM) / TEN)
  return {
    thermal,
    heated,
    stillAir,
    unit,
    end: duration / unit.seconds,
    time: columns.time.map((t) => t / unit.seconds),
    hottest,
    least,
    most,
  }
}

/** How everything stands at one moment of a run. */
export interface HeatMoment {
  /** [s] */
  readonly seconds: number
  /** [degC] */
  readonly winding: number
  readonly case: number
  /** [W] */
  readonly windingHeat: number
  readonly caseHeat: number
  readonly givenOff: number
}

export function momentAt(columns: HeatingColumns, seconds: number): HeatMoment {
  const last = columns.time.at(-1) ?? 0
  const at = Math.min(seconds, last)
  const read = (column: Float64Array) => valueAlong(columns.time, column, at)
  return {
    seconds: at,
    winding: read(columns.winding),
    case: read(columns.case),
    windingHeat: read(columns.windingHeat),
    caseHeat: read(columns.caseHeat),
    givenOff: read(columns.givenOff),
  }
}

/** Of winding and case, in the whole run [degC] */
export const hottestPart = ({ winding, case: body }: HeatingColumns): number => spanOf([winding, body])[1]

/** Numbers keep to their units at the end of a line. */
export function momentWords({ seconds, winding, case: body }: HeatMoment, thermal: Thermal): string {
  const spot = winding + thermal.hotSpotMargin
  const words = `winding ${degreeText(winding)}, hottest spot ${degreeText(spot)}, case ${degreeText(body)}`
  return `After ${timeText(seconds)}: ${words.replaceAll(' °C', '\u00a0°C')}`
}

/** Step of the cursor by arrow keys, in the unit of the axis */
export const cursorStep = ({ end, unit }: HeatView): number => {
  const minutes = (end * unit.seconds) / 60
  const step = [0.1, 0.5, 1, 2, 5, 10].find((each) => minutes / each <= 130) ?? 30
  return (step * 60) / unit.seconds
}

/** In the core's own numbers, only the speed turned into r/min. */
export function heatColumns({ heated, stillAir, hottest }: HeatView): readonly Column[] {
  const { columns } = heated.run
  const rows = (run: HeatingColumns, name: string): readonly Column[] => [
    { heading: `${name}time [s]`, values: run.time },
    { heading: `${name}winding, mean [degC]`, values: run.winding },
    { heading: `${name}case [degC]`, values: run.case },
    { heading: `${name}speed of the worm [r/min]`, values: run.speed.map(rpm) },
    { heading: `${name}motor current, r.m.s. [A]`, values: run.current },
    { heading: `${name}heat in the winding [W]`, values: run.windingHeat },
    { heading: `${name}heat in the case [W]`, values: run.caseHeat },
    { heading: `${name}heat given to the air [W]`, values: run.givenOff },
  ]
  return [
    ...rows(columns, ''),
    { heading: 'winding, hottest spot [degC]', values: hottest },
    ...(stillAir ? rows(stillAir.run.columns, 'without the fan: ') : []),
  ]
}
