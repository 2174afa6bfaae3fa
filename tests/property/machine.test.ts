import fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkMachine, checkValue } from '../../sim/machine/check.ts'
import { type FieldInstance, fieldsOf, withValue } from '../../sim/machine/fields.ts'
import { parseMachine, printMachine } from '../../sim/machine/file.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { demo, expectHonest, SEED } from './honest.ts'

/** Distances that give the wheel a profile shift which every pair here can bear. */
function fittingDistance({ gearing }: Machine): readonly [number, number] {
  const { axialModule: m, diameterQuotient: q, wheelTeeth: z2 } = gearing
  const standard = (m * (q + z2)) / 2
  return [standard - 0.2 * m, standard + 0.3 * m]
}

/** A number that the field takes; the physics of the pair is kept to what every demo machine can bear. */
function fitting(field: FieldInstance, part: number, machine: Machine): number {
  const ranges: Readonly<Record<string, readonly [number, number]>> = {
    'supply.frequency': [47, 52],
    'brushes.arcWidth': [0.5, 1.5],
    'gearing.wormStarts': [1, 3],
    'gearing.wheelTeeth': [24, 60],
    'gearing.axialModule': [1, 5],
    'gearing.diameterQuotient': [9, 14],
    'gearing.pressureAngle': [20, 22],
    'gearing.wheelWidth': [4, 10],
    'gearing.friction': [0, 0.3],
    'gearing.addendum': [0.8, 1],
    'gearing.clearance': [0.15, 0.3],
    'gearing.backlash': [0, 0.3],
    'gearing.boreDiameter': [0.5, 6],
    'gearing.discDiameter': [60, 1000],
    'gearing.centres.profileShift': [-0.2, 0.3],
    'gearing.centres.centreDistance': fittingDistance(machine),
    'rotor.inertia': [1, 10_000],
    'outputs.wheelInertia': [0.001, 10],
    'outputs.hubDiameter': [1, 20],
    'outputs.sweepDiameter': [24, 5000],
  }
  const [least, most] = ranges[field.path] ?? [field.min, field.max]
  const value = least + part * (most - least)
  return field.whole ? Math.round(value) : value
}

const DRAWS = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 120, maxLength: 120 })

/** A demo machine with every number drawn anew; `number` makes one of a field and a draw from 0 to 1. */
const drawnMachine = (
  number: (field: FieldInstance, draw: number, drawn: Machine) => number,
): fc.Arbitrary<Machine> =>
  fc
    .tuple(demo, DRAWS)
    .map(([machine, draws]) =>
      fieldsOf(machine).reduce(
        (drawn, field, i) => withValue(drawn, field.path, number(field, draws[i] ?? 0, drawn)),
        machine,
      ),
    )

const anywhere = ({ min, max, whole }: FieldInstance, draw: number): number => {
  const value = min + draw * (max - min)
  return whole ? Math.round(value) : value
}

test(`2000 machines with every number drawn anew are taken, and come back equal from their text (seed ${SEED})`, () => {
  const law = fc.property(drawnMachine(fitting), (machine) => {
    expect(checkMachine(machine).filter(({ severity }) => severity === 'error')).toEqual([])
    const text = printMachine(machine)
    const read = parseMachine(text).machine
    expect(read).toEqual(machine)
    expect(read && printMachine(read)).toBe(text)
  })
  fc.assert(law, { seed: SEED, numRuns: 2000 })
})

test(`500 machines drawn from the whole of every range get sentences without NaN (seed ${SEED})`, () => {
  let accepted = 0
  const law = fc.property(drawnMachine(anywhere), (machine) => {
    const { machine: read, problems } = checkValue(machine)
    expectHonest(machine, read, problems)
    for (const { message } of problems) expect(message).not.toMatch(/NaN|Infinity|undefined/)
    if (read) accepted++
  })
  fc.assert(law, { seed: SEED, numRuns: 500 })
  expect(accepted).toBeGreaterThan(50)
})
