/** The learner's own count, held against the passes of the worm's mark. */

export interface MatchedTaps {
  /** Passes that no tap belongs to, by their number */
  readonly missed: readonly number[]
  /** Taps that belong to no pass of their own */
  readonly extra: number
}

/**
 * Each tap belongs to the pass it is nearest to, within half of what lies between two; passes are counted from 1, and
 * `every` so many worm turns there is one.
 */
export function matchTaps(taps: readonly number[], passes: number, every = 1): MatchedTaps {
  const nearest = new Set<number>()
  let extra = 0
  for (const tap of taps) {
    const pass = Math.round(tap / every)
    if (pass < 1 || pass > passes || nearest.has(pass)) extra += 1
    else nearest.add(pass)
  }
  const missed: number[] = []
  for (let pass = 1; pass <= passes; pass++) if (!nearest.has(pass)) missed.push(pass)
  return { missed, extra }
}

/** How often something goes by until `end`, at the end included; a hair is left to rounding. */
export const passesUntil = (end: number, every: number): number => Math.floor(Math.abs(end) / every + 1e-9)
