import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { wormTurnsValue } from '../../../sim/drive/turns.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { advanceRun, createRun, speedOf } from '../../../sim/run/waveform.ts'
import { bootCleaner } from '../../support/machines.ts'
import { relativelyNear } from '../../support/near.ts'

function withoutLeakage(): Machine {
  const { control } = bootCleaner
  if (control.kind !== 'taps') throw new Error('the boot cleaner is set by taps')
  return {
    ...bootCleaner,
    control: { ...control, steps: control.steps.map((tap) => ({ ...tap, inductance: 0 })) },
  }
}

const drive = compileDrive(withoutLeakage())

function started(tolerance: number): readonly [number, number] {
  const run = createRun(drive, { ...firstInput(), setting: 4 }, { tolerance })
  advanceRun(run, 0.1)
  return [speedOf(run), wormTurnsValue(run.turns)]
}

test.each([
  [1e-6, 5e-7],
  [1e-8, 1e-8],
])('a source without inductance keeps what it takes over, at a tolerance of %f too', (tolerance, allowed) => {
  const [speed, turns] = started(1e-12)
  expect(speed).toBeGreaterThan(400)
  const [found, turned] = started(tolerance)
  relativelyNear(found, speed, allowed)
  relativelyNear(turned, turns, allowed)
})
