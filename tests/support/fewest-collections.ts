import { PerformanceObserver } from 'node:perf_hooks'
import { setTimeout } from 'node:timers/promises'

/**
 * Garbage collections while `frames(count)` runs, after one run to warm up; needs --expose-gc. What is optimised late
 * leaves boxes until then, so the quietest of some windows counts.
 */
export async function fewestCollections(
  frames: (count: number) => void,
  count: number,
  windows: number,
): Promise<number> {
  let collections = 0
  new PerformanceObserver((list) => {
    collections += list.getEntries().length
  }).observe({ entryTypes: ['gc'] })

  let fewest = Infinity
  frames(count)
  for (let window = 0; window < windows && fewest > 0; window++) {
    globalThis.gc?.()
    await setTimeout(50)
    collections = 0
    frames(count)
    await setTimeout(50)
    fewest = Math.min(fewest, collections)
  }
  return fewest
}
