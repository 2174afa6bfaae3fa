import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { type Reading, newReading, readAt } from '../../sim/drive/reading.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { csvText } from '../../web/chart/table.ts'
import { flowHeight, fullWidth, ledgerFlow, streamPath, widest } from '../../web/drive/ledger-flow.ts'
import { ledgerColumns } from '../../web/drive/LedgerSection.tsx'
import { ledgerHeadline, ledgerSum } from '../../web/drive/ledger-words.ts'
import { type Ledger, ledger } from '../../web/drive/ledger.ts'
import { PowerPanel } from '../../web/drive/PowerPanel.tsx'
import { WorkshopProvider, createWorkshop } from '../../web/frame/workshop.ts'
import { bootCleaner, classroomModel, ventOpener } from '../support/machines.ts'

const steady = (machine: Machine, change: Partial<ReturnType<typeof firstInput>> = {}): Reading => {
  const point = operatingPoint(compileDrive(machine), { ...firstInput(), ...change })
  if (!point) throw new Error('this machine settles')
  return point.reading
}

/** Speeding up under power, and slowing down without, at 300 rad/s. */
const onTheWay = (connected: boolean): Reading =>
  readAt(
    newReading(),
    compileDrive(bootCleaner),
    { ...firstInput(), setting: 4, connected },
    300,
    connected ? 900 : -60,
  )

const CASES: readonly (readonly [string, Machine, Reading])[] = [
  ['A, setting 1, light', bootCleaner, steady(bootCleaner)],
  ['A, setting 5, one wheel loaded', bootCleaner, steady(bootCleaner, { setting: 4, leftLoad: 1 })],
  ['A, jammed', bootCleaner, steady(bootCleaner, { setting: 4, jammed: 'left' })],
  ['B, setting 4, opening', ventOpener, steady(ventOpener, { setting: 3 })],
  [
    'B, setting 4, closing: the vents give power back',
    ventOpener,
    steady(ventOpener, { setting: 3, sense: -1 }),
  ],
  ['D, cranked, 0.15 W', classroomModel, steady(classroomModel)],
]

const room = { width: 150, row: 18, top: 36 }

describe.each(CASES)('%s', (_name, machine, reading) => {
  const told = ledger(machine, reading)
  const flow = ledgerFlow(told, fullWidth(told), room)

  test('the parts add up to what comes in', () => {
    expect(told.parts.some(({ kind }) => kind === 'rest')).toBe(false)
    expect(told.parts.reduce((sum, { watts }) => sum + watts, 0)).toBeCloseTo(told.input.watts, 11)
    expect(ledgerSum(told)).toContain('nothing is unaccounted for')
  })

  test('the stream is as wide as what it carries, and ends at nothing', () => {
    let carried = told.input.watts
    for (const { item, before, after, thickness } of flow.rows) {
      expect(before).toBeCloseTo(carried * flow.scale, 9)
      carried -= item.watts
      expect(after).toBeCloseTo(carried * flow.scale, 9)
      expect(thickness).toBeCloseTo(Math.abs(item.watts) * flow.scale, 9)
    }
    expect(flow.rows.at(-1)!.after).toBeCloseTo(0, 9)
  })

  test('it stays inside its room, and no two parts lie over each other', () => {
    expect(widest(told) * flow.scale).toBeLessThanOrEqual(room.width * (1 + 1e-12))
    const { rows } = flow
    rows.forEach(({ y, thickness }, i) => {
      const next = rows[i + 1]?.y ?? flowHeight(told, room)
      expect(y + thickness + room.row / 2 - 1e-9).toBeLessThanOrEqual(next)
    })
    expect(streamPath(flow, room.top)).not.toContain('NaN')
  })
})

describe('speeding up and slowing down', () => {
  test('what the moving parts take, and give back, is a part of its own', () => {
    const storing = (reading: Reading) =>
      ledger(bootCleaner, reading).parts.find(({ kind }) => kind === 'stored')!.watts
    expect(storing(onTheWay(true))).toBeGreaterThan(0)
    expect(storing(onTheWay(false))).toBeLessThan(0)
  })

  test('coasting, all comes out of the motion, which widens the stream from nothing', () => {
    const told = ledger(bootCleaner, onTheWay(false))
    expect(told.input.watts).toBe(0)
    const flow = ledgerFlow(told, fullWidth(told), room)
    expect(flow.start).toBe(0)
    expect(widest(told)).toBeGreaterThan(0)
    expect(flow.rows.find(({ item }) => item.kind === 'stored')!.after).toBeGreaterThan(0)
  })
})

test('a vent that closes gives back before the mesh takes its share', () => {
  const told = ledger(ventOpener, CASES[4]![2])
  const names = told.parts.map(({ name }) => name)
  expect(names.indexOf('Left wheel')).toBeLessThan(names.indexOf('Left mesh'))
  expect(told.parts.find(({ kind }) => kind === 'left')!.watts).toBeLessThan(0)
  expect(ledgerHeadline(ventOpener, told)).toMatch(/from the battery and .* from the loads, all lost$/)
})

test('a ledger that does not close shows what is missing, drawn and told', () => {
  const reading = CASES[0]![2]
  const told = ledger(bootCleaner, { ...reading, copperLoss: reading.copperLoss - 0.5 })
  const last = told.parts.at(-1)!
  expect(last.kind).toBe('rest')
  expect(last.watts).toBeCloseTo(0.5, 12)
  expect(ledgerSum(told)).toContain('0.500 W are unaccounted for')
  expect(ledgerFlow(told, fullWidth(told), room).rows.at(-1)!.thickness).toBeGreaterThan(0)
})

test('the file holds what the core gives, in full precision', () => {
  const reading = CASES[1]![2]
  const [heads, values] = csvText(ledgerColumns(ledger(bootCleaner, reading))).split('\r\n')
  const at = heads!.split(',').indexOf('Winding [W]')
  expect(values!.split(',')[at]).toBe(String(reading.copperLoss))
})

const page = (machine: Machine): string =>
  renderToStaticMarkup(
    <WorkshopProvider value={createWorkshop(machine, 'light')}>
      <PowerPanel />
    </WorkshopProvider>,
  )

test.each([bootCleaner, ventOpener, classroomModel])(
  'the panel of $name shows numbers that are numbers',
  (machine) => {
    const html = page(machine)
    expect(html).toContain('of the power reaches the wheels')
    expect(html).not.toMatch(/NaN|Infinity|undefined/)
  },
)

test('at the plug the mains shows apparent power and power factor, a battery does not', () => {
  expect(page(bootCleaner)).toContain('Power factor')
  expect(page(ventOpener)).toContain('At the battery')
  expect(page(ventOpener)).not.toContain('Real power')
  expect(page(ventOpener)).not.toContain('Power factor')
  expect(page(classroomModel)).not.toContain('Real power')
})

test('a stream of nothing is drawn as nothing', () => {
  const still: Ledger = ledger(bootCleaner, newReading())
  const flow = ledgerFlow(still, fullWidth(still), room)
  expect(flow.rows.every(({ thickness }) => thickness === 0)).toBe(true)
  expect(ledgerHeadline(bootCleaner, still)).toBe('No power flows')
})
