/** The other thread: an order in, how far it is now and then, the answer out. It has no logic of its own. */
import { type RunOrder, runOrder } from './orders.ts'

/** How often it says how far it is [ms] */
const TOLD_EVERY = 100

self.addEventListener('message', ({ data }: MessageEvent<RunOrder>) => {
  const steps = runOrder(data)
  let told = performance.now()
  for (;;) {
    const step = steps.next()
    if (step.done) {
      self.postMessage({ answer: step.value })
      return
    }
    const now = performance.now()
    if (now - told < TOLD_EVERY) continue
    told = now
    self.postMessage({ part: step.value })
  }
})
