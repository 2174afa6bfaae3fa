import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Machine, Thermal } from '../../sim/machine/machine.ts'
import { completed } from '../../sim/run/completed.ts'
import type { HeatingOptions, HeatingRun } from '../../sim/run/heating.ts'
import { heatingRun } from '../../sim/run/heating.ts'
import { newHeatPoint, writeRunning } from '../../sim/run/heating-point.ts'
import { settledHeat } from '../../sim/run/heating-settled.ts'
import { heatSource } from '../../sim/run/heating-source.ts'
import { bootCleaner, ventOpener } from '../support/machines.ts'

const SEED = 20_261_126
const RUNS = 25

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Small motors' thermal descriptions of any kind. */
const arbitraryThermal: fc.Arbitrary<Thermal> = fc.record({
  windingCapacity: number(10, 400),
  caseCapacity: number(50, 1000),
  windingToCase: number(0.1, 2),
  windingToCaseFan: number(0, 2),
  caseToAir: number(0.1, 2),
  caseToAirFan: number(0, 2),
  referenceSpeed: number(1000, 10_000),
  fanExponent: number(0.5, 0.8),
  ambient: number(-20, 45),
  insulation: fc.constantFrom('A', 'E', 'B', 'F', 'H', 'N'),
  hotSpotMargin: number(0, 20),
  magnetCoefficient: number(-0.3, 0),
  brushHeatToWinding: number(0, 100),
  frictionHeatToWinding: number(0, 100),
})

const arbitraryHeat: fc.Arbitrary<{ machine: Machine; input: DriveInput }> = fc
  .record({
    demo: fc.constantFrom(bootCleaner, ventOpener),
    thermal: arbitraryThermal,
    setting: fc.nat(3),
    leftLoad: fc.nat(1),
    rightLoad: fc.nat(1),
  })
  .map(({ demo, thermal, ...told }) => ({
    machine: { ...demo, thermal },
    input: { ...told, connected: true, sense: 1, jammed: 'none' },
  }))

const run = (machine: Machine, input: DriveInput, options: HeatingOptions): HeatingRun =>
  completed(heatingRun(machine, input, options))!

const last = (column: Float64Array): number => column.at(-1)!

/** Error that a heating curve may have [K] */
const CURVE = 5e-3

describe(`heating of random machines, seed ${SEED}`, () => {
  test('all heat is stored or given to the air', () => {
    fc.assert(
      fc.property(arbitraryHeat, number(0, 60), number(0, 60), ({ machine, input }, winding, body) => {
        const from = { winding, case: body }
        const { columns, heat, givenOff } = run(machine, input, { duration: 900, from, parts: 4 })
        const { windingCapacity: Cw, caseCapacity: Cc } = machine.thermal!
        const stored = Cw * (last(columns.winding) - winding) + Cc * (last(columns.case) - body)
        const size = Math.abs(heat) + Math.abs(givenOff) + Math.abs(stored)
        expect(Math.abs(heat - givenOff - stored)).toBeLessThanOrEqual(1e-11 * size)
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  test('a duty without an off that matters is running throughout', () => {
    fc.assert(
      fc.property(arbitraryHeat, ({ machine, input }) => {
        const throughout = run(machine, input, { duration: 600, parts: 4 })
        const duty = run(machine, input, { duration: 600, parts: 4, duty: { on: 600, off: 60 } })
        expect(duty.columns).toEqual(throughout.columns)
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  test('a run cut in two is the run in one', () => {
    fc.assert(
      fc.property(arbitraryHeat, number(50, 550), ({ machine, input }, cut) => {
        const whole = run(machine, input, { duration: 600, parts: 1 })
        const { columns } = run(machine, input, { duration: cut, parts: 1 })
        const from = { winding: last(columns.winding), case: last(columns.case) }
        const rest = run(machine, input, { duration: 600 - cut, parts: 1, from })
        expect(Math.abs(last(rest.columns.winding) - last(whole.columns.winding))).toBeLessThan(CURVE)
        expect(Math.abs(last(rest.columns.case) - last(whole.columns.case))).toBeLessThan(CURVE)
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  test('what settles stays as it is, and a cooler start never ends hotter', () => {
    let settling = 0
    fc.assert(
      fc.property(arbitraryHeat, ({ machine, input }) => {
        const settled = settledHeat(machine, input)!
        if ('reason' in settled) return
        settling++
        const { winding, case: body } = settled
        // A motor that grew too weak on its way would not start again where it would have run on.
        const stays = run(machine, input, { duration: 1800, parts: 1, from: { winding, case: body } })
        expect(Math.abs(last(stays.columns.winding) - winding)).toBeLessThan(CURVE)
        const { ambient } = machine.thermal!
        const cold = run(machine, input, { duration: 1800, parts: 1 })
        expect(last(cold.columns.winding)).toBeLessThan(Math.max(winding, ambient) + CURVE)
      }),
      { seed: SEED, numRuns: RUNS },
    )
    expect(settling).toBeGreaterThan(RUNS / 2)
  })

  test('at 20 °C a machine reads as it is described', () => {
    fc.assert(
      fc.property(arbitraryHeat, ({ machine, input }) => {
        const point = newHeatPoint()
        writeRunning(point, heatSource(machine, input)!, 20, 20)
        expect(point.reading).toEqual(operatingPoint(compileDrive(machine), input)!.reading)
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })
})
