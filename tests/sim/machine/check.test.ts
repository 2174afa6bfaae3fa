import { describe, expect, test } from 'vitest'
import { checkShape, checkValue } from '../../../sim/machine/check.ts'
import { FIELDS, fieldsOf, withValue } from '../../../sim/machine/fields.ts'
import { bootCleaner, demoMachines, ventOpener } from '../../support/machines.ts'
import { otherMachines } from '../../support/other-machines.ts'
import { at, shapeAt } from './told-at.ts'

test.each([...demoMachines, ...otherMachines])(
  'the $name is a machine without an error or a warning',
  (machine) => {
    const { machine: read, problems } = checkValue(machine)
    expect(problems.filter(({ severity }) => severity !== 'note')).toEqual([])
    expect(read).toEqual(machine)
  },
)

/** Numbers whose other end asks for another chain: see rules.test.ts. */
const MUST_FIT = new Set(['rectifier.capacitance', 'supply.resistance', 'control.steps[0].waves'])

describe('numbers', () => {
  const teeth = (wheelTeeth: unknown): string[] =>
    shapeAt({ ...bootCleaner, gearing: { ...bootCleaner.gearing, wheelTeeth } }, 'gearing.wheelTeeth')

  test.each([
    [7, 'error: must be a whole number, 8 to 120, got 7'],
    [20.5, 'error: must be a whole number, 8 to 120, got 20.5'],
    [-20, 'error: must be a whole number, 8 to 120, got −20'],
    [Number.NaN, 'error: must be a whole number, 8 to 120, got NaN'],
    [Infinity, 'error: must be a whole number, 8 to 120, got Infinity'],
    ['20', "error: must be a whole number, 8 to 120, got the text '20'; leave out the quotation marks"],
    ['many', "error: must be a whole number, 8 to 120, got the text 'many'"],
    [null, 'error: must be a whole number, 8 to 120, got null'],
    [undefined, 'error: must be a whole number, 8 to 120, got nothing'],
    [true, 'error: must be a whole number, 8 to 120, got true'],
    [[20], 'error: must be a whole number, 8 to 120, got a list of 1'],
    [{ value: 20 }, 'error: must be a whole number, 8 to 120, got a group of fields'],
    [20n, 'error: must be a whole number, 8 to 120, got 20'],
    [() => 20, 'error: must be a whole number, 8 to 120, got a function'],
  ])('%s teeth', (value, message) => {
    expect(teeth(value)).toEqual([message])
  })

  test('carry the unit of their field', () => {
    const wide = withValue(bootCleaner, 'gearing.wheelWidth', 500)
    expect(shapeAt(wide, 'gearing.wheelWidth')).toEqual(['error: must be a number, 1 to 200 mm, got 500 mm'])
  })

  test('outside the usual range are warned of and still make a machine', () => {
    const thick = withValue(bootCleaner, 'gearing.diameterQuotient', 6)
    expect(shapeAt(thick, 'gearing.diameterQuotient')).toEqual(['warning: is usually 7 to 25, got 6'])
    expect(checkShape(thick).machine).toEqual(thick)
  })

  test('are taken at both ends of every range, and refused just beyond', () => {
    for (const machine of [...demoMachines, ...otherMachines]) {
      for (const { path, min, max } of fieldsOf(machine)) {
        const errors = (value: number): string[] =>
          shapeAt(withValue(machine, path, value), path).filter((told) => told.startsWith('error'))
        if (MUST_FIT.has(path)) continue
        expect([path, ...errors(min), ...errors(max)]).toEqual([path])
        expect(errors(min - 1e-9 - Math.abs(min) * 1e-9), path).toHaveLength(1)
        expect(errors(max + 1e-9 + Math.abs(max) * 1e-9), path).toHaveLength(1)
      }
    }
  })

  test('a negative zero becomes zero, which a file can hold', () => {
    const { machine } = checkShape(withValue(bootCleaner, 'supply.resistance', -0))
    expect(Object.is(machine?.supply.kind === 'mains' && machine.supply.resistance, 0)).toBe(true)
  })
})

describe('names and lists', () => {
  test('two loads of one name cannot be told apart', () => {
    const twice = withValue(bootCleaner, 'outputs.loads[1].name', 'Brush free')
    expect(shapeAt(twice, 'outputs.loads[1].name')).toEqual([
      "error: must differ from the other loads' names, got the text 'Brush free' again",
    ])
  })

  test.each([
    ['', 'nothing to read'],
    ['   ', 'nothing to read'],
    ['x'.repeat(81), '81 characters'],
    ['two\nlines', 'a control character in it'],
    [7, '7'],
  ])('a machine cannot be called %j', (name, got) => {
    expect(shapeAt({ ...bootCleaner, name }, 'name')).toEqual([
      `error: must be a line of text of 1 to 80 characters, got ${got}`,
    ])
  })

  test('a machine has from one to twelve settings, and each of them is still looked at', () => {
    const steps = (count: number): readonly { duty: number }[] =>
      Array.from({ length: count }, () => ({ duty: 0 }))
    const chopper = (count: number): unknown => ({
      ...ventOpener,
      control: { ...ventOpener.control, steps: steps(count) },
    })
    expect(shapeAt(chopper(0), 'control.steps')).toEqual(['error: must be a list of 1 to 12 settings, got 0'])
    expect(shapeAt(chopper(13), 'control.steps')).toEqual([
      'error: must be a list of 1 to 12 settings, got 13',
    ])
    expect(shapeAt(chopper(13), 'control.steps[11].duty')).toHaveLength(1)
    expect(shapeAt(chopper(1e6), 'control.steps')).toHaveLength(1)
  })

  test('holes in a list are missing settings', () => {
    const holes = { ...ventOpener, control: { ...ventOpener.control, steps: Array.from({ length: 2 }) } }
    expect(shapeAt(holes, 'control.steps[1]')).toEqual([
      'error: must be a group of the fields duty, got nothing',
    ])
  })

  test('a choice names what can be chosen', () => {
    const other = { ...bootCleaner, gearing: { ...bootCleaner.gearing, hand: 'both' } }
    expect(shapeAt(other, 'gearing.hand')).toEqual(["error: must be 'right' or 'left', got the text 'both'"])
  })
})

describe('unknown fields', () => {
  test('are named, kept in the message and left out of the machine', () => {
    const value = {
      ...bootCleaner,
      colour: { case: ['grey', 7, null] },
      rotor: { ...bootCleaner.rotor, poles: 3 },
    }
    const { machine, problems } = checkShape(value)
    expect(machine).toEqual(bootCleaner)
    expect(at(problems, 'colour')).toEqual([
      'warning: is not a field here and is left out; it was {"case": ["grey", 7, null]}',
    ])
    expect(at(problems, 'rotor.poles')).toEqual(['warning: is not a field here and is left out; it was 3'])
  })

  test('with names that no path can hold are told at their group', () => {
    const { machine, problems } = checkShape({
      ...bootCleaner,
      rotor: { ...bootCleaner.rotor, 'a.b': 1, '': 2 },
    })
    expect(machine).toEqual(bootCleaner)
    expect(at(problems, 'rotor')).toEqual([
      'warning: has "a.b", which is not a field here and is left out; it was 1',
      'warning: has "", which is not a field here and is left out; it was 2',
    ])
  })

  test('named like parts of every object are harmless', () => {
    const text = JSON.stringify(bootCleaner).replace('{', '{"__proto__": {"polluted": 1}, "constructor": 2,')
    const { machine, problems } = checkShape(JSON.parse(text))
    expect(machine).toEqual(bootCleaner)
    expect(problems.map(({ path }) => path)).toEqual(['__proto__', 'constructor'])
    expect('polluted' in {}).toBe(false)
  })

  test('a part inherited from a prototype is not a part', () => {
    expect(shapeAt(Object.create(bootCleaner), 'gearing')).toHaveLength(1)
    const kind = { ...bootCleaner, supply: { kind: 'toString' } }
    expect(shapeAt(kind, 'supply.kind')).toEqual([
      "error: must be 'mains' or 'battery' or 'crank', got the text 'toString'",
    ])
  })

  test('in thousands, endless or of strange kinds give a short list of short messages', () => {
    const endless: Record<string, unknown> = {
      big: 10n,
      sign: Symbol('s'),
      call: () => 1,
      text: 'x'.repeat(1e6),
    }
    endless.self = endless
    endless.wide = Array.from({ length: 1000 }, () => endless)
    const many = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`key${i}`, i]))
    const { machine, problems } = checkShape({ ...bootCleaner, endless, ...many })
    expect(machine).toEqual(bootCleaner)
    expect(problems.length).toBeLessThan(30)
    expect(problems.at(-1)?.message).toBe('has 4981 more fields that are not of a machine and are left out')
    for (const { message } of problems) expect(message.length).toBeLessThan(3000)
  })
})

describe('all at once', () => {
  test.each([null, undefined, 1, 'text', [], Symbol('s'), () => 1, new Date(0), new Map()])(
    'anything else than a machine, as %s, is told so',
    (value) => {
      const { machine, problems } = checkShape(value)
      expect(machine).toBeNull()
      expect(problems.length).toBeGreaterThan(0)
    },
  )

  test('a machine with a mistake in every number shows every one of them, in the order of the file', () => {
    for (const machine of demoMachines) {
      const paths = fieldsOf(machine).map(({ path }) => path)
      const broken = paths.reduce((changed, path) => withValue(changed, path, Number.NaN), machine)
      const { machine: read, problems } = checkShape(broken)
      expect(read).toBeNull()
      expect(problems.map(({ path }) => path)).toEqual(paths)
    }
  })

  test('every field of the table is checked', () => {
    const broken = [...demoMachines, ...otherMachines].flatMap((machine) =>
      fieldsOf(machine).filter(
        ({ path, max }) => shapeAt(withValue(machine, path, max * 2 + 1), path).length > 0,
      ),
    )
    const patterns = broken.map(({ path, when }) => `${when} ${path.replace(/\[\d+\]/g, '.*')}`)
    expect(new Set(patterns).size).toBe(FIELDS.length)
  })
})
