import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import { resetProtection } from '../../../sim/drive/protection.ts'
import { newReading, readState } from '../../../sim/drive/reading.ts'
import { restState } from '../../../sim/drive/state.ts'
import { step } from '../../../sim/drive/step.ts'
import { fuseTime } from '../../../sim/heat/fuse.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { bootCleaner } from '../../support/machines.ts'
import { near } from '../../support/near.ts'

const DT = 1 / 240
const jammed = { ...firstInput(), setting: 4, jammed: 'left' as const }

test.each(['fuse', 'overload'] as const)('a locked current opens the %s in the time of its law', (kind) => {
  const machine: Machine = {
    ...bootCleaner,
    protection: { kind, side: 'secondary', current: 5.2, timeConstant: 6 },
  }
  const drive = compileDrive(machine)
  const state = restState()
  while (!state.isOpen && state.time < 60) step(state, drive, jammed, DT)
  // Locked current of the secondary: all of the motor's but what runs round in the diodes.
  const { reading } = operatingPoint(drive, jammed)!
  const rms = Math.sqrt(reading.sourceResistanceLoss / 1.15)
  near(state.time, fuseTime(rms, 5.2, 6), DT)
  step(state, drive, jammed, DT)
  const after = readState(newReading(), drive, jammed, state)
  expect([after.isOpen, after.currentMean, after.wallPower]).toEqual([true, 0, 0])
  resetProtection(state)
  step(state, drive, jammed, DT)
  expect(readState(newReading(), drive, jammed, state).currentMean).toBeGreaterThan(8)
})

test('an open fuse lets the machine coast to rest, and it stays there', () => {
  const drive = compileDrive(bootCleaner)
  const input = { ...firstInput(), setting: 4 }
  const state = restState()
  for (let n = 0; n < 240; n++) step(state, drive, input, DT)
  state.isOpen = true
  for (let n = 0; n < 480; n++) step(state, drive, input, DT)
  expect(state.speed).toBe(0)
})

test('on the mains side the fuse carries the current of the primary', () => {
  const machine: Machine = {
    ...bootCleaner,
    protection: { kind: 'fuse', side: 'primary', current: 0.5, timeConstant: 2 },
  }
  const drive = compileDrive(machine)
  const state = restState()
  while (!state.isOpen && state.time < 60) step(state, drive, jammed, DT)
  const { wallCurrent } = operatingPoint(drive, jammed)!.reading
  expect(wallCurrent).toBeGreaterThan(0.5)
  near(state.time, fuseTime(wallCurrent, 0.5, 2), DT)
})

test('a fuse keeps the warmth of a start and loses it again while unplugged', () => {
  const drive = compileDrive(bootCleaner)
  const input = { ...firstInput(), setting: 4 }
  const state = restState()
  for (let n = 0; n < 120; n++) step(state, drive, input, DT)
  const { fuse } = state
  expect(fuse).toBeGreaterThan(0.01)
  const off = { ...input, connected: false }
  for (let n = 0; n < 6 * 240; n++) step(state, drive, off, DT)
  near(state.fuse, fuse * Math.exp(-1), 1e-12)
})
