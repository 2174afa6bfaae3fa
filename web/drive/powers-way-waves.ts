/** Which wave is seen at a stop of the power's way. */
import type { Machine } from '../../sim/machine/machine.ts'
import type { PowerStop } from '../store/view.ts'
import type { LaneId } from './waves-lanes.ts'
import type { Look } from './waves-seen.ts'

/** The first of these that the machine has is shown. */
export function lanesAt({ control }: Machine, stop: PowerStop): readonly LaneId[] {
  switch (stop) {
    case 'socket':
      return control.kind === 'chopper' ? ['supply-current'] : ['supply-voltage']
    case 'transformer':
      return ['secondary-voltage']
    case 'setting':
      return control.kind === 'taps' ? ['secondary-current', 'motor-current'] : ['motor-voltage']
    case 'rectifier':
      return ['motor-voltage']
    case 'capacitor':
      return ['capacitor-voltage', 'motor-voltage']
    case 'brushes':
      return ['motor-current']
    case 'armature':
      return ['torque']
    case 'worm':
      return ['speed']
    case 'commutator':
    case 'fan':
    case 'wheels':
    case 'outputs':
      return []
  }
}

/** A chopper's own periods are shown where it has begun to switch. */
export const lookAt = ({ control }: Machine): Look => ({
  periods: 1,
  of: control.kind === 'chopper' ? 'switching' : 'mains',
})
