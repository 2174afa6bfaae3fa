/** What can be asked of the other thread, and what comes back. Each is a function of `sim` that tells how far it is. */
import type { DriveInput } from '../../sim/drive/input.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { type HeatingOptions, type HeatingRun, heatingRun } from '../../sim/run/heating.ts'

/** Hours of warming and cooling; null where a machine has no thermal description. */
export interface HeatingOrder {
  readonly kind: 'heating'
  readonly machine: Machine
  readonly input: DriveInput
  readonly options: HeatingOptions
}

export type RunOrder = HeatingOrder

interface Answers {
  readonly heating: HeatingRun | null
}
export type AnswerTo<Order extends RunOrder> = Answers[Order['kind']]

/** Yields the part that is done, 0 to 1. */
export function runOrder<Order extends RunOrder>(order: Order): Generator<number, AnswerTo<Order>> {
  return heatingRun(order.machine, order.input, order.options)
}
