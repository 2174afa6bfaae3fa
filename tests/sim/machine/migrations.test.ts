import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { parseMachine } from '../../../sim/machine/file.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { farSidePhase } from '../../../sim/gear/wheel-motion.ts'
import { radians } from '../../../sim/quantity/convert.ts'
import { bootCleaner } from '../../support/machines.ts'
import { near } from '../../support/near.ts'

/** A file that version 1 of the program wrote. */
const text = readFileSync(new URL('./boot-cleaner-version-1.json', import.meta.url), 'utf8')

test('a file of version 1 opens, and the step is told by its name', () => {
  const { machine, problems } = parseMachine(text)
  expect(machine).toMatchObject({ version: 3, name: 'Boot cleaner', supply: bootCleaner.supply })
  expect(problems[0]!.message).toMatch(/^was brought from 1 to 2: wheel form, tooth depth, backlash/)
  expect(problems[1]!.message).toMatch(/^was brought from 2 to 3: smoothing capacitor, breakaway/)
  expect(problems.filter(({ severity }) => severity !== 'note')).toEqual([])
})

test('the teeth stay those that version 1 drew: full depth, no shift, no backlash, standard centres', () => {
  const { gearing } = parseMachine(text).machine!
  expect(gearing).toMatchObject({ wheelForm: 'throated', depthRule: 'axial', backlash: 0 })
  const pair = pairProportions(gearing)
  near(pair.centreDistance, 30, 1e-12)
  near(pair.addendumWorm, 2, 1e-12)
  near(pair.dedendumWheel, 2.5, 1e-12)
})

test.each([
  { starts: 1, teeth: 20, rows: 6 },
  { starts: 1, teeth: 21, rows: 4 },
  { starts: 2, teeth: 31, rows: 5 },
  { starts: 3, teeth: 40, rows: 1 },
])('$rows rows on $starts/$teeth pass half a pitch apart', ({ starts, teeth, rows }) => {
  const file = JSON.parse(text) as { gearing: object; outputs: object }
  const { machine } = parseMachine(
    JSON.stringify({
      ...file,
      gearing: { ...file.gearing, wormStarts: starts, wheelTeeth: teeth },
      outputs: { ...file.outputs, tufts: rows },
    }),
  )
  const pitch = (2 * Math.PI) / rows
  const apart = 2 * radians(machine!.outputs.keyAngle) + farSidePhase(starts, teeth) - Math.PI
  near((((apart / pitch) % 1) + 1) % 1, 0.5, 1e-4)
})

test('a file of version 1 without its gearing or outputs tells what is missing instead of failing', () => {
  const file = JSON.parse(text) as object
  for (const gone of [{ gearing: null }, { outputs: [] }, { gearing: 'none' }]) {
    const { machine, problems } = parseMachine(JSON.stringify({ ...file, ...gone }))
    expect(machine).toBeNull()
    expect(problems.map(({ path }) => path)).toContain(Object.keys(gone)[0])
  }
})

test('a file of version 2 opens with nothing said of heat and brushes, and no protection', () => {
  const second = readFileSync(new URL('./boot-cleaner-version-2.json', import.meta.url), 'utf8')
  const { machine, problems } = parseMachine(second)
  expect(problems.filter(({ severity }) => severity !== 'note')).toEqual([])
  expect(machine).toEqual({
    ...bootCleaner,
    outputs: { ...bootCleaner.outputs, jamTorque: 100 },
    thermal: null,
    brushes: null,
    protection: { kind: 'none' },
  })
})
