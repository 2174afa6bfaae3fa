/** What an engineer reads off a bearing pattern, in words. */
import type { Side } from '../../sim/gear/gear-numbers.ts'
import { figure } from '../instrument/reading-text.ts'

/** The thread moves up through the right mesh, and down through the left, for a worm turning about +z. */
export const leavingSide = (side: Side, sense: 1 | -1): 1 | -1 => ((side === 'right') === sense > 0 ? 1 : -1)

const MOST = 0.85
const AT_EDGE = 0.55
const OFF_MIDDLE = 0.12

export interface PatternSeen {
  /** Part of the flank that is marked */
  readonly share: number
  /** Middle of it over the face, as a part of half the face, + on top */
  readonly middle: number
  readonly leaving: 1 | -1
  readonly helical: boolean
}

export function patternWords({ share, middle, leaving, helical }: PatternSeen): string {
  if (share === 0) return 'Nothing is marked: no part of the flank comes near the thread.'
  const percent = `${Math.max(1, Math.round(100 * share))} % of the flank`
  const end = middle * leaving > 0 ? 'leaving' : 'entering'
  if (Math.abs(middle) > AT_EDGE)
    return `Contact has moved to the edge at the ${end} side: ${percent} is marked.`
  if (helical) return `A narrow band is marked, ${percent}, where the point of contact runs.`
  if (share > MOST) return `The flank bears nearly all over: ${percent} is marked.`
  if (Math.abs(middle) > OFF_MIDDLE) return `Contact has moved towards the ${end} side: ${percent} is marked.`
  return `Contact has drawn together: ${percent} is marked.`
}

/** Below this it is told as nothing [um] */
const LEAST = 0.05

/** '12 µm', '−19 µm', '0 µm' */
export const micrometres = (value: number): string =>
  Math.abs(value) < LEAST ? '0 µm' : `${figure(Number(value.toFixed(1)))} µm`

/** What is left of the backlash once both flanks have what they need [um]. */
export function backlashWords(left: number): string {
  if (Math.abs(left) < LEAST) return 'Nothing is left to spare: both flanks touch.'
  if (left < 0)
    return `It would jam: the flanks need ${micrometres(-left)} more backlash than the machine has.`
  return `${micrometres(left)} of backlash are left.`
}
