import { renderToStaticMarkup } from 'react-dom/server'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { gearDataSheet } from '../../../sim/gear/data-sheet.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { WorkshopProvider, createWorkshop } from '../../../web/frame/workshop.ts'
import { DataSheet } from '../../../web/models/PrintedPage.tsx'
import { ModelsPanel } from '../../../web/models/ModelsPanel.tsx'
import { rowText } from '../../../web/models/row-text.ts'
import { modelFileName } from '../../../web/models/save-model.ts'
import { bootCleaner, demoMachines } from '../../support/machines.ts'

beforeAll(() => void vi.stubGlobal('location', { href: 'https://example.org/counterturn/#/design' }))
afterAll(() => void vi.unstubAllGlobals())

const page = (machine: Machine, element: React.ReactElement): string =>
  renderToStaticMarkup(
    <WorkshopProvider value={createWorkshop(machine, 'light')}>{element}</WorkshopProvider>,
  )
const words = (html: string): string => html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ')

test('a bore that is drawn narrower than asked for is told beside the drawing, and only then', () => {
  const told = (boreDiameter: number) => {
    const wide = { ...bootCleaner, gearing: { ...bootCleaner.gearing, boreDiameter } }
    return words(page(wide, <DataSheet />))
  }
  expect(told(8)).not.toContain('leaves no rim')
  const sheet = told(30)
  // 0.8 of the rim 1.4 modules under the root circle of 35 mm (the rule of the checks, which print 23.5)
  expect(sheet).toMatch(/The bore of 30 mm leaves no rim under the teeth. It is drawn as 23\.5\d mm/)
  expect(sheet).toMatch(/at most 23\.5 mm to leave a rim/)
  expect(sheet).toContain('without tolerances')
})

test('every button says its form and its unit', () => {
  const html = page(bootCleaner, <ModelsPanel />)
  for (const name of [
    'Save STL (mm)',
    'Save 3MF (mm)',
    'Save glTF of the scene (m)',
    'Save drawing (SVG, mm)',
    'Print data sheet',
  ]) {
    expect(html).toContain(`>${name}</button>`)
  }
})

test('the panel says what a print is for, and what clearance is usual', () => {
  const html = words(page(bootCleaner, <ModelsPanel />))
  expect(html).toContain('keep fingers clear, do not load them or drive them from the mains')
  expect(html).toContain('Common practice for filament printing: 0.15 to 0.3 mm')
})

test('gears that do not come out whole are told of before they are saved', () => {
  const few = { ...bootCleaner, gearing: { ...bootCleaner.gearing, wormStarts: 4, wheelTeeth: 9 } }
  expect(words(page(few, <ModelsPanel />))).toContain('look at this first')
  const none = { ...bootCleaner, gearing: { ...bootCleaner.gearing, diameterQuotient: 2 } }
  expect(words(page(none, <ModelsPanel />))).toContain('The model is cut short where the exact tooth ends')
  expect(words(page(demoMachines[1]!, <ModelsPanel />))).not.toContain('look at this first')
})

test.each(demoMachines.map((machine) => ({ name: machine.name, machine })))(
  'the printed sheet of $name has every number, the checks, the cautions and the link',
  ({ machine }) => {
    const html = page(machine, <DataSheet />)
    for (const row of gearDataSheet(machine.gearing).flatMap(({ rows }) => rows)) {
      expect(html).toContain(`<th scope="row">${row.name}</th>`)
      expect(html).toContain(`>${rowText(row)}</td>`)
    }
    expect(html).toContain('Checks of the teeth')
    expect(html).toContain('follow local codes and licensed practice')
    expect(html).toContain('https://example.org/counterturn/#/demonstrate?s=')
    expect(html).not.toMatch(/NaN|undefined|Infinity/)
  },
)

test('a name with marks of markup stays text on the sheet', () => {
  const html = page({ ...bootCleaner, name: '<img src=x onerror=alert(1)>' }, <DataSheet />)
  expect(html).not.toContain('<img')
  expect(html).toContain('&lt;img src=x')
})

test('files are named for the machine, what they hold, and their unit', () => {
  expect(modelFileName(bootCleaner, 'set-mm', '3mf')).toBe('boot-cleaner-set-mm.3mf')
  expect(modelFileName({ ...bootCleaner, name: '...' }, 'scene-m', 'glb')).toBe('machine-scene-m.glb')
})
