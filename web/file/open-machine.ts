import type { Machine } from '../../sim/machine/machine.ts'
import { hold } from '../frame/frame.ts'
import { type Workshop, paceFor } from '../frame/workshop.ts'
import { benchFor } from '../store/bench.ts'
import { leaveLent } from './leave-lent.ts'

/**
 * Puts another machine on the bench. The turning stops and the counts stay; Undo brings the old machine back. The
 * choices at the bench are kept where the new machine offers them, and the pace is one at which it can be counted.
 */
export function openMachine(workshop: Workshop, machine: Machine): void {
  const { document, bench, frame } = workshop
  leaveLent(workshop)
  hold(frame)
  document.endGesture()
  document.edit(() => machine)
  bench.setState((now) => ({ ...benchFor(machine, now), pace: paceFor(machine) }))
}
