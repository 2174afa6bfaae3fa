import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import type { OperatingPoint } from '../../sim/drive/operating-point.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { wholeRangeRun, wholeRangeSeriesRun } from '../support/whole-ranges.ts'

const SEED = 20_261_125
const isUnbounded = (value: unknown): boolean => typeof value === 'number' && !Number.isFinite(value)
/** A fuse that opens ends a run elsewhere. */
const withoutFuse = ({ protection }: Machine): Machine['protection'] =>
  protection.kind === 'limit' ? protection : { kind: 'none' }
const DT = 1 / 240
/** Five seconds at the app's step; after that each step is longer, which the implicit steps bear. */
const SHORT_STEPS = 1200
const LONG_STEPS = 400
const GROWTH = 1.1

/**
 * How far a run ends from where the drive settles, as a part of that speed; of standstill as it is [rad/s].
 */
function missAfterRun(drive: Drive, input: DriveInput, point: OperatingPoint): number {
  const size = Math.abs(point.speed) || 1
  const state = restState()
  const miss = () => Math.abs(state.speed - point.speed) / size
  let dt = DT
  for (let n = 0; n < SHORT_STEPS + LONG_STEPS; n++) {
    // Standstill stays put by itself: two steps tell.
    if (n > 2 && miss() <= 1e-4) break
    if (n >= SHORT_STEPS) dt *= GROWTH
    step(state, drive, input, dt)
  }
  return miss()
}

describe(`motor drives over the whole ranges of the field table, seed ${SEED}`, () => {
  test('a run ends where the drive settles, within 1e-4 of its speed', () => {
    let moving = 0
    fc.assert(
      fc.property(wholeRangeRun, ([machine, input]) => {
        const drive = compileDrive({ ...machine, protection: withoutFuse(machine) })
        const point = operatingPoint(drive, input)
        if (point === null) return
        if (point.speed !== 0) moving++
        expect(missAfterRun(drive, input, point)).toBeLessThanOrEqual(point.speed === 0 ? 0 : 1e-4)
      }),
      { seed: SEED, numRuns: 250 },
    )
    expect(moving).toBeGreaterThan(75)
  })

  test('where it settles, every reading is finite and of the input less than 1e-11 is not accounted for', () => {
    fc.assert(
      fc.property(wholeRangeRun, ([machine, input]) => {
        const reading = operatingPoint(compileDrive(machine), input)?.reading
        if (!reading) return
        for (const [name, value] of Object.entries(reading)) expect(value, name).not.toSatisfy(isUnbounded)
        const { inputPower, coreLoss, outputLeft, outputRight } = reading
        // Where a load drives, it and not the supply gives the power.
        const flow = Math.max(Math.abs(inputPower) + coreLoss, Math.abs(outputLeft), Math.abs(outputRight))
        expect(Math.abs(reading.residual)).toBeLessThanOrEqual(1e-11 * flow)
      }),
      { seed: SEED, numRuns: 500 },
    )
  })

  test('series motors on the mains end where they settle, with all of their input accounted for', () => {
    let moving = 0
    fc.assert(
      fc.property(wholeRangeSeriesRun, ([machine, input]) => {
        const drive = compileDrive({ ...machine, protection: { kind: 'none' } })
        const point = operatingPoint(drive, input)
        if (point === null) return
        if (point.speed !== 0) moving++
        const { inputPower, outputLeft, outputRight, residual } = point.reading
        const flow = Math.max(Math.abs(inputPower), Math.abs(outputLeft), Math.abs(outputRight))
        expect(Math.abs(residual)).toBeLessThanOrEqual(1e-11 * flow)
        expect(missAfterRun(drive, input, point)).toBeLessThanOrEqual(point.speed === 0 ? 0 : 1e-4)
      }),
      { seed: SEED, numRuns: 60 },
    )
    expect(moving).toBeGreaterThan(18)
  })
})
