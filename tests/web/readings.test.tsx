import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import type { Machine } from '../../sim/machine/machine.ts'
import { partsOf } from '../../sim/pose/parts.ts'
import { WorkshopProvider, createWorkshop, steadyNow } from '../../web/frame/workshop.ts'
import { partNumbers } from '../../web/instrument/part-numbers.ts'
import { EFFICIENCY } from '../../web/instrument/quantities.ts'
import { Readings } from '../../web/instrument/Readings.tsx'
import { situationOf } from '../../web/instrument/situation.ts'
import { firstBench } from '../../web/store/bench.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../support/machines.ts'

const page = (machine: Machine): string =>
  renderToStaticMarkup(
    <WorkshopProvider value={createWorkshop(machine, 'light')}>
      <Readings />
    </WorkshopProvider>,
  )

/** Text of the output with that name; null where there is none. */
function output(html: string, name: string): string | null {
  const [, inner] = new RegExp(`<output[^>]*aria-label="${name}"[^>]*>(.*?)</output>`).exec(html) ?? []
  return inner?.replace(/<[^>]*>/g, '') ?? null
}

const NAMES = ['Motor speed', 'Motor torque', 'Left wheel torque', 'Right wheel torque', 'Input power']

test('a machine at rest reads nought in its units, and its steady running beside it', () => {
  const html = page(bootCleaner)
  expect(output(html, 'Ratio')).toBe('20 : 1')
  expect(NAMES.map((name) => output(html, name))).toEqual(['0 r/min', '0 N m', '0 N m', '0 N m', '0 W'])
  const steady = steadyNow(createWorkshop(bootCleaner, 'light').frame.drive, firstBench)!
  const torque = steady.reading.motorTorque.toPrecision(3)
  expect(html.replace(/<[^>]*>/g, '')).toContain(`steady ${torque} N m`)
})

test('efficiency is a dash where nothing goes in, and 0 % where something does and nothing comes out', () => {
  expect(output(page(bootCleaner), 'Efficiency')).toBe('–')
  const jammed = steadyNow(createWorkshop(bootCleaner, 'light').frame.drive, {
    ...firstBench,
    jammed: 'left',
  })!
  expect(jammed.reading.wormSpeed).toBe(0)
  expect(EFFICIENCY.value(situationOf(bootCleaner, firstBench, jammed.reading))).toBe(0)
})

test('a machine that is not computed says so, and shows only what is true of it', () => {
  const html = page(cordWinder)
  expect(output(html, 'Ratio')).toBe('10.33 : 1')
  expect(html).toContain('not computed')
  expect(NAMES.map((name) => output(html, name))).toEqual(NAMES.map(() => null))
})

test('a cranked machine says that a hand turns it', () => {
  const html = page(classroomModel)
  expect(output(html, 'Motor torque \\(hand crank\\)')).toBe('0 N m')
  expect(output(html, 'Input power')).toBeNull()
})

test('no reading is ever NaN', () => {
  for (const machine of [bootCleaner, ventOpener, cordWinder, classroomModel]) {
    expect(page(machine)).not.toMatch(/NaN|Infinity|undefined/)
  }
})

test.each([bootCleaner, ventOpener, classroomModel])(
  'every part of $name has numbers that are numbers',
  (machine) => {
    const steady = steadyNow(createWorkshop(machine, 'light').frame.drive, firstBench)!
    const situation = situationOf(machine, firstBench, steady.reading)
    for (const { part } of partsOf(machine)) {
      for (const { name, text } of partNumbers(part, situation))
        expect(text, `${part}, ${name}`).toMatch(/^[\w−]/)
    }
  },
)
