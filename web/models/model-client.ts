/** Has an order done on another thread, or on this one where there is none to be had. */
import type { Answer, Request } from './answer.ts'
import type { Report } from './model.worker.ts'
import type { Tell } from './print-model.ts'

export interface Work {
  /** Null when it was given up. */
  readonly done: Promise<Answer | null>
  readonly cancel: () => void
}

const newWorker = (): Worker => new Worker(new URL('./model.worker.ts', import.meta.url), { type: 'module' })

async function here(request: Request, tell: Tell): Promise<Answer> {
  const { answer } = await import('./answer.ts')
  return answer(request, tell)
}

/** Every order has a worker of its own, so that giving up stops the work at once. */
export function begin(request: Request, tell: Tell): Work {
  let cancel = () => {}
  const done = new Promise<Answer | null>((resolve, reject) => {
    let cancelled = false
    let worker: Worker | null = null
    const instead = () => {
      worker?.terminate()
      if (!cancelled) here(request, tell).then((made) => resolve(cancelled ? null : made), reject)
    }
    cancel = () => {
      cancelled = true
      worker?.terminate()
      resolve(null)
    }
    try {
      worker = newWorker()
    } catch {
      instead()
      return
    }
    worker.addEventListener('error', instead)
    worker.addEventListener('message', ({ data }: MessageEvent<Report>) => {
      if ('progress' in data) tell(data.progress)
      else {
        worker?.terminate()
        resolve(data.answer)
      }
    })
    worker.postMessage(request)
  })
  return { done, cancel: () => cancel() }
}
