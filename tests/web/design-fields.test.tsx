import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { withCentres } from '../../sim/machine/centres.ts'
import { checkMachine } from '../../sim/machine/check.ts'
import { FIELDS, fieldsOf, withValue } from '../../sim/machine/fields.ts'
import type { Machine, MeltingProtection } from '../../sim/machine/machine.ts'
import { hasErrors } from '../../sim/machine/problem.ts'
import { designFacts, lockingWords } from '../../web/design/facts.ts'
import {
  fieldText,
  itemOf,
  plainNumber,
  readFieldText,
  stepped,
  unitText,
} from '../../web/instrument/field-text.ts'
import { fieldSettings } from '../../web/design/field-settings.ts'
import { format, normalize, refusal, sanitize } from '../../web/design/quantity-plugin.ts'
import { Problems } from '../../web/instrument/Problems.tsx'
import type { Choice } from '../../web/instrument/choice.ts'
import { CHOICES } from '../../web/instrument/choices.ts'
import { isAsBegun } from '../../web/instrument/start-numbers.ts'
import { bootCleaner, classroomModel, cordWinder, demoMachines, ventOpener } from '../support/machines.ts'
import { otherMachines } from '../support/other-machines.ts'

const teeth = fieldsOf(bootCleaner).find(({ path }) => path === 'gearing.wheelTeeth')!
const settings = fieldSettings(() => bootCleaner, teeth)

test('leva is given the number, and the field as its settings', () => {
  expect(normalize({ first: 20, ...settings })).toEqual({ value: 20, settings })
})

test('leva stores finite numbers only', () => {
  expect(sanitize(31)).toBe(31)
  for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, '31', null, undefined, {}]) {
    expect(() => sanitize(bad)).toThrow('finite')
  }
})

test('a value that the checks forbid is refused in their own words, others are not', () => {
  expect(refusal(settings, 31)).toBeNull()
  expect(refusal(settings, 2.5)).toMatchObject({
    words: expect.stringMatching(/^must be .*whole/),
    freed: null,
  })
  expect(refusal(settings, 1000)).toMatchObject({ words: expect.stringMatching(/1000/), freed: null })
})

test('teeth that a given centre distance forbids name it, and come with the machine whose axes follow', () => {
  const fixed = withCentres(bootCleaner, 'distance')
  const toTeeth = fieldSettings(() => fixed, teeth)
  expect(refusal(toTeeth, 21)).toBeNull()
  const { words, freed } = refusal(toTeeth, 25)!
  expect(words).toMatch(/^Centre distance must be/)
  expect(freed!.gearing.wheelTeeth).toBe(25)
  expect(hasErrors(checkMachine(freed!))).toBe(false)
  // m (q + z2) / 2 with the shift 0 that it had
  expect(pairProportions(freed!.gearing).centreDistance).toBeCloseTo((2 * (10 + 25)) / 2, 9)
})

test('the distance itself, and teeth that nothing can save, have no such way out', () => {
  const fixed = withCentres(bootCleaner, 'distance')
  const distance = fieldsOf(fixed).find(({ path }) => path === 'gearing.centres.centreDistance')!
  expect(
    refusal(
      fieldSettings(() => fixed, distance),
      40,
    ),
  ).toMatchObject({ freed: null })
  expect(
    refusal(
      fieldSettings(() => fixed, teeth),
      2.5,
    ),
  ).toMatchObject({ freed: null })
})

test('what a field writes reads back as the same number', () => {
  for (const value of [20, 0.0432, 2.2e-8, -0.35, 1 / 3]) {
    expect(plainNumber(format(value))).toBeCloseTo(value, 12)
    expect(plainNumber(fieldText(value))! / value).toBeCloseTo(1, 11)
  }
})

test('a text with a unit is read in the unit of the field, a plain number at once', async () => {
  const read = (text: string, unit: string) => new Promise((done) => readFieldText(text, unit, done))
  expect(await read('2', 'mm')).toEqual({ value: 2 })
  expect(await read('−0.5', 'N m')).toEqual({ value: -0.5 })
  expect(await read('0.5 in', 'mm')).toEqual({ value: 12.7 })
  expect(await read('12 kgf cm', 'N m')).toEqual({ value: 1.176798 })
  expect(await read('three', 'mm')).toHaveProperty('problem')
})

test('steps leave no dust and stay inside the limits', () => {
  expect(stepped(0.09, 1, { step: 0.01, min: 0, max: 0.5 })).toBe(0.1)
  expect(stepped(0.125, 1, { step: 0.01, min: 0, max: 0.5 })).toBe(0.135)
  expect(stepped(2.2e-8, 3, { step: 1e-9, min: 0, max: 1 })).toBe(2.5e-8)
  expect(stepped(120, 1, teeth)).toBe(teeth.max)
})

test('every unit of the table has a spelling for people', () => {
  const units = new Set(FIELDS.map(({ unit }) => unitText(unit)))
  expect([...units].filter((unit) => /ohm|deg|[a-z]\d|^u/.test(unit))).toEqual([])
  expect(unitText('N m s2/rad2')).toBe('N m s²/rad²')
})

test('a field of a list knows its item by its label', () => {
  expect(itemOf(teeth)).toBeNull()
  const third = fieldsOf(bootCleaner).filter(({ path }) => path.startsWith('control.steps[2]'))
  expect(new Set(third.map(itemOf))).toEqual(new Set(['setting 3']))
})

test('self-locking is told apart from nearly', () => {
  expect(lockingWords(bootCleaner)).toMatch(/^Nearly self-locking/)
  expect(lockingWords(ventOpener)).toMatch(/^Self-locking/)
})

test('the facts of every machine are numbers', () => {
  for (const machine of demoMachines) {
    for (const { text } of designFacts(machine)) expect(text).toMatch(/^−?\d|^none$/)
  }
})

test('a problem is told by sign and word, with its field and the way there', () => {
  const problems = [
    { path: 'gearing.wheelTeeth', severity: 'error', message: 'must be a whole number' },
    { path: 'supply.voltage', severity: 'warning', message: 'is usually 207 to 253 V' },
  ] as const
  const page = renderToStaticMarkup(
    <Problems problems={problems} labelOf={(path) => `field ${path}`} onGoTo={() => undefined} />,
  )
  expect(page).toMatch(/<strong>Error<\/strong> field gearing.wheelTeeth: must be a whole number\./)
  expect(page).toMatch(/<strong>Warning<\/strong> field supply.voltage/)
  expect(page.match(/<button/g)).toHaveLength(2)
  expect(page.match(/<svg/g)).toHaveLength(2)
})

const choice = (path: string): Choice => CHOICES.find((each) => each.path === path)!
const values = (path: string, machine: Machine) =>
  choice(path)
    .options(machine)
    .map(({ value }) => value)

test.each([...demoMachines, ...otherMachines])('every choice that $name offers can be taken', (machine) => {
  for (const each of CHOICES) {
    const { path, options, choose, chosen } = each
    const offered = options(machine).map(({ value }) => value)
    if (offered.length === 0) continue
    expect(offered, path).toContain(chosen(machine))
    expect(choose(machine, chosen(machine)), path).toBe(machine)
    if (path.startsWith('gearing.')) continue
    for (const value of offered) {
      const next = choose(machine, value)
      expect(chosen(next), `${path} ${value}`).toBe(value)
      expect(
        checkMachine(next).filter(({ severity }) => severity === 'error'),
        `${path} ${value}`,
      ).toEqual([])
    }
  }
})

test('a current limit is offered where a chopper can keep it, a side where there are two', () => {
  expect(values('protection.kind', ventOpener)).toContain('limit')
  expect(values('protection.kind', bootCleaner)).not.toContain('limit')
  expect(values('protection.side', bootCleaner)).toEqual(['primary', 'secondary'])
  expect(values('protection.side', cordWinder)).toEqual([])
  expect(values('protection.kind', classroomModel)).toEqual([])
  expect(values('thermal', classroomModel)).toEqual([])
})

test.each([...demoMachines, ...otherMachines].filter(({ motor }) => motor !== null))(
  'protection that $name begins with holds in steady running with its loads',
  (machine) => {
    const bare = choice('protection.kind').choose(machine, 'none')
    for (const value of values('protection.kind', bare).filter((kind) => kind !== 'none')) {
      const next = choice('protection.kind').choose(bare, value)
      const drive = compileDrive(next)
      for (const load of next.outputs.loads.keys()) {
        const input = { ...firstInput(), setting: drive.steps - 1, leftLoad: load, rightLoad: load }
        const point = operatingPoint(drive, input)!
        expect([point.overLimit, point.reading.isLimited], `${value}, load ${load}`).toEqual([false, false])
      }
    }
  },
)

test('the other side of the transformer begins with its own current', () => {
  const primary = choice('protection.side').choose(bootCleaner, 'primary')
  expect(primary.protection).toMatchObject({ kind: 'fuse', side: 'primary', timeConstant: 6 })
  const { current } = primary.protection as MeltingProtection
  expect(current).toBeLessThan(1)
  const load = { setting: 4, leftLoad: 1, rightLoad: 1 }
  expect(operatingPoint(compileDrive(primary), { ...firstInput(), ...load })!.overLimit).toBe(false)
})

test('heat that is described anew says so until one of its numbers is set', () => {
  const bare = choice('thermal').choose(bootCleaner, 'no')
  expect(bare.thermal).toBeNull()
  const begun = choice('thermal').choose(bare, 'yes')
  expect(isAsBegun(begun, 'thermal')).toBe(true)
  expect(isAsBegun(withValue(begun, 'thermal.caseToAir', 0.3), 'thermal')).toBe(false)
  for (const machine of demoMachines) {
    expect([isAsBegun(machine, 'thermal'), isAsBegun(machine, 'brushes')]).toEqual([false, false])
  }
  const series = choice('brushes').choose(choice('brushes').choose(cordWinder, 'no'), 'yes')
  expect([series.brushes?.bars, isAsBegun(series, 'brushes')]).toEqual([24, true])
})
