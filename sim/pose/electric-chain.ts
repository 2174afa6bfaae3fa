/** What the current passes from the socket or battery to the motor, in the order in which it does. */
import type { Machine } from '../machine/machine.ts'

export type ChainElement = 'transformer' | 'rectifier' | 'capacitor' | 'setting'

/**
 * Taps are chosen on the transformer and a triac stands in the alternating current, so both come ahead of the
 * rectifier; a chopper, and a single diode, stand next to the motor. A crank has no chain.
 */
export function chainOf({ transformer, rectifier, control }: Machine): readonly ChainElement[] {
  if (control.kind === 'crank') return []
  const first: ChainElement[] = transformer === null ? [] : ['transformer']
  const direct: ChainElement[] = rectifier === null ? [] : ['rectifier']
  if (rectifier !== null && rectifier.capacitance > 0) direct.push('capacitor')
  const alternating = control.kind === 'taps' || control.kind === 'phase'
  return alternating ? [...first, 'setting', ...direct] : [...first, ...direct, 'setting']
}
