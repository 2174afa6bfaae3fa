import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import type { Machine } from '../../sim/machine/machine.ts'
import { partsOf } from '../../sim/pose/parts.ts'
import { steadyNow } from '../../web/frame/steady.ts'
import { WorkshopProvider, createWorkshop } from '../../web/frame/workshop.ts'
import { ChargeLeft } from '../../web/demonstrate/ChargeLeft.tsx'
import { partNumbers } from '../../web/instrument/part-numbers.ts'
import { EFFICIENCY } from '../../web/instrument/quantities.ts'
import { Readings } from '../../web/instrument/Readings.tsx'
import { situationOf } from '../../web/instrument/situation.ts'
import { firstBench } from '../../web/store/bench.ts'
import { protectionRow, rowsFor, warmthText } from '../../web/instrument/supply-rows.ts'
import { bootCleaner, classroomModel, cordWinder, demoMachines, ventOpener } from '../support/machines.ts'
import { halfWaveSeries, otherMachines, smoothed, triacBridge } from '../support/other-machines.ts'

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

/** Wheels so heavy, behind a mesh that locks so strongly, that rigid parts have no definite motion. */
const paradox: Machine = {
  ...ventOpener,
  outputs: { ...ventOpener.outputs, wheelInertia: 10_000 },
}

test('a machine that is not computed says so, and shows only what is true of it', () => {
  const html = page(paradox)
  expect(output(html, 'Ratio')).toBe('36 : 1')
  expect(html).toContain('rigid parts have no definite motion')
  expect(NAMES.map((name) => output(html, name))).toEqual(NAMES.map(() => null))
})

test('the socket has its voltage and frequency before anything turns', () => {
  const html = page(cordWinder)
  expect(output(html, 'Input voltage')).toBe('230.0 V')
  expect(output(html, 'Input frequency')).toBe('50.00 Hz')
  expect(output(html, 'Input power')).toBe('0 W')
})

const rowNames = (machine: Machine, setting = 0): readonly string[] =>
  rowsFor(machine, setting).map(({ name }) => name)

test('what alternates is told by its size, what is direct by its mean', () => {
  expect(rowNames(cordWinder)).toContain('Motor voltage, r.m.s.')
  expect(rowNames(cordWinder)).toContain('Motor current, mean size')
  expect(rowNames(bootCleaner)).toContain('Motor voltage, mean')
  expect(rowNames(triacBridge)).toContain('Motor current, mean')
  expect(rowNames(halfWaveSeries, 0)).toContain('Motor voltage, mean')
  expect(rowNames(halfWaveSeries, 1)).toContain('Motor voltage, r.m.s.')
})

test('a battery has no frequency, and a capacitor its voltage only where there is one', () => {
  expect(rowNames(ventOpener)).not.toContain('Input frequency')
  expect(rowNames(ventOpener)).toContain('Current limit')
  expect(rowNames(smoothed)).toContain('Capacitor voltage')
  expect(rowNames(bootCleaner)).not.toContain('Capacitor voltage')
})

test('a fuse says how far it is, and whether it would open', () => {
  const { text, name } = protectionRow(bootCleaner)!
  const steady = steadyNow(createWorkshop(bootCleaner, 'light').frame.drive, firstBench)!
  const situation = (fuse: number, isOpen: boolean) =>
    situationOf(bootCleaner, firstBench, { ...steady.reading, fuse, isOpen })
  expect(name).toBe('Fuse, way to opening')
  expect(text(situation(0.428, false))).toBe('42 %')
  expect(text(situation(1, true))).toBe('open')
  expect(protectionRow(ventOpener)).toBeNull()
})

test('the temperatures are told where they are not those of the description', () => {
  const steady = steadyNow(createWorkshop(bootCleaner, 'light').frame.drive, firstBench)!
  const at = (machine: Machine, winding: number, magnet: number) =>
    warmthText(situationOf(machine, { ...firstBench, winding, magnet }, steady.reading))
  expect(at(bootCleaner, 20, 20)).toBeNull()
  expect(at(bootCleaner, 92.2, 45)).toBe('Computed with the winding at 92 °C and the magnets at 45 °C.')
  expect(at(cordWinder, 102, 61)).toBe('Computed with the winding at 102 °C.')
})

test('a cranked machine says that a hand turns it', () => {
  const html = page(classroomModel)
  expect(output(html, 'Motor torque \\(hand crank\\)')).toBe('0 N m')
  expect(output(html, 'Input power')).toBeNull()
})

test('no reading is ever NaN', () => {
  for (const machine of [...demoMachines, ...otherMachines]) {
    expect(page(machine)).not.toMatch(/NaN|Infinity|undefined/)
  }
})

test.each([...demoMachines, ...otherMachines])(
  'every part of $name has numbers that are numbers',
  (machine) => {
    const workshop = createWorkshop(machine, 'light')
    for (const setting of [0, machine.control.steps.length - 1]) {
      const bench = { ...firstBench, setting }
      const steady = steadyNow(workshop.frame.drive, bench)!
      const situation = situationOf(machine, bench, steady.reading)
      for (const { part } of partsOf(machine)) {
        const numbers = partNumbers(part, situation)
        for (const { name, text } of numbers) expect(text, `${part}, ${name}`).toMatch(/^[\w−]/)
        expect(new Set(numbers.map(({ name }) => name)).size, part).toBe(numbers.length)
      }
    }
  },
)

test('the parts of every chain lose what the ledger says is lost before the shaft', () => {
  for (const machine of [...demoMachines, ...otherMachines].filter(({ motor }) => motor !== null)) {
    const { reading } = steadyNow(createWorkshop(machine, 'light').frame.drive, firstBench)!
    const situation = situationOf(machine, firstBench, reading)
    const lost = partsOf(machine)
      .flatMap(({ part }) => partNumbers(part, situation))
      .filter(({ name }) => name.startsWith('Lost ') && !name.endsWith('mesh'))
      .reduce((sum, { text }) => sum + Number(text.split(' ')[0]), 0)
    const told =
      reading.coreLoss +
      reading.sourceResistanceLoss +
      reading.diodeLoss +
      reading.bleedLoss +
      reading.switchLoss +
      reading.copperLoss +
      reading.brushLoss
    // each is rounded to three digits
    expect(Math.abs(lost / told - 1), machine.name).toBeLessThan(0.005)
  }
})

/** What is said of the charge of the smoothed machine at rest, with what its capacitor has kept [V]. */
function chargeAtRest(kept: number): string {
  const workshop = createWorkshop(smoothed, 'light')
  workshop.frame.state.capacitorVoltage = kept
  const html = renderToStaticMarkup(
    <WorkshopProvider value={workshop}>
      <ChargeLeft />
    </WorkshopProvider>,
  )
  return html.replace(/<[^>]*>/g, '')
}

test('a capacitor at rest holds what it has kept, or at most the crest of what charges it', () => {
  // 12 V tap behind two diodes of 0.8 V; 2200 uF
  const crest = 12 * Math.SQRT2 - 1.6
  expect(chargeAtRest(0)).toContain(`holds up to ${crest.toFixed(1)} V`)
  expect(chargeAtRest(0)).toContain(`${(0.5 * 2200e-6 * crest ** 2).toPrecision(2)} J`)
  expect(chargeAtRest(1.59)).toContain('holds 1.6 V')
})
