/** Right or not yet, and which known slip leads to the same answer. */
import type { Tolerance } from './family.ts'
import type { Question, Reply } from './question.ts'

/** Relative size of what counts as equal, where equal is asked for */
const EXACT = 1e-9
/** Counts up to here are counts, and have to be met */
const LARGEST_COUNT = 10_000
/** A slip is recognised within this part of what it leads to */
const SLIP = 0.01

/** How far an answer may be off, in its own unit: a number beside 0, where a part of 0 would be nothing. */
export interface Allowance {
  readonly relative: number
  readonly absolute: number
}

const RELATIVE: Readonly<Record<Tolerance, number>> = {
  exact: EXACT,
  'r0.5': 0.005,
  r1: 0.01,
  r2: 0.02,
  'a0.5': 0,
  a1: 0,
}
const ABSOLUTE: Readonly<Record<Tolerance, number>> = {
  exact: 0,
  'r0.5': 0,
  r1: 0,
  r2: 0,
  'a0.5': 0.5,
  a1: 1,
}

/** What a tolerance means for an answer. */
export function toleranceOf(tolerance: Tolerance, answer: number): Allowance {
  const count = tolerance === 'r0.5' && Number.isInteger(answer) && Math.abs(answer) <= LARGEST_COUNT
  if (count || (answer === 0 && ABSOLUTE[tolerance] === 0)) return { relative: EXACT, absolute: EXACT }
  return { relative: RELATIVE[tolerance], absolute: ABSOLUTE[tolerance] }
}

/** Whether `value` lies within `times` the allowance of `target`. */
export const isClose = (target: number, value: number, allowed: Allowance, times: number): boolean =>
  Math.abs(value - target) <= times * (allowed.relative * Math.abs(target) + allowed.absolute)

export interface Marked {
  /** Null where there is nothing to be right about. */
  readonly right: boolean | null
  /** Code of the slip that leads to this answer; null when it is right or no known slip does. */
  readonly cause: string | null
  readonly sentence: string | null
}

const RIGHT: Marked = { right: true, cause: null, sentence: null }
const wrong = (slip: { readonly cause: string; readonly sentence: string } | undefined): Marked => ({
  right: false,
  cause: slip?.cause ?? null,
  sentence: slip?.sentence ?? null,
})

/** A slip in the answer's own width where that is absolute. */
function slipAllowance(tolerance: Tolerance): Allowance {
  const absolute = ABSOLUTE[tolerance]
  return absolute > 0 ? { relative: 0, absolute } : { relative: SLIP, absolute: EXACT }
}

/** Marks an answer. A reply of another kind than was asked for is a mistake of the program. */
export function mark({ ask }: Question, reply: Reply): Marked {
  if (ask.kind === 'words') return { right: null, cause: null, sentence: null }
  if (ask.kind === 'number' && reply.kind === 'number') {
    const { value } = reply
    if (isClose(ask.answer, value, toleranceOf(ask.tolerance, ask.answer), 1)) return RIGHT
    return wrong(ask.slips.find((slip) => isClose(slip.value, value, slipAllowance(ask.tolerance), 1)))
  }
  if (ask.kind === 'choice' && reply.kind === 'choice') {
    if (reply.option === ask.answer) return RIGHT
    return wrong(ask.slips.find(({ option }) => option === reply.option))
  }
  if (ask.kind === 'order' && reply.kind === 'order') {
    if (reply.order.join() === ask.answer.join()) return RIGHT
    return wrong(ask.slips.find((slip) => slip.fits(reply.order)))
  }
  throw new Error(`a reply of kind ${reply.kind} to a question of kind ${ask.kind}`)
}

export type Sureness = 1 | 2 | 3

const WHEN_RIGHT: Readonly<Record<Sureness, number>> = { 1: 1, 2: 2, 3: 3 }
const WHEN_WRONG: Readonly<Record<Sureness, number>> = { 1: 0, 2: -2, 3: -6 }

/**
 * Marks for confidence: level 1 pays best below a chance of 67 % of being right, level 3 above 80 %. Source:
 * A. R. Gardner-Medwin, confidence-based marking, Physiological Society workshop, Bristol 2005.
 */
export const confidenceMark = (right: boolean, sureness: Sureness): number =>
  right ? WHEN_RIGHT[sureness] : WHEN_WRONG[sureness]
