import fc from 'fast-check'
import { expect, test } from 'vitest'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { withCentres } from '../../../sim/machine/centres.ts'
import { checkMachine } from '../../../sim/machine/check.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { hasErrors } from '../../../sim/machine/problem.ts'
import { bootCleaner, ventOpener } from '../../support/machines.ts'
import { near } from '../../support/near.ts'

test('asking for the kind that is given changes nothing', () => {
  expect(withCentres(bootCleaner, 'shift')).toBe(bootCleaner)
  expect(withCentres(ventOpener, 'distance')).toBe(ventOpener)
})

test('the boot cleaner stands on standard centres, 30 mm apart', () => {
  const given = withCentres(bootCleaner, 'distance')
  expect(given.gearing.centres).toEqual({ kind: 'distance', centreDistance: 30 })
  expect(withCentres(given, 'shift')).toEqual(bootCleaner)
})

const SEED = 20_261

test(`whichever way it is given, the pair stays where it is (150 pairs, seed ${SEED})`, () => {
  const law = fc.property(
    fc.double({ min: -1, max: 1, noNaN: true }),
    fc.constantFrom('axial', 'normal', 'mixed'),
    fc.integer({ min: 1, max: 4 }),
    fc.integer({ min: 20, max: 60 }),
    (profileShift, depthRule, wormStarts, wheelTeeth) => {
      const machine: Machine = {
        ...bootCleaner,
        gearing: {
          ...bootCleaner.gearing,
          depthRule,
          wormStarts,
          wheelTeeth,
          centres: { kind: 'shift', profileShift },
        },
      }
      const there = withCentres(machine, 'distance')
      const back = withCentres(there, 'shift')
      const before = pairProportions(machine.gearing)
      for (const changed of [there, back]) {
        const after = pairProportions(changed.gearing)
        near(after.centreDistance, before.centreDistance, 4e-9)
        near(after.profileShift, before.profileShift, 2e-9)
        near(after.throatRadiusWheel, before.throatRadiusWheel, 4e-9)
        expect(hasErrors(checkMachine(changed))).toBe(hasErrors(checkMachine(machine)))
      }
    },
  )
  fc.assert(law, { seed: SEED, numRuns: 150 })
})
