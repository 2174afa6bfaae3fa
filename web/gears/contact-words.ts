/** Sentences of the contact panel. */
import type { GearNumbers, Side } from '../../sim/gear/gear-numbers.ts'
import { degrees } from '../../sim/quantity/convert.ts'

/** What the worm turns before a wheel follows, and what a wheel can turn by itself [deg]. */
export const wormPlay = ({ backlash, axialModule: m, wormStarts: z1 }: GearNumbers): number =>
  (360 * backlash) / (Math.PI * m * z1)
export const wheelPlay = ({ backlash, axialModule: m, wheelTeeth: z2 }: GearNumbers): number =>
  degrees((2 * backlash) / (m * z2))

/** '2 lines touch now', '1 point touches now'; of a thread within its play: nothing does. */
export function touchWords(count: number, form: GearNumbers['wheelForm']): string {
  const thing = form === 'helical' ? 'point' : 'line'
  if (count === 0) return `No ${thing} touches now`
  return count === 1 ? `1 ${thing} touches now` : `${count} ${thing}s touch now`
}

export function formWords({ wheelForm, profile }: GearNumbers): string {
  if (wheelForm === 'throated')
    return 'Throated wheel: cut by the like of its worm, so thread and tooth touch along lines. It carries more, and wants exact setting along its axis.'
  const point =
    'Plain helical wheel: thread and tooth touch in a point that runs along a straight line. The pressure there is higher and it wears in towards a line, but it is cheap to mould and forgives inexact setting.'
  return profile === 'ZI'
    ? point
    : `${point} It runs true only on a ZI worm; on ${profile} the ratio wavers a little in every tooth.`
}

export const averageWords = (total: number, form: GearNumbers['wheelForm']): string =>
  `On average ${total.toFixed(1)} pairs of flanks ${form === 'helical' ? 'touch' : 'carry'}.`

/** Which way the thread slides over the teeth, for a worm that turns as `sense` says. */
export function slidingWords(side: Side, sense: 1 | -1, angle: number | null): string {
  const up = (side === 'right') === sense > 0
  const way = `On the ${side} wheel the thread slides ${up ? 'upwards' : 'downwards'} along the tooth`
  return angle === null ? `${way}.` : `${way}, at ${Math.round(angle)}° to the line of contact.`
}
