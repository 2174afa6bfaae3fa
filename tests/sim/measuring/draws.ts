/** A sequence of numbers that are evenly spread over -1 to 1 and the same each time: mulberry32, public domain. */
export function evenDraws(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 31 - 1
  }
}

/** Mean and standard deviation of many values. */
export function spread(values: readonly number[]): { mean: number; deviation: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1)
  return { mean, deviation: Math.sqrt(square) }
}

/** Four standard deviations of a standard deviation that N draws of no long tails give: 4/√(2N). */
export const scatterOf = (draws: number): number => 4 / Math.sqrt(2 * draws)
