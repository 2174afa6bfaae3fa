import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import type { Machine } from '../../sim/machine/machine.ts'
import { WorkshopProvider, createWorkshop } from '../../web/frame/workshop.ts'
import { BrushesPanel } from '../../web/drive/BrushesPanel.tsx'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../support/machines.ts'

function page(machine: Machine) {
  const workshop = createWorkshop(machine, 'light')
  const html = renderToStaticMarkup(
    <WorkshopProvider value={workshop}>
      <BrushesPanel />
    </WorkshopProvider>,
  )
  return { html, text: html.replace(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ') }
}

test('a machine without a motor is told to have no brushes, and shows no empty figure', () => {
  const { html, text } = page(classroomModel)
  expect(text).toMatch(/no motor, so there is no commutator/)
  expect(html).not.toContain('<svg')
  expect(html).not.toContain('<canvas')
})

test('a motor whose brushes are not described is told as such', () => {
  const { text, html } = page({ ...bootCleaner, brushes: null })
  expect(text).toMatch(/does not describe its commutator/)
  expect(html).not.toContain('<svg')
})

test.each([bootCleaner, ventOpener, cordWinder])(
  '$name has every figure, and no number is NaN',
  (machine) => {
    const { text, html } = page(machine)
    expect(text).toContain('indicative')
    expect(text).toMatch(/Grade 1|Grade 2|Grade 3/)
    expect(text).toContain('Life of the brushes')
    expect(html.match(/<canvas/g)).toHaveLength(2)
    expect(html).not.toMatch(/NaN|Infinity|undefined/)
  },
)

test('dust, heat, the plug and licensed people are named', () => {
  const { text } = page(bootCleaner)
  expect(text).toMatch(/Carbon dust/)
  expect(text).toMatch(/hot/)
  expect(text).toMatch(/Unplug/)
  expect(text).toMatch(/licensed people/)
  expect(text).toMatch(/local rules/)
})

test('alternating current has no brush that it always comes from, and says so', () => {
  expect(page(cordWinder).text).toMatch(/Drawn in one half wave/)
  expect(page(bootCleaner).text).not.toMatch(/half wave/)
})

test('the turning by hand is a slider that can be reached', () => {
  expect(page(bootCleaner).html).toMatch(
    /role="slider" tabindex="0" aria-label="Turn the commutator by hand"/,
  )
})
