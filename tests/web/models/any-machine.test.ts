import fc from 'fast-check'
import { expect, test } from 'vitest'
import { gearDataSheet } from '../../../sim/gear/data-sheet.ts'
import { answer } from '../../../web/models/answer.ts'
import { fileDrawing, sheetDrawing } from '../../../web/models/drawing.ts'
import { svgFile } from '../../../web/models/marks.ts'
import { firstChanges, printGearing } from '../../../web/models/print-order.ts'
import { arbitraryRun } from '../../support/arbitraries.ts'
import { readBack, solidOf } from './read-back.ts'

const SEED = 20261125
const machines = fc
  .tuple(arbitraryRun, fc.constantFrom('throated', 'helical'))
  .map(([[machine], wheelForm]) => ({ ...machine, gearing: { ...machine.gearing, wheelForm } }))

test('a set of any machine is three closed bodies in either form, with the same volume', () => {
  fc.assert(
    fc.property(machines, ({ name, gearing }) => {
      const printed = printGearing(gearing, firstChanges(gearing))
      const order = { machineName: name, gearing: printed, what: 'set', fineness: 'display' } as const
      const stl = answer({ order, format: 'stl' }, () => {})
      const inStl = solidOf(readBack(stl.file!, 'stl').bodies[0]!)
      expect([inStl.pieces, inStl.faultyEdges]).toEqual([3, 0])
      const { bodies, items, warnings } = readBack(answer({ order, format: '3mf' }, () => {}).file!, '3mf')
      expect(warnings).toBe(0)
      const solids = bodies.map(solidOf)
      expect(solids.map(({ pieces, faultyEdges }) => [pieces, faultyEdges])).toEqual([
        [1, 0],
        [1, 0],
      ])
      expect(bodies.every(({ manifoldAndOriented, valid }) => manifoldAndOriented && valid)).toBe(true)
      const inThreeMf = items.reduce((sum, { body }) => sum + solids[body]!.volume, 0)
      expect(Math.abs(inThreeMf / inStl.volume - 1)).toBeLessThan(1e-5)
    }),
    { numRuns: 4, seed: SEED },
  )
})

test('any machine has a drawing and a sheet of real numbers', () => {
  fc.assert(
    fc.property(machines, ({ name, gearing }) => {
      const drawn = [
        fileDrawing(name, gearing),
        sheetDrawing(name, gearing, { width: 180, height: 200 }),
      ].map(svgFile)
      for (const svg of drawn) expect(svg).not.toMatch(/NaN|undefined|Infinity/)
      for (const { value } of gearDataSheet(gearing).flatMap(({ rows }) => rows)) {
        expect(typeof value === 'string' || Number.isFinite(value)).toBe(true)
      }
    }),
    { numRuns: 20, seed: SEED },
  )
})
