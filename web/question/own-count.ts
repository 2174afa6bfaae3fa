/** What a learner counted, in a word and a number. */
import type { Question } from '../../sim/question/question.ts'
import { matchTaps } from '../instrument/taps.ts'
import type { Exercise } from '../store/exercise.ts'

/** How many passes of the counted mark the trial brings, and how far the worm turns between two of them [turn]. */
export interface CountedPasses {
  readonly passes: number
  readonly every: number
}

/** Null where nothing goes by that is counted one by one. */
export function countedPasses({ trial, given }: Question): CountedPasses | null {
  if (!trial || trial.counted === 'senses') return null
  const starts = Number(given?.['z1'] ?? 1)
  const teeth = Number(given?.['z2'] ?? 1)
  const every = { worm: 1, left: teeth / starts, teeth: 1 / starts }[trial.counted]
  // a hair for the rounding of the division
  return { passes: Math.floor(Math.abs(trial.top / trial.bottom) / every + 1e-9), every }
}

/** How well the passes were met: "every pass", "one pass missed, the 7th". */
export function passesText(taps: readonly number[], { passes, every }: CountedPasses): string {
  const { missed, extra } = matchTaps(
    taps.map((place) => Math.abs(place)),
    passes,
    every,
  )
  if (missed.length === 0 && extra === 0) return 'every pass'
  if (missed.length === 1 && extra === 0) return `one pass missed, number ${missed[0]}`
  const parts = [missed.length > 0 && `${missed.length} missed`, extra > 0 && `${extra} too many`]
  return parts.filter(Boolean).join(', ')
}

/** The learner's own count as it was typed or tapped; null where nothing was counted. */
export function ownCount(
  question: Question,
  { taps, ownCount: typed }: Exercise,
): { readonly value: string; readonly note: string } | null {
  const counted = countedPasses(question)
  const met = counted && taps.length > 0 ? passesText(taps, counted) : ''
  if (typed.trim() !== '') return { value: typed.trim(), note: met === '' ? 'as you wrote it' : met }
  return met === '' ? null : { value: String(taps.length), note: met }
}
