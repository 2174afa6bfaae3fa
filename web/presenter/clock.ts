/** How long each topic has taken: changes are pure, a clock and the time in, a clock out. */
import { readJson } from '../../sim/machine/json.ts'
import { type Read, group, number, orNull, tableOf, text } from '../channel/readers.ts'

export interface Clock {
  /** The run of the lesson that it belongs to */
  readonly run: string
  /** id of the beat that it runs for */
  readonly beat: string
  /** Since when [ms since 1970]; null while it is paused. */
  readonly since: number | null
  /** Before that, by id of the beat [ms] */
  readonly spent: Readonly<Record<string, number>>
}

export const begunClock = (run: string, beat: string, now: number): Clock => ({
  run,
  beat,
  since: now,
  spent: {},
})

/** What a topic has taken until now [ms] */
export function spentOn({ beat, since, spent }: Clock, id: string, now: number): number {
  const before = Object.hasOwn(spent, id) ? spent[id]! : 0
  return id === beat && since !== null ? before + Math.max(0, now - since) : before
}

/** What the whole has taken until now [ms] */
export function spentInAll(clock: Clock, now: number): number {
  const { beat, spent } = clock
  const others = Object.entries(spent).reduce((sum, [id, each]) => (id === beat ? sum : sum + each), 0)
  return others + spentOn(clock, beat, now)
}

const settled = (clock: Clock, now: number): Clock['spent'] => ({
  ...clock.spent,
  [clock.beat]: spentOn(clock, clock.beat, now),
})

/** Goes on for another topic; of another run of the lesson it begins again. */
export function clockAt(clock: Clock, place: { run: string; beat: string }, now: number): Clock {
  if (clock.run !== place.run) return begunClock(place.run, place.beat, now)
  if (clock.beat === place.beat) return clock
  return { ...clock, beat: place.beat, spent: settled(clock, now), since: clock.since === null ? null : now }
}

export const paused = (clock: Clock, now: number): Clock => ({
  ...clock,
  spent: settled(clock, now),
  since: null,
})

export const resumed = (clock: Clock, now: number): Clock =>
  clock.since === null ? { ...clock, since: now } : clock

export const resetClock = ({ run, beat, since }: Clock, now: number): Clock => ({
  run,
  beat,
  since: since === null ? null : now,
  spent: {},
})

/** '4:05', and above an hour '1:04:05' */
export function clockText(milliseconds: number): string {
  const seconds = Math.floor(milliseconds / 1000)
  const two = (value: number) => String(value).padStart(2, '0')
  const hours = Math.floor(seconds / 3600)
  const minutes = Math.floor(seconds / 60) % 60
  const rest = two(seconds % 60)
  return hours > 0 ? `${hours}:${two(minutes)}:${rest}` : `${minutes}:${rest}`
}

const LONGEST_TIME = 1e15
const clock: Read<Clock> = group<Clock>({
  run: text(64),
  beat: text(80),
  since: orNull(number(0, LONGEST_TIME)),
  spent: tableOf(number(0, LONGEST_TIME), { most: 1000, longest: 80 }),
})

/** The clock in a text that this browser kept; null where it is none. */
export function readClock(kept: string | null): Clock | null {
  const json = kept === null ? null : readJson(kept)
  return json && 'value' in json ? (clock(json.value) ?? null) : null
}
