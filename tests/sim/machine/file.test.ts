import { describe, expect, test } from 'vitest'
import { withValue } from '../../../sim/machine/fields.ts'
import type { Migration } from '../../../sim/machine/migrations.ts'
import { parseMachine, printMachine } from '../../../sim/machine/file.ts'
import { bootCleaner, demoMachines } from '../../support/machines.ts'

const told = (text: string, migrations?: readonly Migration[]): string[] =>
  parseMachine(text, migrations).problems.map(
    ({ path, severity, message }) => `${path} ${severity}: ${message}`,
  )

describe('printing', () => {
  test.each(demoMachines)('the $name comes back equal', (machine) => {
    expect(parseMachine(printMachine(machine)).machine).toEqual(machine)
  })

  test('does not depend on the order in which the parts were put together', () => {
    const reversed = Object.fromEntries(Object.entries(bootCleaner).toReversed())
    const { machine } = parseMachine(JSON.stringify(reversed))
    expect(machine && printMachine(machine)).toBe(printMachine(bootCleaner))
    expect(printMachine({ ...bootCleaner, ...reversed })).toBe(printMachine(bootCleaner))
  })

  test('is indented by two spaces and ends with a line end', () => {
    const text = printMachine(bootCleaner)
    expect(text.startsWith('{\n  "format": "counterturn-machine",\n  "version": 3,\n  "name"')).toBe(true)
    expect(text.endsWith('}\n')).toBe(true)
  })

  test('keeps quotation marks, line ends and letters beyond the alphabet', () => {
    const about = 'A "quoted" \\ line\nand Ω, 😀, \ud800'
    const machine = withValue(bootCleaner, 'about', about)
    expect(parseMachine(printMachine(machine)).machine?.about).toBe(about)
  })
})

describe('texts that are not a machine', () => {
  test.each([
    ['', /^ error: must be JSON; line 1, column 1: a value is needed/],
    [
      '{"format": "counterturn-machine",}',
      /^ error: must be JSON; line 1, column 34: there must be no comma/,
    ],
    ['[]', /^ error: must be a machine, a group of fields between { and }, got a list of 0/],
    ['null', /^ error: must be a machine.*got null/],
    ['{}', /^format error: must be 'counterturn-machine', got nothing/],
    ['{"format": "other"}', /^format error: must be 'counterturn-machine', got the text 'other'/],
    ['{"format": "counterturn-machine"}', /^version error: must be a whole number up to 3, got nothing/],
    ['{"format": "counterturn-machine", "version": "1"}', /^version error: .* got the text '1'/],
    ['{"format": "counterturn-machine", "version": 1.5}', /^version error: .* got 1.5/],
    ['{"format": "counterturn-machine", "version": 1e999}', /^version error: .* got Infinity/],
    ['{"format": "counterturn-machine", "version": 4}', /^version error: must be at most 3, got 4; .*newer/],
    ['{"format": "counterturn-machine", "version": 0}', /^version error: must be one that can still be read/],
    [
      '{"format": "counterturn-machine", "version": -1e15}',
      /^version error: must be one that can still be read/,
    ],
    ['x'.repeat(200_001), /^ error: must be at most 200000 characters, got 200001/],
  ])('%.60j', (text, problem) => {
    const problems = told(text)
    expect(problems).toHaveLength(1)
    expect(problems[0]).toMatch(problem)
    expect(parseMachine(text).machine).toBeNull()
  })

  test('a machine without its parts shows each of them', () => {
    const paths = parseMachine('{"format": "counterturn-machine", "version": 3}').problems.map(
      ({ path }) => path,
    )
    expect(paths).toEqual(Object.keys(bootCleaner).slice(2))
  })
})

describe('older versions', () => {
  const renamed = (from: number, name: string, old: string, now: string): Migration => ({
    from,
    name,
    apply: (file) =>
      Object.fromEntries(Object.entries(file).map(([key, part]) => [key === old ? now : key, part])),
  })
  const migrations = [
    renamed(2, 'the text is called about', 'note', 'about'),
    renamed(1, 'the remark is called note', 'remark', 'note'),
  ]
  const { about, ...rest } = bootCleaner

  test('are brought up step by step in the order of their versions, and each step is told', () => {
    const text = JSON.stringify({ ...rest, version: 1, remark: about })
    expect(parseMachine(text, migrations).machine).toEqual(bootCleaner)
    expect(told(text, migrations).slice(0, 2)).toEqual([
      'version note: was brought from 1 to 2: the remark is called note',
      'version note: was brought from 2 to 3: the text is called about',
    ])
  })

  test('take only the steps from their own version on', () => {
    const text = JSON.stringify({ ...rest, version: 2, note: about, remark: 'mine' })
    expect(parseMachine(text, migrations).machine).toEqual(bootCleaner)
    expect(told(text, migrations)).toContain(
      'remark warning: is not a field here and is left out; it was "mine"',
    )
  })

  test('without a step for them are refused', () => {
    const text = JSON.stringify({ ...rest, version: -1, remark: about })
    expect(told(text, migrations)).toEqual([
      'version error: must be one that can still be read, up to 3, got −1',
    ])
  })

  test('leave the current version alone', () => {
    const never: Migration = {
      from: 3,
      name: 'not yet',
      apply: () => {
        throw new Error('a step from the current version was taken')
      },
    }
    expect(parseMachine(printMachine(bootCleaner), [...migrations, never]).machine).toEqual(bootCleaner)
  })
})
