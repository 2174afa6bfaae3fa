import { describe, expect, test } from 'vitest'
import { checkMachine, checkShape, checkValue } from '../../../sim/machine/check.ts'
import { FIELDS, fieldsOf, withValue } from '../../../sim/machine/fields.ts'
import type { Problem } from '../../../sim/machine/problem.ts'
import { bootCleaner, classroomModel, cordWinder, demoMachines, ventOpener } from '../../support/machines.ts'

const at = (problems: readonly Problem[], path: string): string[] =>
  problems
    .filter((problem) => problem.path === path)
    .map(({ severity, message }) => `${severity}: ${message}`)

const shapeAt = (value: unknown, path: string): string[] => at(checkShape(value).problems, path)

test.each(demoMachines)('the $name is a machine without an error or a warning', (machine) => {
  const { machine: read, problems } = checkValue(machine)
  expect(problems.filter(({ severity }) => severity !== 'note')).toEqual([])
  expect(read).toEqual(machine)
})

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
    for (const machine of demoMachines) {
      for (const { path, min, max } of fieldsOf(machine)) {
        const errors = (value: number): string[] =>
          shapeAt(withValue(machine, path, value), path).filter((told) => told.startsWith('error'))
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

describe('parts that do not go together', () => {
  const { transformer, rectifier, motor, supply, control } = bootCleaner

  test.each([
    ['taps behind a battery', { ...bootCleaner, supply: ventOpener.supply }, 'supply.kind'],
    ['taps behind a crank', { ...bootCleaner, supply: { kind: 'crank' } }, 'supply.kind'],
    ['taps without a transformer', { ...bootCleaner, transformer: null }, 'transformer'],
    [
      'a permanent-magnet motor on mains without a rectifier',
      { ...bootCleaner, rectifier: null },
      'rectifier',
    ],
    ['taps with a universal motor', { ...bootCleaner, motor: cordWinder.motor }, 'motor.kind'],
    ['taps without a motor', { ...bootCleaner, motor: null }, 'motor'],
    ['a chopper behind mains', { ...ventOpener, supply }, 'supply.kind'],
    ['a transformer behind a battery', { ...ventOpener, transformer }, 'transformer'],
    ['a rectifier behind a battery', { ...ventOpener, rectifier }, 'rectifier'],
    ['phase control behind a battery', { ...cordWinder, supply: ventOpener.supply }, 'supply.kind'],
    ['phase control of a permanent-magnet motor', { ...cordWinder, motor }, 'motor.kind'],
    ['phase control behind a transformer', { ...cordWinder, transformer }, 'transformer'],
    ['a crank with a motor', { ...classroomModel, motor }, 'motor'],
    ['a crank with mains', { ...classroomModel, supply }, 'supply.kind'],
    ['a crank with a transformer', { ...classroomModel, transformer }, 'transformer'],
  ])('%s', (_, value, path) => {
    const { machine, problems } = checkShape(value)
    expect(machine).toBeNull()
    expect(problems.map((problem) => problem.path)).toEqual([path])
    expect(problems[0]?.message).toMatch(/^must be .* where the control is '.*', got /)
  })

  test('the message about a supply says which controls go with it', () => {
    expect(shapeAt({ ...classroomModel, supply }, 'supply.kind')).toEqual([
      "error: must be 'crank' where the control is 'crank', got 'mains', which goes with 'taps' or 'phase'",
    ])
  })

  test('a control of another supply shows each of its misfits at once', () => {
    const { problems } = checkShape({ ...classroomModel, control })
    expect(problems.map(({ path }) => path)).toEqual(['supply.kind', 'transformer', 'rectifier', 'motor'])
  })
})

describe('the mains', () => {
  const mains = (path: string, value: number): string[] => shapeAt(withValue(bootCleaner, path, value), path)

  // IEC 60038: 230 V within 10 %, from memory; EN 50160: 50 Hz, 49.5 to 50.5 Hz usually and 47 to 52 Hz always
  test.each([
    ['supply.voltage', 207, []],
    ['supply.voltage', 253, []],
    ['supply.voltage', 206.9, ['warning: is usually 207 to 253 V at a 230 V supply, got 206.9 V']],
    ['supply.voltage', 253.1, ['warning: is usually 207 to 253 V at a 230 V supply, got 253.1 V']],
    ['supply.voltage', 120, []],
    ['supply.frequency', 49.5, []],
    ['supply.frequency', 50.5, []],
    ['supply.frequency', 60, []],
    ['supply.frequency', 49.4, ['warning: is usually 49.5 to 50.5 Hz at a 50 Hz supply, got 49.4 Hz']],
    ['supply.frequency', 60.6, ['warning: is usually 59.5 to 60.5 Hz at a 60 Hz supply, got 60.6 Hz']],
    ['supply.frequency', 52.1, ['error: must be 47 to 52 Hz or 57 to 62 Hz, got 52.1 Hz']],
    ['supply.frequency', 56.9, ['error: must be 47 to 52 Hz or 57 to 62 Hz, got 56.9 Hz']],
    ['supply.frequency', 46.9, ['error: must be a number, 47 to 62 Hz, got 46.9 Hz']],
  ])('%s of %s', (path, value, told) => {
    expect(mains(path, value)).toEqual(told)
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
    const broken = demoMachines.flatMap((machine) =>
      fieldsOf(machine).filter(
        ({ path, max }) => shapeAt(withValue(machine, path, max * 2 + 1), path).length > 0,
      ),
    )
    const patterns = broken.map(({ path, when }) => `${when} ${path.replace(/\[\d+\]/g, '.*')}`)
    expect(new Set(patterns).size).toBe(FIELDS.length)
  })
})

describe('the physics of the mesh', () => {
  const locking = (friction: number): (string | undefined)[] =>
    at(checkMachine(withValue(cordWinder, 'gearing.friction', friction)), 'gearing.friction')
      .filter((told) => told.startsWith('note'))
      .map((told) => told.split(':')[1])

  test('self-locking is a note just from cos an tan g up', () => {
    // 3 starts, q = 10, an = 20 deg
    const limit = Math.cos(Math.PI / 9) * 0.3
    expect(locking(limit * 1.001)).toEqual([' makes the pair self-locking'])
    expect(locking(limit * 0.999)).toEqual([' makes the pair nearly self-locking'])
    expect(locking(limit * 0.5)).toEqual([])
  })

  test('a wheel as wide as the worm is thick cannot be cut', () => {
    // boot cleaner: da1 = m (q + 2) = 2 x 12 = 24 mm
    const width = (wheelWidth: number): string[] =>
      at(checkMachine(withValue(bootCleaner, 'gearing.wheelWidth', wheelWidth)), 'gearing.wheelWidth')
    expect(width(24)).toEqual(['error: must be below 24 mm, the outside diameter of the worm, got 24 mm'])
    expect(width(23.9).filter((told) => told.startsWith('error'))).toEqual([])
  })

  test('warns of teeth with a reason, and then not once more that the number is unusual', () => {
    const thick = checkMachine(withValue(bootCleaner, 'gearing.diameterQuotient', 6.5))
    expect(at(thick, 'gearing.diameterQuotient')).toHaveLength(1)
    expect(at(thick, 'gearing.diameterQuotient')[0]).toMatch(/^warning: .*7 to 25, got 6.5: /)
  })

  test('leaves a warning of an unusual number beside a note', () => {
    const rough = checkMachine(withValue(bootCleaner, 'gearing.friction', 0.4))
    expect(at(rough, 'gearing.friction').map((told) => told.split(':')[0])).toEqual(['warning', 'note'])
  })

  test('is told also while another part is being put right', () => {
    const broken = withValue(ventOpener, 'motor.resistance', -1)
    expect(checkMachine(broken).map(({ path }) => path)).toEqual(['motor.resistance', 'gearing.friction'])
  })

  test('wheels too heavy for the rotor behind a self-locking pair have no definite motion', () => {
    // vent opener: etaB = -1.035 with 36 teeth and one start, so the limit is 1.035 x 2 Jw/36^2
    const limit = (1.035 * 2 * 6000) / 36 ** 2
    const heavy = (inertia: number) =>
      at(
        checkMachine(
          withValue(withValue(ventOpener, 'outputs.wheelInertia', 6000), 'rotor.inertia', inertia),
        ),
        'rotor.inertia',
      )
    expect(heavy(limit * 1.001)).toEqual([])
    expect(heavy(limit * 0.999)).toHaveLength(1)
    expect(heavy(limit * 0.999)[0]).toMatch(/^error: must be above 9.58 kg cm2 .*, got 9.57/)
  })
})
