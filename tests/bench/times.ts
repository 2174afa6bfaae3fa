/** How long things take, in ms. */

const WARM_UP = 250
const LEAST_BATCH = 2
const BATCHES = 25
const LONGEST = 1500

export function timed<T>(work: () => T): { result: T; time: number } {
  const started = performance.now()
  const result = work()
  return { result, time: performance.now() - started }
}

const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b)

/** The value that this share of them does not exceed. */
export const part = (values: readonly number[], share: number): number =>
  sorted(values)[Math.min(values.length - 1, Math.floor(share * values.length))]!

const timeOf = (work: () => unknown, count: number): number =>
  timed(() => {
    for (let n = 0; n < count; n++) work()
  }).time / count

/**
 * The very first time, and the least of some batches once the compiler has seen it, each long enough for the clock:
 * whatever else the machine does only adds to it.
 */
export function typicalTime(work: () => unknown): { first: number; typical: number } {
  const first = timeOf(work, 1)
  const end = performance.now() + WARM_UP
  let last = first
  while (performance.now() < end) last = timeOf(work, 1)
  const count = Math.max(1, Math.ceil(LEAST_BATCH / last))
  const most = performance.now() + LONGEST
  const times: number[] = []
  while (times.length < BATCHES && (times.length < 3 || performance.now() < most))
    times.push(timeOf(work, count))
  return { first, typical: Math.min(...times) }
}
