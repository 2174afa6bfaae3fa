import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import { restState } from '../../../sim/drive/state.ts'
import { step } from '../../../sim/drive/step.ts'
import { withValue } from '../../../sim/machine/fields.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { bootCleaner } from '../../support/machines.ts'

/** Its fuse would open under such loads. */
const unprotected: Machine = { ...bootCleaner, protection: { kind: 'none' } }

const CASES: readonly (readonly [string, number])[] = [
  ['outputs.loads[0].quadratic', 1],
  ['outputs.loads[0].quadratic', 2],
  ['outputs.loads[0].linear', 5],
  ['rotor.fanTorque', 5e-4],
  ['rotor.fanTorque', 1e-3],
  ['rotor.viscousTorque', 0.05],
  ['rotor.inertia', 0.01],
]

test.each(CASES)(
  'with %s = %d, which settles within a step, a run still ends at the operating point',
  (path, value) => {
    const drive = compileDrive(withValue(unprotected, path, value))
    const input = { ...firstInput(), setting: 4 }
    const state = restState()
    for (let n = 0; n < 4 * 240; n++) step(state, drive, input, 1 / 240)
    const steady = operatingPoint(drive, input)!
    expect(steady.speed).toBeGreaterThan(1)
    expect(Math.abs(state.speed / steady.speed - 1)).toBeLessThan(1e-6)
  },
)
