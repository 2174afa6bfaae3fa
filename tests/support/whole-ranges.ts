import fc from 'fast-check'
import type { DriveInput } from '../../sim/drive/input.ts'
import { checkMachine } from '../../sim/machine/check.ts'
import { fieldsOf, withValue } from '../../sim/machine/fields.ts'
import type { FieldInstance } from '../../sim/machine/fields.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { hasErrors } from '../../sim/machine/problem.ts'
import { bootCleaner, cordWinder, ventOpener } from './machines.ts'

/** Smallest part of the end of a range that is drawn besides nothing at all. */
const LEAST_PART = 1e-9

/** A value of the field's whole range, small and large ones alike. */
function valueOf({ min, max, whole }: FieldInstance): fc.Arbitrary<number> {
  if (whole) return fc.integer({ min, max })
  const low = Math.log(Math.max(min, max * LEAST_PART))
  const spread = fc
    .double({ min: low, max: Math.log(max), noNaN: true })
    .map((log) => Math.min(max, Math.exp(log)))
  const size = spread.map((value) => Math.max(min, value))
  const signed = min < 0 ? fc.tuple(size, fc.constantFrom(1, -1)).map(([value, sign]) => sign * value) : size
  return fc.oneof({ weight: 6, arbitrary: signed }, fc.constant(Math.max(min, 0)), fc.constant(max))
}

/** Without it the bridge is solved in closed form. */
const CAPACITANCE = 'rectifier.capacitance'

/**
 * The machine with any of its numbers anywhere in their ranges, but for a capacitor that it does not have; each keeps
 * its value most of the time.
 */
function anywhere(machine: Machine): fc.Arbitrary<Machine> {
  const smoothed = (machine.rectifier?.capacitance ?? 0) > 0
  const fields = fieldsOf(machine).filter(({ path }) => smoothed || path !== CAPACITANCE)
  const changes = fields.map((field) =>
    fc
      .oneof({ weight: 4, arbitrary: fc.constant(null) }, valueOf(field))
      .map((value) => ({ path: field.path, value })),
  )
  return fc
    .tuple(...changes)
    .map((drawn) =>
      drawn.reduce<Machine>(
        (made, { path, value }) => (value === null ? made : withValue(made, path, value)),
        machine,
      ),
    )
    .filter((made) => !hasErrors(checkMachine(made)))
}

const inputOf = (machine: Machine): fc.Arbitrary<DriveInput> =>
  fc.record({
    setting: fc.integer({ min: 0, max: machine.control.steps.length - 1 }),
    connected: fc.oneof({ weight: 6, arbitrary: fc.constant(true) }, fc.constant(false)),
    sense: machine.supply.kind === 'mains' ? fc.constant(1 as const) : fc.constantFrom(1, -1),
    leftLoad: fc.integer({ min: 0, max: 1 }),
    rightLoad: fc.integer({ min: 0, max: 1 }),
    jammed: fc.constant('none' as const),
  })

/** A valid motor drive from the whole of the field table that has a closed form, with an input that it offers. */
export const wholeRangeRun: fc.Arbitrary<readonly [Machine, DriveInput]> = fc
  .oneof(anywhere(bootCleaner), anywhere(ventOpener))
  .chain((machine) => inputOf(machine).map((input) => [machine, input] as const))

/** The same with a series motor on the mains. */
export const wholeRangeSeriesRun: fc.Arbitrary<readonly [Machine, DriveInput]> = anywhere(cordWinder).chain(
  (machine) => inputOf(machine).map((input) => [machine, input] as const),
)
