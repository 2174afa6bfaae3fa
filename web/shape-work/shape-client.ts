/** Asks the other thread for the shape of a machine. */
import type { Machine } from '../../sim/machine/machine.ts'
import type { Detail } from '../scene/detail.ts'
import { type MachineShape, machineShape } from '../scene/machine-shape.ts'
import { type NewestClient, type WorkThread, createNewestClient } from './newest-client.ts'

export interface ShapeRequest {
  readonly machine: Machine
  readonly detail: Detail
}

export type ShapeClient = NewestClient<ShapeRequest>

export function openShapeThread(): WorkThread | null {
  if (typeof Worker === 'undefined') return null
  return new Worker(new URL('./shape.worker.ts', import.meta.url), { type: 'module' })
}

export const createShapeClient = (
  thread: WorkThread | null,
  answer: (request: ShapeRequest, shape: MachineShape) => void,
): ShapeClient =>
  createNewestClient(thread, ({ machine, detail }: ShapeRequest) => machineShape(machine, detail), answer)
