import { expect, test } from 'vitest'
import { compileCircuits, DESCRIBED_WARMTH } from '../../../sim/drive/circuits.ts'
import { tableOf } from '../../../sim/drive/closed-forms.ts'
import { lookUpCycle, solveTabulated } from '../../../sim/electric/cycle-table.ts'
import { newCycle } from '../../../sim/electric/cycle.ts'
import { fittings } from '../../support/fittings.ts'
import { near } from '../../support/near.ts'

const tabulated = fittings.flatMap((machine) =>
  compileCircuits(machine, DESCRIBED_WARMTH)
    .slice(-1)
    .filter((circuit) => tableOf(circuit))
    .map((circuit) => [machine.name, circuit] as const),
)

test.each(tabulated)('%s: means between solved speeds are what solving there gives', (_, circuit) => {
  const table = tableOf(circuit)!
  const [read, solved] = [newCycle(), newCycle()]
  table.speed = 0
  solveTabulated(solved, table)
  const { torque, mean, square, sourcePower } = solved
  for (let part = 0.013; part < 4; part += 0.377) {
    table.speed = part * table.width
    lookUpCycle(read, table)
    table.speed = part * table.width
    solveTabulated(solved, table)
    near(read.torque, solved.torque, 1e-7 * torque)
    near(read.mean, solved.mean, 1e-7 * mean)
    near(read.square, solved.square, 1e-7 * square)
    near(read.sourcePower, solved.sourcePower, 1e-7 * sourcePower)
  }
})

test('at a solved speed a table gives the solution, and asked again it solves nothing anew', () => {
  const [, circuit] = tabulated.find(([name]) => name === 'triac, series motor')!
  const table = tableOf(circuit)!
  const [read, solved] = [newCycle(), newCycle()]
  table.speed = table.width
  lookUpCycle(read, table)
  solveTabulated(solved, table)
  expect([read.torque, read.square]).toEqual([solved.torque, solved.square])
  const { used } = table
  for (let n = 0; n < 100; n++) {
    table.speed = table.width * (1 + n / 1e4)
    lookUpCycle(read, table)
  }
  expect(table.used).toBe(used)
})

test('far outside its cells a table solves every speed by itself', () => {
  const [, circuit] = tabulated.find(([name]) => name === 'triac, series motor')!
  const table = tableOf(circuit)!
  const read = newCycle()
  table.speed = 300 * table.width
  lookUpCycle(read, table)
  expect(table.used).toBe(1)
  expect(read.torque).toBeGreaterThan(0)
})
