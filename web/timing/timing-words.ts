/** Sentences about the timing of the two outputs, and numbers as they stand in them. */
import type { AssemblyPhase, ClashAhead, TimedPair } from '../../sim/gear/timing.ts'
import { hubRoom, rowPitch } from '../../sim/gear/row-clearance.ts'
import { degrees } from '../../sim/quantity/convert.ts'

/** To a tenth, without a needless zero. */
const tenths = (value: number): string => String(Number(value.toFixed(1)))

export const angleText = (angle: number): string => `${tenths(degrees(angle))}°`
/** A distance that is compared with a limit keeps its tenth. */
export const distanceText = (length: number): string => `${length.toFixed(1)} mm`

/** 'rows', or 'blades' where there are so few of them. */
export const rowsWord = ({ rows }: Pick<TimedPair, 'rows'>): string => (rows.count <= 3 ? 'blades' : 'rows')

export const aheadText = (pair: TimedPair): string =>
  pair.rows.count === 1
    ? 'The right blade is this far ahead of the left one.'
    : `The right ${rowsWord(pair)} are this far ahead of the left ones.`

export function headline({ distance, clear }: AssemblyPhase, pair: TimedPair): string {
  if (hubRoom(pair.rows) <= 0) return 'The tips strike the other hub'
  if (clear) return `Clear by ${distanceText(distance - pair.need)}`
  return distance === 0 ? 'They strike each other' : 'They come too near'
}

/** Below and above which offsets the rows meet. */
export function zonesText(zones: readonly (readonly [number, number])[], pair: TimedPair): string {
  const pitch = rowPitch(pair.rows.count)
  const word = rowsWord(pair)
  const what = word.charAt(0).toUpperCase() + word.slice(1)
  if (zones.length === 0) return `${what} pass clear at any angle.`
  const [first, last] = [zones[0]!, zones.at(-1)!]
  if (first[0] === 0 && first[1] >= pitch / 2) return `${what} meet at every angle.`
  if (zones.length === 2 && first[0] === 0 && last[1] === pitch)
    return `${what} meet below ${angleText(first[1])} and above ${angleText(last[0])}.`
  return `${what} meet in the hatched angles.`
}

/** Turns of the worm that are free, either way; rounded down, so that they are free indeed. */
export function meetingText({ forward, back }: ClashAhead, pair: TimedPair): string {
  const word = rowsWord(pair)
  if (forward === null || back === null) return `The ${word} never meet.`
  if (forward === 0 || back === 0) return `The ${word} are too near as they stand.`
  const turns = (free: number) => (Math.floor(100 * free) / 100).toFixed(2)
  return `The ${word} come too near ${turns(forward)} worm turns on, or ${turns(back)} back.`
}

export function phaseSentence(pair: TimedPair, count: number): string {
  const tooth = angleText((2 * Math.PI) / pair.teeth)
  const turned =
    pair.rows.count === 1
      ? `turns the left blade by ${tooth}`
      : `turns the left ${rowsWord(pair)} by ${tooth} of the ${angleText(rowPitch(pair.rows.count))} between two`
  const ways = count === 1 ? 'which looks the same at every tooth' : `which gives ${count} different angles`
  return `A tooth further ${turned}, ${ways}.`
}

/** What to do when the wheel does not go in at a tooth. */
export const nextText = ({ phases }: { readonly phases: readonly AssemblyPhase[] }): string =>
  phases.some(({ clear }) => clear)
    ? 'Choose another tooth.'
    : 'No tooth clears them: these outputs are too wide for the distance between their shafts.'
