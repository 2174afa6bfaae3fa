/** That the cures named in the messages about a pair do cure. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import type { GearProblem } from '../../sim/gear/gear-problem.ts'
import { gearProblems } from '../../sim/gear/gear-problems.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { anyGearing } from '../support/any-gearing.ts'

const SEED = 20_261_125
const RUNGS = 10

type Ladder = (gearing: GearNumbers, rung: number) => GearNumbers

const between = (from: number, to: number, rung: number): number => from + ((to - from) * rung) / RUNGS

type NumberName =
  | 'diameterQuotient'
  | 'pressureAngle'
  | 'wheelWidth'
  | 'addendum'
  | 'backlash'
  | 'boreDiameter'
  | 'discDiameter'

const towards =
  (name: NumberName, end: number): Ladder =>
  (gearing, rung) => ({ ...gearing, [name]: between(gearing[name], end, rung) })
const shifted =
  (end: number): Ladder =>
  (gearing, rung) => ({
    ...gearing,
    centres: { kind: 'shift', profileShift: between(pairProportions(gearing).profileShift, end, rung) },
  })
const replaced =
  (change: Partial<GearNumbers>): Ladder =>
  (gearing) => ({ ...gearing, ...change })

/** Each cure by its words: step by step further, to the end of what the field allows. */
const LADDERS: Readonly<Record<string, Ladder>> = {
  'more teeth': (gearing, rung) => ({
    ...gearing,
    wheelTeeth: Math.round(between(gearing.wheelTeeth, 120, rung)),
  }),
  'fewer starts': (gearing, rung) => ({
    ...gearing,
    wormStarts: Math.max(1, gearing.wormStarts - rung),
  }),
  'a larger diameter quotient': towards('diameterQuotient', 25),
  'a larger one': towards('diameterQuotient', 25),
  'a larger pressure angle': towards('pressureAngle', 30),
  'a smaller pressure angle': towards('pressureAngle', 10),
  'a larger profile shift': shifted(1),
  'a smaller profile shift': shifted(-1),
  'a smaller addendum': towards('addendum', 0.3),
  'a larger addendum': towards('addendum', 1.5),
  'a narrower wheel': towards('wheelWidth', 1),
  'a wider wheel': towards('wheelWidth', 200),
  'less backlash': towards('backlash', 0),
  'a smaller bore': towards('boreDiameter', 0.1),
  'a larger disc': towards('discDiameter', 1000),
  'another profile': replaced({ profile: 'ZA' }),
  'profile ZA': replaced({ profile: 'ZA' }),
  'profile ZI': replaced({ profile: 'ZI' }),
  'a throated wheel': replaced({ wheelForm: 'throated' }),
  'such a distance': shifted(0),
}

const curesIn = (message: string): readonly string[] => {
  const said = message.slice(message.lastIndexOf('take '))
  return Object.keys(LADDERS).filter((words) => said.includes(words))
}

/** The same complaint, whatever its numbers. */
const kindOf = ({ path, severity, message }: GearProblem): string =>
  `${severity} ${path} ${message.replace(/[\d.−]+/g, '#').slice(0, 40)}`

test(`each cure named in 300 random pairs cures by itself (seed ${SEED})`, () => {
  const tried = new Map<string, number>()
  const law = fc.property(anyGearing, (gearing) => {
    for (const problem of gearProblems(gearing)) {
      const kind = kindOf(problem)
      for (const cure of curesIn(problem.message)) {
        const ladder = LADDERS[cure]!
        const helps = Array.from({ length: RUNGS }, (_, i) => RUNGS - i).some((rung) =>
          gearProblems(ladder(gearing, rung)).every((other) => kindOf(other) !== kind),
        )
        expect(helps, `${problem.message} | ${cure}`).toBe(true)
        tried.set(cure, (tried.get(cure) ?? 0) + 1)
      }
    }
  })
  fc.assert(law, { seed: SEED, numRuns: 300, endOnFailure: true })
  // every kind of cure was met
  expect([...tried.keys()].sort()).toEqual(Object.keys(LADDERS).sort())
})
