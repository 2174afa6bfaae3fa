import type { DriveInput } from '../drive/input.ts'
import { CLASS_TEMPERATURE } from '../heat/insulation.ts'
import type { Machine } from '../machine/machine.ts'
import { completed } from './completed.ts'
import { CASE, WINDING } from './heating-equations.ts'
import type { Pair } from './heating-fixed-pair.ts'
import { fixedPair } from './heating-fixed-pair.ts'
import type { NoSettling } from './heating-settled.ts'
import { HOTTEST, RUNAWAY, settledPair } from './heating-settled.ts'
import type { HeatingConditions, HeatSource } from './heating-source.ts'
import { heatSource } from './heating-source.ts'
import { newHeating, stretch } from './heating-stretch.ts'

/** Times by turns [s], each > 0. */
export interface Duty {
  readonly on: number
  readonly off: number
}

/** Temperatures between which a machine ends up swinging [degC]. */
export interface SettledDuty {
  /** At the end of the time on */
  readonly hot: { readonly winding: number; readonly case: number }
  /** At the end of the pause */
  readonly cool: { readonly winding: number; readonly case: number }
}

/** The map of one cycle repeats to about the error of its steps. */
const FINENESS = { nearness: 1e-4, difference: 0.2 }

/** What a duty that goes on and on ends in. Null without a thermal description. */
export function settledDuty(
  machine: Machine,
  input: DriveInput,
  duty: Duty,
  conditions: HeatingConditions = {},
): SettledDuty | NoSettling | null {
  const source = heatSource(machine, input, conditions)
  if (!source) return null
  if (source.notComputed !== null) return { reason: source.notComputed }
  const { ambient } = source.thermal
  return swing(source, duty, [ambient, ambient]) ?? { reason: RUNAWAY }
}

/** Begun from a pair at or below that at the end of the pause. */
function swing(source: HeatSource, duty: Duty, from: Pair): SettledDuty | null {
  let hot: Pair = from
  const found = fixedPair(from, HOTTEST, FINENESS, (pair) => {
    const heating = newHeating(source, { winding: pair[0], case: pair[1] }, duty.on + duty.off, 1, false)
    const { y } = heating.stepper
    completed(stretch(heating, true, duty.on))
    hot = [y[WINDING]!, y[CASE]!]
    completed(stretch(heating, false, Infinity))
    return heating.ended === null ? [y[WINDING]!, y[CASE]!] : [NaN, NaN]
  })
  return found && { hot: { winding: hot[0], case: hot[1] }, cool: { winding: found[0], case: found[1] } }
}

const SHORTEST = 1 // [s]
const LONGEST = 86_400 // [s]
const ROUNDS = 16

/** How long a machine may be on at a stretch, again and again, with a pause between. */
export interface LongestDuty {
  /** [s]; Infinity is throughout, 0 is not even a second */
  readonly on: number
  /** Mean of the winding that is not passed [degC] */
  readonly limit: number
}

/**
 * The longest time on after which a pause of `off` [s] keeps the hottest spot of the winding below its class for ever.
 * Yields how much of the search is done; returns null without a thermal description, and
 * where the drive is not computed.
 */
export function* longestDuty(
  machine: Machine,
  input: DriveInput,
  off: number,
  conditions: HeatingConditions = {},
): Generator<number, LongestDuty | null> {
  const source = heatSource(machine, input, conditions)
  if (!source || source.notComputed !== null) return null
  const { insulation, hotSpotMargin, ambient } = source.thermal
  const limit = CLASS_TEMPERATURE[insulation] - hotSpotMargin
  const throughout = settledPair(source)
  if (throughout && throughout[0] <= limit) return { on: Infinity, limit }
  let cool: Pair = [ambient, ambient]
  let [low, high] = [0, Math.log(LONGEST / SHORTEST)]
  for (let round = 0; round <= ROUNDS; round++) {
    // The first trial is the shortest time.
    const trial = round === 0 ? 0 : (low + high) / 2
    const swung = swing(source, { on: SHORTEST * Math.exp(trial), off }, cool)
    if (swung && swung.hot.winding <= limit) {
      low = trial
      cool = [swung.cool.winding, swung.cool.case]
    } else if (round === 0) return { on: 0, limit }
    else high = trial
    yield round / ROUNDS
  }
  return { on: SHORTEST * Math.exp(low), limit }
}
