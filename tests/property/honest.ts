/** What holds for every answer about a machine, be it sound or broken. */
import fc from 'fast-check'
import { expect } from 'vitest'
import { fieldsOf, valueAt } from '../../sim/machine/fields.ts'
import { parseMachine, printMachine } from '../../sim/machine/file.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { ownValue, pathKeys } from '../../sim/machine/path.ts'
import { hasErrors, type Problem } from '../../sim/machine/problem.ts'
import { demoMachines } from '../support/machines.ts'

export const SEED = 20_263

export const demo = fc.constantFrom(...demoMachines)

/** All that holds for a list of problems and the machine that was or was not made. */
export function expectHonest(value: unknown, machine: Machine | null, problems: readonly Problem[]): void {
  expect(machine === null).toBe(hasErrors(problems))
  for (const { path, message } of problems) {
    expect(message).not.toBe('')
    expect(message.length).toBeLessThan(4000)
    const holder = pathKeys(path).slice(0, -1).reduce<unknown>(ownValue, value)
    expect(typeof holder === 'object' || path === '', `${path}: ${message}`).toBe(true)
  }
  if (!machine) return
  for (const { path, min, max } of fieldsOf(machine)) {
    const number = valueAt(machine, path)
    expect(number >= min && number <= max, path).toBe(true)
  }
  expect(parseMachine(printMachine(machine)).machine).toEqual(machine)
}
