import { expect, test } from 'vitest'
import type { Drive } from '../../../sim/drive/drive.ts'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { createFrame } from '../../../web/frame/frame-state.ts'
import { runFrame, turnByDrive } from '../../../web/frame/frame.ts'
import { fittings } from '../../support/fittings.ts'
import { bootCleaner, demoMachines } from '../../support/machines.ts'
import { relativelyNear } from '../../support/near.ts'

const smoothed = fittings.find(({ name }) => name === 'taps, bridge, capacitor')!

const NAMES = ['speed', 'acceleration', 'fuse', 'capacitorVoltage', 'time'] as const

/** Two seconds of pictures: a start, a change of load and setting, then a jam let go again or the plug pulled. */
function endAfter(drive: Drive, hertz: number, unplugAt: number) {
  const frame = createFrame(drive, { ...firstInput(), setting: drive.steps - 1 })
  turnByDrive(frame)
  for (let picture = 0; picture < 2 * hertz; picture++) {
    if (picture === hertz / 2) frame.input.rightLoad = 1
    if (picture === hertz) frame.input.setting = Math.max(0, drive.steps - 2)
    if (unplugAt > 2 && picture === (7 / 6) * hertz) frame.input.jammed = 'left'
    if (picture === 1.5 * hertz) frame.input.jammed = 'none'
    if (picture === unplugAt * hertz) frame.input.connected = false
    runFrame(frame, 1 / hertz)
  }
  return frame.state
}

test.each([
  ...demoMachines.map((machine) => [machine.name, machine, Infinity] as const),
  // Unplugged, these two still coast when the time is over.
  ['boot cleaner, unplugged', bootCleaner, 11 / 6] as const,
  ['boot cleaner with a capacitor, unplugged', smoothed, 11 / 6] as const,
])('%s: pictures at 30, 60 and 144 a second lead to the same state within 1e-9', (_, machine, unplugAt) => {
  const drive = compileDrive(machine)
  const [slow, usual, fast] = [30, 60, 144].map((hertz) => endAfter(drive, hertz, unplugAt))
  for (const state of [slow!, fast!]) {
    expect(state.turns.turns).toBe(usual!.turns.turns)
    relativelyNear(state.turns.ticks + state.turns.rest, usual!.turns.ticks + usual!.turns.rest, 1e-9)
    for (const name of NAMES) relativelyNear(state[name], usual![name], 1e-9)
  }
  expect(Math.abs(usual!.speed)).toBeGreaterThan(1)
  expect(usual!.time).toBe(2)
})
