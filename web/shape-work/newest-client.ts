/**
 * Has something worked out by another thread. While it is at work only the newest request is kept, so a drag is
 * answered as often as the thread can and ends with the last value. Without such a thread, or when it fails, the
 * same function is called directly.
 */

/** What this needs of a worker. */
export type WorkThread = Pick<Worker, 'addEventListener' | 'postMessage' | 'terminate'>

export interface NewestClient<Request> {
  /** Answers by and by; a request that a newer one overtakes before its turn is never answered. */
  ask(request: Request): void
  dispose(): void
}

export function createNewestClient<Request, Result>(
  thread: WorkThread | null,
  work: (request: Request) => Result,
  answer: (request: Request, result: Result) => void,
): NewestClient<Request> {
  let atWork: Request | null = null
  let waiting: Request | null = null
  const direct = (request: Request) => answer(request, work(request))
  const send = (request: Request) => {
    atWork = request
    thread?.postMessage(request)
  }
  const giveUp = () => {
    const newest = waiting ?? atWork
    thread?.terminate()
    thread = atWork = waiting = null
    if (newest !== null) direct(newest)
  }
  if (thread !== null) {
    thread.addEventListener('message', ({ data }: MessageEvent<Result>) => {
      const done = atWork
      const next = waiting
      atWork = waiting = null
      if (next !== null) send(next)
      if (done !== null) answer(done, data)
    })
    for (const failure of ['error', 'messageerror'] as const) thread.addEventListener(failure, giveUp)
  }
  return {
    ask(request) {
      if (thread === null) direct(request)
      else if (atWork === null) send(request)
      else waiting = request
    },
    dispose() {
      thread?.terminate()
      thread = atWork = waiting = null
    },
  }
}
