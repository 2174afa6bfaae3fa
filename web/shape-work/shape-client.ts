/**
 * Asks the other thread for the shape of a machine. While it is at work only the newest request is kept, so a drag
 * is answered as often as the thread can and ends with the last value. Without such a thread, or when it fails, the
 * same function is called directly.
 */
import type { Machine } from '../../sim/machine/machine.ts'
import type { Detail } from '../scene/detail.ts'
import { type MachineShape, machineShape } from '../scene/machine-shape.ts'

export interface ShapeRequest {
  readonly machine: Machine
  readonly detail: Detail
}

type Answer = (request: ShapeRequest, shape: MachineShape) => void

export interface ShapeClient {
  /** Answers by and by; a request that a newer one overtakes before its turn is never answered. */
  ask(request: ShapeRequest): void
  dispose(): void
}

/** What this needs of a worker. */
export type ShapeThread = Pick<Worker, 'addEventListener' | 'postMessage' | 'terminate'>

export function openShapeThread(): ShapeThread | null {
  if (typeof Worker === 'undefined') return null
  return new Worker(new URL('./shape.worker.ts', import.meta.url), { type: 'module' })
}

export function createShapeClient(thread: ShapeThread | null, answer: Answer): ShapeClient {
  let atWork: ShapeRequest | null = null
  let waiting: ShapeRequest | null = null
  const direct = (request: ShapeRequest) => answer(request, machineShape(request.machine, request.detail))
  const send = (request: ShapeRequest) => {
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
    thread.addEventListener('message', ({ data }: MessageEvent<MachineShape>) => {
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
