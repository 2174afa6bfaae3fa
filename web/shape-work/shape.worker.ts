/** The other thread: a request in, one call, its arrays handed over. */
import { buffersOf, machineShape } from '../scene/machine-shape.ts'
import type { ShapeRequest } from './shape-client.ts'

self.addEventListener('message', ({ data }: MessageEvent<ShapeRequest>) => {
  const shape = machineShape(data.machine, data.detail)
  self.postMessage(shape, { transfer: buffersOf(shape) as ArrayBuffer[] })
})
