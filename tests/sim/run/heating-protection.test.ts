import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import type { DriveInput } from '../../../sim/drive/input.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import type { FuseState } from '../../../sim/run/heating-protection.ts'
import { bleedState, fuseState } from '../../../sim/run/heating-protection.ts'
import { bootCleaner, cordWinder, ventOpener } from '../../support/machines.ts'
import { near, relativelyNear } from '../../support/near.ts'
import { smoothed } from '../../support/other-machines.ts'

const full: DriveInput = { ...firstInput(), setting: 4 }
const locked = (machine: Machine, input = full): FuseState | null =>
  fuseState(machine, compileDrive(machine), input, 0)

/** The boot cleaner's fuse in the mains lead. */
const inMains: Machine = {
  ...bootCleaner,
  protection: { kind: 'fuse', side: 'primary', current: 0.63, timeConstant: 6 },
}

describe('a fuse', () => {
  test('of the locked boot cleaner carries the locked current, and opens within seconds', () => {
    const fuse = locked(bootCleaner)!
    // 8.981 A r.m.s. with the overlap of the bridge, which period means leave out: 1.1 % of the mean.
    near(fuse.current, 8.981, 0.1)
    near(fuse.opensAfter, 6 * Math.log(fuse.excess / (fuse.excess - 1)), 1e-9)
    relativelyNear(fuse.meltingIntegral, 6 * 5.2 ** 2, 1e-12)
  })

  test('in the mains lead carries what the transformer takes: the secondary’s over the ratio, and for the core', () => {
    const behind = locked(bootCleaner)!
    const ahead = locked(inMains)!
    expect(ahead.current).toBeLessThan(behind.current / 9)
    expect(ahead.current).toBeGreaterThan(behind.current / (230 / 24))
  })

  test('of a running boot cleaner never opens', () => {
    expect(fuseState(bootCleaner, compileDrive(bootCleaner), full, 520)!.opensAfter).toBe(Infinity)
  })

  test('of an unplugged machine carries nothing', () => {
    expect(locked(cordWinder, { ...full, connected: false })!.current).toBe(0)
  })

  test('is not there where a current limit is', () => {
    expect(locked(ventOpener, firstInput())).toBeNull()
  })
})

test('a smoothing capacitor holds its energy for as long as its bleed resistor lets it', () => {
  const bleed = bleedState(smoothed, 26)!
  relativelyNear(bleed.energy, 0.5 * 2.2e-3 * 26 ** 2, 1e-12)
  relativelyNear(bleed.timeConstant, 22, 1e-12)
  expect(bleed.toPlugLimit).toBe(0)
  const high = bleedState(smoothed, 300)!
  relativelyNear(300 * Math.exp(-high.toExtraLow / 22), 60, 1e-12)
  relativelyNear(300 * Math.exp(-high.toPlugLimit / 22), 34, 1e-12)
  relativelyNear(high.afterOneSecond, 300 * Math.exp(-1 / 22), 1e-12)
  expect(bleedState(bootCleaner, 26)).toBeNull()
})
