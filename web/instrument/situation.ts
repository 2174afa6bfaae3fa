/** What the formulas are worked out for: one machine, as it is set, and one reading of it. */
import type { Reading } from '../../sim/drive/reading.ts'
import type { Load, Machine } from '../../sim/machine/machine.ts'
import type { Bench } from '../store/bench.ts'

export interface Situation {
  readonly machine: Machine
  readonly reading: Reading
  /** Step of the speed control, from 0 */
  readonly setting: number
  readonly sense: 1 | -1
  readonly leftLoad: Load
  readonly rightLoad: Load
  /** How warm winding and magnets are [degC] */
  readonly winding: number
  readonly magnet: number
}

const NO_LOAD: Load = { name: '', active: 0, passive: 0, linear: 0, quadratic: 0 }

export function situationOf(machine: Machine, bench: Bench, reading: Reading): Situation {
  const { loads } = machine.outputs
  return {
    machine,
    reading,
    setting: bench.setting,
    sense: bench.sense,
    leftLoad: loads[bench.leftLoad] ?? NO_LOAD,
    rightLoad: loads[bench.rightLoad] ?? NO_LOAD,
    winding: bench.winding,
    magnet: bench.magnet,
  }
}
