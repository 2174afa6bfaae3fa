/** The heat panel's sentences. */
import { AMBER_MARGIN, CLASS_TEMPERATURE } from '../../sim/heat/insulation.ts'
import type { Machine, Thermal } from '../../sim/machine/machine.ts'
import type { HeatingRun } from '../../sim/run/heating.ts'
import type { HeatPassage } from '../../sim/run/heating-record.ts'
import type { SettledDuty } from '../../sim/run/heating-duty.ts'
import type { NoSettling } from '../../sim/run/heating-settled.ts'
import type { Settled } from '../run-work/orders.ts'
import { degreeText, quantityText } from '../instrument/reading-text.ts'
import { timeText } from './heat-span.ts'

const begun = (sentence: string): string => sentence.charAt(0).toUpperCase() + sentence.slice(1)

export const limitOf = ({ insulation }: Thermal): number => CLASS_TEMPERATURE[insulation]
export const amberOf = (thermal: Thermal): number => limitOf(thermal) - AMBER_MARGIN

const passageOf = (list: readonly HeatPassage[], { insulation }: Thermal, level: HeatPassage['level']) =>
  list.find((passage) => passage.insulation === insulation && passage.level === level)?.seconds ?? Infinity

/** When the winding passes what it bears [s]; Infinity is not in this run. */
export interface Passed {
  /** Of the hottest spot */
  readonly amber: number
  readonly red: number
  /** Of the mean */
  readonly mean: number
}

export const passedBy = ({ passages }: HeatingRun, thermal: Thermal): Passed => ({
  amber: passageOf(passages.byHotSpot, thermal, 'amber'),
  red: passageOf(passages.byHotSpot, thermal, 'red'),
  mean: passageOf(passages.byMean, thermal, 'red'),
})

/** The one thing that matters first. */
export function headline(thermal: Thermal, passed: Passed | null, settled: Settled | null): string {
  if (passed && passed.red < Infinity)
    return `Hottest spot past class ${thermal.insulation} after ${timeText(passed.red)}`
  if (!settled) return 'Temperature over time'
  if ('reason' in settled) return begun(settled.reason)
  return `The winding settles at ${degreeText(settled.winding)}, the case at ${degreeText(settled.case)}`
}

/** What more there is to say of where it ends: not what the headline says already. */
export function endWords(thermal: Thermal, passed: Passed | null, settled: Settled | null): string {
  if (!settled) return ''
  const tooHot = passed !== null && passed.red < Infinity
  if ('reason' in settled) return tooHot ? `${begun(settled.reason)}.` : ''
  const spot = settled.winding + thermal.hotSpotMargin
  if (tooHot)
    return `It would settle at ${degreeText(settled.winding)} in the winding, ${degreeText(settled.case)} in the case: more than it bears for long.`
  if (spot >= limitOf(thermal))
    return `That is more than class ${thermal.insulation} bears for long; in the time shown it does not get there.`
  const room = `The winding’s hottest spot stays ${Math.round(limitOf(thermal) - spot)} K below class ${thermal.insulation}`
  return spot >= amberOf(thermal)
    ? `${room}: it may go on, but it is near.`
    : `${room}, so it may go on for hours.`
}

const PROTECTION = { fuse: 'The fuse melts', overload: 'The overload switch opens' } as const

/** What happens on the way, each in a sentence. */
export function happenings(
  { protection }: Machine,
  run: HeatingRun,
  acts: boolean,
  settled: Settled | null,
): readonly string[] {
  const told: string[] = []
  if (run.stalled === 0) told.push('The motor does not start with this load, so the fan stands as well.')
  else if (run.stalled < Infinity)
    told.push(`After ${timeText(run.stalled)} the warm motor is too weak and comes to rest.`)
  if (run.opened < Infinity && 'timeConstant' in protection) {
    const opens = `${PROTECTION[protection.kind]} after ${timeText(run.opened)}`
    told.push(acts ? `${opens} and ends the warming.` : `${opens}; the lines go on as if it did not.`)
  }
  // Where it settles nowhere, that has been said.
  if (run.ended && !(settled && 'reason' in settled)) told.push(`${begun(run.ended)}.`)
  return told
}

/** The same where it is switched on and off by turns [min]. */
export const dutyHeadline = (thermal: Thermal, passed: Passed | null, on: number, off: number): string =>
  passed && passed.red < Infinity
    ? headline(thermal, passed, null)
    : `${on} min on and ${off} min off by turns`

/** What pauses end in. */
export function dutyWords(swing: SettledDuty | NoSettling): string {
  if ('reason' in swing) return `With these pauses: ${swing.reason}.`
  const { hot, cool } = swing
  return `Kept up, the winding ends between ${degreeText(cool.winding)} and ${degreeText(hot.winding)}, the case between ${degreeText(cool.case)} and ${degreeText(hot.case)}.`
}

/** How long it may be on [s], with pauses of `off` [s], so that the hottest spot keeps below its class. */
export function longestWords({ insulation }: Thermal, on: number, off: number): string {
  if (on === Infinity) return `Its hottest spot keeps below class ${insulation} without any pause.`
  const pauses = `With pauses of ${timeText(off)}`
  return on < 1
    ? `${pauses} it may not be on even for a second at a time.`
    : `${pauses} it may be on for ${timeText(Math.floor(on))} at a time, for class ${insulation} at the hottest spot.`
}

/** Differences below this are not worth a word [K]. Our choice. */
const HOTTER = 1

/** The slower setting that ends hottest against the next faster one, and why; null where none does. */
export function slowerIsHotter(settled: readonly Settled[]): string | null {
  const pairs = settled.slice(1).flatMap((fast, i) => {
    const slow = settled[i]!
    if ('reason' in slow || 'reason' in fast || slow.speed === 0) return []
    return [{ setting: i + 1, slow, fast, more: slow.winding - fast.winding }]
  })
  const [worst] = pairs.toSorted((a, b) => b.more - a.more)
  if (!worst || worst.more < HOTTER) return null
  const { setting, slow, fast } = worst
  const heats = `${quantityText(slow.heat, 'W')} of heat against ${quantityText(fast.heat, 'W')}`
  const why =
    slow.heat <= fast.heat
      ? `Less arises in it, ${heats}, but its slower fan takes less of that away.`
      : `More arises in it, ${heats}, and its slower fan takes less of that away.`
  return `Setting ${setting} is slower than ${setting + 1} and ends hotter. ${why}`
}
