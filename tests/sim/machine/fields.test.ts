import { describe, expect, test } from 'vitest'
import { SECTIONS } from '../../../sim/machine/field.ts'
import { FIELDS, fieldAt, fieldsOf, valueAt, withValue } from '../../../sim/machine/fields.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { bootCleaner, classroomModel, cordWinder, demoMachines, ventOpener } from '../../support/machines.ts'
import { otherMachines } from '../../support/other-machines.ts'

const machines = [...demoMachines, ...otherMachines]

/** Paths of all numbers of a machine, found without the table. */
function numberPaths(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, part]) => {
    if (Array.isArray(value)) return numberPaths(part, `${path}[${key}]`)
    return numberPaths(part, path === '' ? key : `${path}.${key}`)
  })
}

const numbersOf = (machine: Machine): string[] => numberPaths(machine).filter((path) => path !== 'version')

describe('the table of fields', () => {
  test.each(machines)('has every number of the $name and nothing else', (machine) => {
    const listed = fieldsOf(machine).map(({ path }) => path)
    expect(listed.toSorted()).toEqual(numbersOf(machine).toSorted())
  })

  test('has no row that no machine uses', () => {
    const used = machines.flatMap((machine) =>
      fieldsOf(machine).map(({ path, when }) => `${when} ${path.replace(/\[\d+\]/g, '.*')}`),
    )
    expect(new Set(used)).toEqual(new Set(FIELDS.map(({ path, when }) => `${when} ${path}`)))
  })

  test('lists the numbers of a machine in the order of its file', () => {
    for (const machine of demoMachines) {
      const gearing = numbersOf(machine).filter(
        (path) => path.startsWith('gearing') || path.startsWith('control'),
      )
      const listed = fieldsOf(machine).map(({ path }) => path)
      expect(listed.filter((path) => gearing.includes(path))).toEqual(gearing)
    }
  })

  test.each(FIELDS)('$path ($when) has a sensible range, step and help', (field) => {
    const [low, high] = field.typical ?? [field.min, field.max]
    expect(field.min).toBeLessThan(field.max)
    expect(low).toBeGreaterThanOrEqual(field.min)
    expect(high).toBeLessThanOrEqual(field.max)
    expect(low).toBeLessThan(high)
    expect(field.step).toBeGreaterThan(0)
    expect(field.step).toBeLessThanOrEqual(field.max - field.min)
    expect(field.whole && !Number.isInteger(field.step)).toBe(false)
    expect(field.label).toMatch(/^[A-Z][^.!]*$/)
    expect(field.help).toMatch(/^[A-Z0-9][^!]*\.$/)
    expect(field.source).not.toBe('')
    expect(SECTIONS.map(({ name }) => name)).toContain(field.section)
  })

  test('gives every number of a machine its own label', () => {
    for (const machine of demoMachines) {
      const labels = fieldsOf(machine).map(({ label }) => label)
      expect(new Set(labels).size).toBe(labels.length)
    }
  })

  test('names what people and checks rely on', () => {
    expect(fieldAt('gearing.wormStarts')?.label).toBe('Worm starts')
    expect(fieldAt('gearing.wheelTeeth')?.label).toBe('Wheel teeth')
    expect(fieldsOf(bootCleaner).map(({ label }) => label)).toContain('Tap voltage, setting 3')
    expect(fieldsOf(bootCleaner).map(({ label }) => label)).toContain('Passive load, Brush free')
  })

  test('tells kinds that share a path apart', () => {
    expect(fieldAt('supply.voltage', 'mains')?.label).toBe('Mains voltage')
    expect(fieldAt('supply.voltage', 'battery')?.label).toBe('Battery voltage')
    expect(fieldAt('control.steps[7].duty', 'chopper')?.unit).toBe('%')
    expect(fieldAt('control.steps.*.speed')?.unit).toBe('r/min')
    expect(fieldAt('gearing.nothing')).toBeUndefined()
    expect(fieldAt('supply.frequency', 'battery')).toBeUndefined()
  })
})

describe('places in a machine', () => {
  test('a number is read by its path, also in a list', () => {
    expect(valueAt(bootCleaner, 'gearing.wheelTeeth')).toBe(20)
    expect(valueAt(bootCleaner, 'control.steps[4].voltage')).toBe(24)
    expect(valueAt(ventOpener, 'outputs.loads[0].active')).toBe(ventOpener.outputs.loads[0]?.active)
  })

  test('a path without a number is a mistake of the program', () => {
    expect(() => valueAt(classroomModel, 'motor.resistance')).toThrow("got 'motor.resistance'")
    expect(() => valueAt(bootCleaner, 'gearing.hand')).toThrow()
    expect(() => valueAt(bootCleaner, 'control.steps[9].voltage')).toThrow()
    expect(() => withValue(bootCleaner, 'gearing.none', 1)).toThrow('nothing at')
    expect(() => withValue(bootCleaner, '__proto__.polluted', 1)).toThrow()
  })

  test('a change leaves the old machine and its other parts alone', () => {
    const changed = withValue(bootCleaner, 'control.steps[2].voltage', 19)
    expect(valueAt(changed, 'control.steps[2].voltage')).toBe(19)
    expect(valueAt(bootCleaner, 'control.steps[2].voltage')).toBe(18)
    expect(changed.control.steps[1]).toBe(bootCleaner.control.steps[1])
    expect(changed.gearing).toBe(bootCleaner.gearing)
    expect(withValue(changed, 'control.steps[2].voltage', 18)).toEqual(bootCleaner)
  })

  test('a change to the same value gives the same machine', () => {
    for (const machine of demoMachines) {
      for (const { path } of fieldsOf(machine)) {
        expect(withValue(machine, path, valueAt(machine, path))).toBe(machine)
      }
    }
    expect(withValue(cordWinder, 'gearing.hand', cordWinder.gearing.hand)).toBe(cordWinder)
  })

  test('choices and names are changed the same way', () => {
    expect(withValue(bootCleaner, 'gearing.hand', 'left').gearing.hand).toBe('left')
    expect(withValue(bootCleaner, 'outputs.loads[0].name', 'Free').outputs.loads[0]?.name).toBe('Free')
  })
})
