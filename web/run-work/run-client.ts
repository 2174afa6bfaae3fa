/** Has a long computation done by another thread; without one it is done here, in slices that let the page breathe. */
import { type AnswerTo, type RunOrder, runOrder } from './orders.ts'

export interface RunHandlers<Answer> {
  /** Part that is done, 0 to 1 */
  readonly progress: (part: number) => void
  readonly done: (answer: Answer) => void
  readonly failed: (message: string) => void
}

/** Length of a slice on the page's own thread [ms] */
const SLICE = 12

/** Returns what gives it up. */
function runHere<Order extends RunOrder>(order: Order, handlers: RunHandlers<AnswerTo<Order>>): () => void {
  const steps = runOrder(order)
  let timer: ReturnType<typeof setTimeout> | undefined
  const slice = () => {
    const begun = performance.now()
    try {
      for (;;) {
        const step = steps.next()
        if (step.done) {
          handlers.done(step.value)
          return
        }
        if (performance.now() - begun < SLICE) continue
        handlers.progress(step.value)
        timer = setTimeout(slice)
        return
      }
    } catch (error) {
      handlers.failed(String(error))
    }
  }
  timer = setTimeout(slice)
  return () => clearTimeout(timer)
}

type Report<Answer> = { readonly part: number } | { readonly answer: Answer }

/** Begins the work and returns what gives it up; nothing is told after that. */
export function startRun<Order extends RunOrder>(
  order: Order,
  handlers: RunHandlers<AnswerTo<Order>>,
): () => void {
  let worker: Worker
  try {
    worker = new Worker(new URL('./run.worker.ts', import.meta.url), { type: 'module' })
  } catch {
    return runHere(order, handlers)
  }
  let cancel = () => worker.terminate()
  worker.addEventListener('message', ({ data }: MessageEvent<Report<AnswerTo<Order>>>) => {
    if ('part' in data) {
      handlers.progress(data.part)
      return
    }
    worker.terminate()
    handlers.done(data.answer)
  })
  worker.addEventListener('error', () => {
    worker.terminate()
    cancel = runHere(order, handlers)
  })
  worker.postMessage(order)
  return () => cancel()
}
